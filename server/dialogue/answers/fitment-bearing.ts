// "Which bearing is it?": by what is stamped, by what was measured, failing that by what is often found.
import {
  asStamped,
  type BearingMatch,
  type BearingSize,
  conesFor,
  cupsFor,
  Fraction,
  identifyByNumber,
  identifyBySize,
  interchange,
  numberOf,
  pairing,
  setsFor,
} from '#core';
import type { BearingRow, FieldId } from '#data';
import type { QuestionIntent } from '#intents';
import type { JobRecord, ValueRecord } from '#log/events';
import type { Answer, Answerer, Know } from '../types.ts';
import { liveValues } from '../values.ts';
import { listed } from '../words.ts';
import { inUsual } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { hubBores, saidOf } from './fitment-seal.ts';
import { tell } from './fitment-tell.ts';

/** A caliper reads thousandths; a journal runs a shade under its bearing's bore. */
const caliper = new Fraction(2, 1000);
const decides = 'the number on the part decides; cone and cup go in as a pair';

export const bearing: Answerer = (question, job, know) => {
  const stamped = saidOf(question, ['bearing', 'innerBearing', 'outerBearing', 'cup', 'innerCup', 'outerCup']);
  if (stamped !== undefined)
    return /interchange|replace|instead|cross/.test(question.words ?? '') ? inPlaceOf(stamped, know) : byNumber(stamped, know);
  const journal = saidOf(question, ['journal', 'innerJournal', 'outerJournal']);
  const bore = saidOf(question, hubBores);
  if (journal !== undefined || bore !== undefined) return bySize(sizeOf(journal, bore), know, []);
  return fromJob(question, job, know);
};

function sizeOf(journal: string | undefined, hub: string | undefined): BearingSize {
  const [bore, od] = [numberOf(journal ?? ''), numberOf(hub ?? '')];
  return { ...(bore && { bore }), ...(od && { od }) };
}

function byNumber(text: string, know: Know, rests: readonly string[] = []): Answer {
  const matches = identifyByNumber(text);
  if (matches.length === 0) {
    return tell(
      know,
      'bearingUnknown',
      (voice) => ({
        always: [`no bearing on file reads ${voice.value('bearing', asStamped(text))}`, 'read it again, or give me the journal'],
      }),
      { rests, missing: ['journal', 'bearing'], asks: true },
    );
  }
  const sources = [...new Set(matches.map(({ row }) => row.source))].slice(0, 3);
  return tell(
    know,
    matches.some(({ off }) => off > 0) || kinds(matches).length > 1 ? 'bearingCandidates' : 'bearing',
    (voice) => numberLines(text, matches, voice),
    { sources, rests },
  );
}

const kinds = (matches: readonly BearingMatch[]): string[] => [...new Set(matches.map(({ row, part }) => `${row[part]}`))];

function numberLines(text: string, matches: readonly BearingMatch[], voice: Voice) {
  const worn = text.includes('?') ? 'one on file fits what can be read' : undefined;
  const numbers = kinds(matches);
  const name = (number: string) => voice.value('bearing', number);
  const [first] = matches;
  if (numbers.length > 1 || !first) {
    return {
      always: [`it may be ${listed(numbers.slice(0, 4).map(name), 'or')}`, 'measure the journal to tell them apart'],
      more: matches.map((match) => rowText(match.row, voice)),
    };
  }
  const number = first.row[first.part];
  const partners = first.part === 'cone' ? cupsFor(number) : conesFor(number);
  const runs = `${first.part} ${name(number)} runs with ${first.part === 'cone' ? 'cup' : 'cone'} ${listed(partners.map(name), 'or')}`;
  return {
    always: [first.off > 0 ? `nearest is ${name(number)}; one character differs` : worn, runs],
    more: [...matches.map(({ row }) => rowText(row, voice)), ...alikeLines(matches, voice), decides],
  };
}

/** Pairs of the same bore, outside and width, which go where this one goes. */
function alikeLines(matches: readonly BearingMatch[], voice: Voice): string[] {
  const alike = new Set(matches.flatMap(({ row }) => interchange(row)).map(({ id }) => id));
  const names = [...alike].map((id) =>
    id
      .split('/')
      .map((one) => voice.value('bearing', one))
      .join(' in '),
  );
  return names.length > 0 ? [`same bore, outside and width: ${listed(names)}`] : [];
}

/** "What interchanges with it": by dimension, and only so. */
function inPlaceOf(text: string, know: Know): Answer {
  const matches = identifyByNumber(text);
  if (matches.some(({ off }) => off > 0) || matches.length === 0) return byNumber(text, know);
  const name = matches[0]?.row[matches[0].part] ?? '';
  return tell(
    know,
    'bearingAlike',
    (voice) => {
      const alike = alikeLines(matches, voice);
      return {
        always: alike.length > 0 ? alike : [`nothing on file has the size of ${voice.value('bearing', name)} but itself`],
        more: [
          ...matches.map(({ row }) => rowText(row, voice)),
          'The same size is not yet the same inside: replace cone and cup together.',
        ],
      };
    },
    { sources: [...new Set(matches.map(({ row }) => row.source))].slice(0, 3) },
  );
}

const rowText = (row: BearingRow, voice: Voice): string =>
  `${voice.value('bearing', row.cone)} / ${voice.value('bearing', row.cup)}: bore ${row.bore} in, outside ${row.od} in, width ${row.width} in`;

function bySize(size: BearingSize, know: Know, rests: readonly string[]): Answer {
  const rows = identifyBySize(size, caliper);
  const cones = [...new Set(rows.map(({ cone }) => cone))];
  const sources = [...new Set(rows.map(({ source }) => source))].slice(0, 3);
  const whole = size.bore !== undefined && size.od !== undefined;
  const others = whole
    ? 'read the number on cone or cup'
    : `give me the ${size.bore ? 'cup bore' : 'journal'} too, or read the number`;
  const several = `${whole ? 'these sizes do' : `the ${size.bore ? 'journal' : 'bore'} alone does`} not tell them apart: ${others}`;
  const missing: FieldId[] =
    cones.length === 0 ? ['journal'] : cones.length > 1 && !whole ? [size.bore ? 'cupBore' : 'journal'] : [];
  const cups = whole && cones.length === 1 ? [...new Set(rows.map(({ cup }) => cup))] : [];
  return tell(
    know,
    cones.length === 1 ? 'bearing' : cones.length === 0 ? 'bearingUnknown' : 'bearingCandidates',
    (voice) => {
      const list = (numbers: readonly string[]) =>
        listed(
          numbers.map((number) => voice.value('bearing', number)),
          'or',
        );
      return {
        always:
          cones.length === 0
            ? [`no bearing on file has ${whole ? 'those sizes' : 'that bore'}`, 'measure again, to the thousandth']
            : [
                `${list(cones)}${cups.length > 0 ? ` in cup ${list(cups)}` : ''}${whole ? '' : size.bore ? ' on that journal' : ' in that bore'}`,
                cones.length > 1 ? several : undefined,
              ],
        more: [...rows.map((row) => rowText(row, voice)), decides],
      };
    },
    { sources, rests, missing },
  );
}

/** What the job knows of the place asked about. */
function fromJob({ of = '' }: QuestionIntent, job: JobRecord, know: Know): Answer {
  const place = of.startsWith('outer') ? 'outer' : of.startsWith('inner') ? 'inner' : undefined;
  const last = (fields: readonly FieldId[]): ValueRecord | undefined =>
    liveValues(job).findLast(({ field }) => fields.includes(field));
  const cone = last(place ? [`${place}Bearing`] : ['innerBearing', 'outerBearing', 'bearing']);
  const cup = place && last([`${place}Cup`]);
  if (cone && cup) return paired(cone, cup, know);
  if (cone) return byNumber(cone.value, know, [cone.id]);
  const journal = last(place ? [`${place}Journal`] : ['innerJournal', 'outerJournal', 'journal']);
  const bore = last(['cupBore']);
  const sizes = [journal, bore].flatMap((value) => value ?? []);
  if (sizes.length > 0) {
    const size = sizeOf(journal && inUsual(journal), bore && inUsual(bore));
    return bySize(
      size,
      know,
      sizes.map(({ id }) => id),
    );
  }
  return oftenFound(job, know, place);
}

function paired(cone: ValueRecord, cup: ValueRecord, know: Know): Answer {
  const found = pairing(cone.value, cup.value);
  const rests = [cone.id, cup.id];
  const name = ({ value }: ValueRecord, voice: Voice) => voice.value('bearing', value);
  if (found.code === 'pair') {
    const runs = (voice: Voice) => `cone ${name(cone, voice)} runs in cup ${name(cup, voice)}`;
    const about = { rests, sources: [found.row.source] };
    return tell(know, 'bearingPair', (voice) => ({ always: [runs(voice)], more: [rowText(found.row, voice), decides] }), about);
  }
  if (found.code === 'unknown') {
    const strange = (voice: Voice) => listed(found.which.map((one) => voice.value('bearing', one)));
    const lines = (voice: Voice) => ({
      always: [`${strange(voice)} is not on file`, "match cone and cup by their maker's table"],
    });
    return tell(know, 'bearingUnknown', lines, { rests });
  }
  return tell(
    know,
    'bearingNotAPair',
    (voice) => ({
      always: [
        `cone ${name(cone, voice)} does not run in cup ${name(cup, voice)}`,
        `it wants ${listed(
          found.cupsForCone.map((one) => voice.value('bearing', one)),
          'or',
        )}`,
      ],
      more: [decides],
    }),
    { rests, sources: ['general inch-series bearing tables'], caution: 'Never run a cone in a cup of another number.' },
  );
}

function oftenFound(job: JobRecord, know: Know, place: 'inner' | 'outer' | undefined): Answer {
  const last = liveValues(job).findLast(({ field }) => field === 'capacity');
  const capacity = last ? inUsual(last) : job.candidate?.values.capacity;
  const amount = numberOf(capacity ?? '');
  const sets = amount ? setsFor({ capacity: amount }) : [];
  const [set] = sets;
  if (!set || !amount)
    return tell(know, 'bearingUnknown', () => ({ always: ['read me the number on the bearing, or give me the journal'] }), {
      missing: ['bearing', 'journal'],
      asks: true,
    });
  const ends = place ? [place] : (['inner', 'outer'] as const);
  return tell(
    know,
    'bearingOften',
    (voice) => ({
      always: [
        `often ${ends
          .map(
            (end) =>
              `${end} ${set[end]
                .split('/')
                .map((one) => voice.value('bearing', one))
                .join(' in ')}`,
          )
          .join(', ')} at ${voice.amount({ value: amount, unit: 'lb' })}`,
        'read the number before ordering',
      ],
      more: [...sets.map((one) => `${one.spindle}: inner ${one.inner}, outer ${one.outer}`), decides],
    }),
    { sources: sets.map(({ source }) => source), missing: ['bearing'] },
  );
}
