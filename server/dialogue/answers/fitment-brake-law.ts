// "Does it need brakes?": the federal rule on what the job tells, and where it stops.
import {
  type BrakeLaw,
  brakeLawFor,
  dimensionOf,
  type FitReading,
  Fraction,
  grossOf,
  readTrailer,
  surgeBrakesAllowed,
  type Trailer,
  tableRules,
} from '#core';
import type { FieldId } from '#data';
import type { QuestionIntent } from '#intents';
import type { Answer, Answerer, Know } from '../types.ts';
import { givenReadings, readingsOf } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';
import { statesDiffer } from './fitment-words.ts';

const scope = 'The federal rule is for commercial trailers in interstate traffic.';
const caution = `${statesDiffer.charAt(0).toUpperCase()}${statesDiffer.slice(1)}: look yours up before it goes on the road.`;
const inService = '49 CFR 393.48(a)';

export const brakeLaw: Answerer = (question, job, know) => {
  const given = [...givenReadings(question), ...weighing(question)];
  const other = given.some(({ field }) => weights.has(field));
  const own = readingsOf(job).filter(({ field }) => !(other && weights.has(field)));
  const trailer = readTrailer([...own, ...given]);
  if (/surge/.test(question.words ?? '')) return surge(trailer, know);
  const law = brakeLawFor(trailer, tableRules);
  const braked = trailer.tokens.get('brakeType');
  const keep = braked && braked.text !== 'idler';
  return tell(
    know,
    `brakeLaw.${law.code}`,
    (voice) => ({
      always: [linesFor[law.code](law, voice)],
      more: [
        keep ? `it has ${voice.value('brakeType', braked.text)}: every brake fitted must work (${inService})` : undefined,
        scope,
      ],
    }),
    {
      sources: [law.source, ...(keep ? [inService] : [])],
      rests: [...noted(law.rests), ...(keep ? noted([braked.id]) : [])],
      missing: law.missing,
      caution,
    },
  );
};

/** Another trailer's weight asked about leaves this one's out of it. */
const weights: ReadonlySet<FieldId> = new Set<FieldId>(['gvwr', 'grossWeight', 'tongueWeight', 'loadCentre', 'axleDistance']);

/** What a question itself gives is no value of the job. */
const noted = (ids: readonly string[]) => ids.filter((id) => !id.startsWith('given.'));

/** "Does a twenty-eight hundred pound trailer need brakes": a weight by itself is the trailer's. */
function weighing({ given = [] }: QuestionIntent): FitReading[] {
  const said = given.find(({ kind, unit }) => kind === 'quantity' && unit && dimensionOf(unit) === 'mass');
  return said ? [{ ...said, id: 'given.grossWeight', field: 'grossWeight', stage: 'found', status: 'heard' }] : [];
}

const share = ({ percent }: BrakeLaw, voice: Voice) =>
  `${voice.amount({ value: percent?.round(1) ?? new Fraction(0), unit: '1' })} percent of the towing vehicle's axle weights`;

const linesFor: Readonly<Record<BrakeLaw['code'], (law: BrakeLaw, voice: Voice) => string>> = {
  tooHeavy: (_law, voice) => `yes: over ${voice.text('3,000')} pounds gross the federal rule wants brakes on every wheel`,
  overShare: (law, voice) =>
    `yes: its axles carry ${share(law, voice)}, and ${voice.text('40')} is the most without brakes under the federal rule`,
  exempt: (law, voice) =>
    `not by the federal rule: no more than ${voice.text('3,000')} pounds gross, and its axles carry ${share(law, voice)}, at most ${voice.text('40')}`,
  untold: ({ missing }, voice) =>
    `up to ${voice.text('3,000')} pounds gross it may go without only while its axles carry at most ${voice.text('40')} percent of the towing vehicle's axle weights; ${wanting(missing, voice) ?? 'weigh both'}`,
  unknown: ({ missing }, voice) =>
    `the federal rule lets none above ${voice.text('3,000')} pounds gross go without; ${wanting(missing, voice) ?? ''}`,
};

/** Brakes worked by the coupler's own push: only so heavy a trailer behind so heavy a vehicle. */
function surge(trailer: Trailer, know: Know): Answer {
  const rating = trailer.numbers.get('gvwr');
  const towing = trailer.numbers.get('towRating');
  const gross = rating?.span.high ?? grossOf(trailer)?.high;
  const wanted: FieldId[] = [...(gross ? [] : (['gvwr'] as const)), ...(towing ? [] : (['towRating'] as const))];
  const [ours, theirs] = [gross, towing?.span.low];
  const allowed = ours && theirs && surgeBrakesAllowed({ value: ours, unit: 'lb' }, { value: theirs, unit: 'lb' });
  return tell(
    know,
    allowed === undefined ? 'surgeBrakes.unknown' : allowed ? 'surgeBrakes.allowed' : 'surgeBrakes.notAllowed',
    (voice) => ({
      always: [
        typeof allowed === 'boolean' && ours && theirs
          ? `${allowed ? 'surge brakes may go' : 'no surge brakes'}: ${voice.amount({ value: ours, unit: 'lb' })} behind ${voice.amount({ value: theirs, unit: 'lb' })}`
          : wanting(wanted, voice),
      ],
      more: [
        'Up to 12,000 lb: at most 1.75 times the towing vehicle; under 20,001 lb: at most 1.25 times; from there on none.',
        scope,
      ],
    }),
    {
      sources: ['49 CFR 393.48(d)'],
      rests: [rating, towing].flatMap((known) => (known ? noted([known.id]) : [])),
      missing: wanted,
      caution,
    },
  );
}
