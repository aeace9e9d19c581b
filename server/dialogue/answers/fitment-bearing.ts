// "Which bearing is it?", "Which seal?": by what is stamped, by what was measured, failing that by what is often found.
import {
  asStamped,
  type BearingMatch,
  conesFor,
  cupsFor,
  Fraction,
  identifyByNumber,
  identifyBySize,
  numberOf,
  pairing,
  sealsFor,
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
import { tell } from './fitment-tell.ts';
import { wornNumber } from './fitment-worn.ts';

/** A caliper reads thousandths; a journal runs a shade under its bearing's bore. */
const caliper = new Fraction(2, 1000);
const decides = 'the number on the part decides; cone and cup go in as a pair';

export const bearing: Answerer = (question, job, know) => {
  const stamped =
    wornNumber(question.words ?? '') ??
    saidOf(question, ['bearing', 'innerBearing', 'outerBearing', 'cup', 'innerCup', 'outerCup']);
  if (stamped !== undefined) return byNumber(stamped, know);
  const journal = saidOf(question, ['journal', 'innerJournal', 'outerJournal']);
  if (journal !== undefined) return bySize(journal, know, []);
  return fromJob(question, job, know);
};

const saidOf = ({ given = [] }: QuestionIntent, fields: readonly FieldId[]): string | undefined =>
  given
    .filter((said) => said.kind === 'measure')
    .filter(({ field }) => fields.includes(field))
    .map(inUsual)[0];

function byNumber(text: string, know: Know, rests: readonly string[] = []): Answer {
  const matches = identifyByNumber(text);
  if (matches.length === 0) {
    return tell(
      know,
      'bearingUnknown',
      (voice) => ({
        always: [`no bearing on file reads ${voice.value('bearing', asStamped(text))}`, 'read it again, or give me the journal'],
      }),
      { rests, missing: ['journal'] },
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
    more: [...matches.map(({ row }) => rowText(row, voice)), decides],
  };
}

const rowText = (row: BearingRow, voice: Voice): string =>
  `${voice.value('bearing', row.cone)} / ${voice.value('bearing', row.cup)}: bore ${row.bore} in, outside ${row.od} in, width ${row.width} in`;

function bySize(journal: string, know: Know, rests: readonly string[]): Answer {
  const bore = numberOf(journal);
  const rows = bore ? identifyBySize({ bore }, caliper) : [];
  const cones = [...new Set(rows.map(({ cone }) => cone))];
  const sources = [...new Set(rows.map(({ source }) => source))].slice(0, 3);
  const several = 'the journal alone does not tell them apart: read the number on cone or cup';
  return tell(
    know,
    cones.length === 1 ? 'bearing' : cones.length === 0 ? 'bearingUnknown' : 'bearingCandidates',
    (voice) => ({
      always:
        cones.length === 0
          ? ['no bearing on file has that bore', 'measure the journal again, to the thousandth']
          : [
              `${listed(
                cones.map((cone) => voice.value('bearing', cone)),
                'or',
              )} on that journal`,
              cones.length > 1 ? several : undefined,
            ],
      more: [...rows.map((row) => rowText(row, voice)), decides],
    }),
    { sources, rests, missing: cones.length === 0 ? ['journal'] : [] },
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
  if (journal) return bySize(inUsual(journal), know, [journal.id]);
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

export const seal: Answerer = (question, job, know) => {
  const on = liveValues(job).findLast(({ field }) => field === 'sealJournal');
  const said = saidOf(question, ['sealJournal', 'journal']);
  const journal = said ?? (on && inUsual(on));
  const rests = on && said === undefined ? [on.id] : [];
  const found = journal === undefined ? [] : sealsFor(numberOf(journal), undefined, new Fraction(1, 64));
  const missing: FieldId[] = journal === undefined ? ['sealJournal', 'seal'] : [];
  return tell(
    know,
    found.length > 0 ? 'seal' : 'sealUnknown',
    () => ({
      always:
        found.length > 0
          ? [`${found.map(({ inside, outside }) => `${inside} by ${outside} inches`).join(', or ')}`, 'match the hub bore too']
          : [
              journal === undefined
                ? 'give me the seal journal and the hub bore, or the number on the seal'
                : 'no seal on file runs on that journal; match the number on the old seal',
            ],
      more: ['a seal runs on its journal and presses into the hub bore: measure both, capacity fixes neither'],
    }),
    { sources: found.map(({ source }) => source), rests, missing },
  );
};
