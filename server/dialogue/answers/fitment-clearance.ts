// "How wide over the tyres?", "Will it clear?"
import { type Clearances, clearancesAt, hubFaceRange, type Needs, needsOf, numberOf, type Quantity, tableRules } from '#core';
import type { QuestionIntent } from '#intents';
import type { JobRecord } from '#log/events';
import type { Answerer } from '../types.ts';
import { givenReadings, inUsual, readingsOf } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';
import { checkNames } from './fitment-words.ts';

export const clearance: Answerer = (question, job, know) => {
  const needs = needsOf([...readingsOf(job), ...givenReadings(question)]);
  const face = faceOf(question, job, needs);
  const room = face && clearancesAt(needs.trailer, { low: face.value, high: face.value }, tableRules);
  const missing = [...(face ? [] : (['hubFace'] as const)), ...(room?.missing ?? [])];
  const basis = {
    rests: needs.trailer.numbers.get('hubFace') ? idsOf(needs) : [],
    sources: ['geometry of hub face, offset and section width', '23 CFR 658.15'],
    missing,
  };
  return tell(
    know,
    room && known(room) ? 'clearance' : 'clearanceUnknown',
    (voice) => (ranging.test(question.words ?? '') ? rangeFirst : linesOf)(voice, needs, room, missing),
    basis,
  );
};

/** Asked for the hub faces that would work, not for the room at one. */
const ranging = /range|widest|narrow|how wide an? |(?:what|which) hub face|hub faces/;

const rangeFirst: typeof linesOf = (voice, needs, room, missing) => {
  const { low, high } = hubFaceRange(needs);
  const { always, more } = linesOf(voice, needs, room, missing);
  const range =
    low && high
      ? `from ${voice.amount(low)} to ${voice.amount(high)} hub face`
      : low
        ? `${voice.amount(low)} hub face and over`
        : high && `up to ${voice.amount(high)} hub face`;
  const open = low && high ? undefined : wanting(missing, voice);
  return { always: [range, open], more: [...always, ...more].filter((line) => line !== open) };
};

const known = ({ toSpring, toFrame, toFender, overall }: Clearances): boolean =>
  [toSpring, toFrame, toFender, overall].some(Boolean);

/** The hub face asked about: said, of the chosen axle, or the one measured. */
function faceOf({ given = [] }: QuestionIntent, job: JobRecord, { trailer }: Needs): Quantity | undefined {
  const said = given.filter((value) => value.kind === 'measure').find(({ field }) => field === 'hubFace');
  const face = numberOf((said && inUsual(said)) ?? job.candidate?.values.hubFace ?? '');
  if (face) return { value: face, unit: 'in' };
  const measured = trailer.numbers.get('hubFace')?.span.low;
  return measured ? { value: measured, unit: 'in' } : undefined;
}

const idsOf = ({ trailer }: Needs): string[] =>
  (
    ['hubFace', 'tyreSize', 'wheelOffset', 'backspacing', 'springCentre', 'springWidth', 'frameWidth', 'fenderWidth'] as const
  ).flatMap((field) => trailer.numbers.get(field)?.id ?? trailer.tokens.get(field)?.id ?? []);

function linesOf(voice: Voice, needs: Needs, room: Clearances | undefined, missing: Parameters<typeof wanting>[0]) {
  const each = (name: string, at: Quantity | undefined) => at && `${voice.amount(at)} from tyre to ${name}, each side`;
  const width = room?.overall && `${voice.amount(room.overall)} over the tyres`;
  const legal =
    room?.overall &&
    (room.overall.value.mul('25.4').gt(2600) ? 'wider than the law allows without a permit' : 'inside the legal width');
  const { low, high, lowBy, highBy } = hubFaceRange(needs);
  const range = [
    low && lowBy && `no hub face under ${voice.amount(low)}, for ${checkNames[lowBy]}`,
    high && highBy && `none over ${voice.amount(high)}, for ${checkNames[highBy]}`,
  ];
  const open = wanting(missing, voice);
  const all = [
    each('spring', room?.toSpring),
    each('frame', room?.toFrame),
    each('fender', room?.toFender),
    width && `${width}, ${legal}`,
  ];
  return {
    always: [...all, all.every((line) => line === undefined) ? open : undefined],
    more: [room?.track && `track ${voice.amount(room.track)}`, ...range, all.some(Boolean) ? open : undefined],
  };
}
