// "Which seal?": by the journal it runs on and the hub's bore it is pressed into.
import { Fraction, numberOf, sealsFor } from '#core';
import type { FieldId, SealRow } from '#data';
import type { QuestionIntent } from '#intents';
import type { Answerer } from '../types.ts';
import { liveValues } from '../values.ts';
import { inUsual } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { tell } from './fitment-tell.ts';

/** What a shop calls the hole that the cup or the seal is pressed into. */
export const hubBores: readonly FieldId[] = ['cupBore', 'sealBore', 'pilotBore'];

/** The first of these fields that the question gives, in its usual unit. */
export const saidOf = ({ given = [] }: QuestionIntent, fields: readonly FieldId[]): string | undefined =>
  given
    .filter((said) => said.kind === 'measure')
    .filter(({ field }) => fields.includes(field))
    .map(inUsual)[0];

/** Of two sizes given the smaller is the journal's, whichever name stood nearer: the bore goes round it. */
function givenSizes(question: QuestionIntent): { readonly journal?: string | undefined; readonly bore?: string | undefined } {
  const all = (question.given ?? []).flatMap((said) =>
    said.kind === 'measure' && [...journals, ...hubBores].includes(said.field) ? [inUsual(said)] : [],
  );
  const [first, second] = all;
  if (first === undefined || second === undefined)
    return { journal: saidOf(question, journals), bore: saidOf(question, hubBores) };
  const [a, b] = [numberOf(first), numberOf(second)];
  return a && b && a.gt(b) ? { journal: second, bore: first } : { journal: first, bore: second };
}

const journals: readonly FieldId[] = ['sealJournal', 'journal'];

export const seal: Answerer = (question, job, know) => {
  const said = givenSizes(question);
  const of = (given: string | undefined, noted: FieldId) => {
    const on = given === undefined ? liveValues(job).findLast(({ field }) => field === noted) : undefined;
    return { size: given ?? (on && inUsual(on)), rests: on ? [on.id] : [] };
  };
  const journal = of(said.journal, 'sealJournal');
  const bore = of(said.bore, 'sealBore');
  const [inside, outside] = [numberOf(journal.size ?? ''), numberOf(bore.size ?? '')];
  const found = sealsFor(inside, outside, new Fraction(1, 64));
  const missing: FieldId[] = [...(inside ? [] : (['sealJournal'] as const)), ...(outside ? [] : (['sealBore'] as const))];
  return tell(know, found.length > 0 ? 'seal' : 'sealUnknown', (voice) => sealLines(found, missing, voice), {
    sources: found.map(({ source }) => source),
    rests: [...journal.rests, ...bore.rests],
    missing: found.length > 0 && missing.length < 2 ? missing : missing.length > 0 ? [...missing, 'seal'] : ['seal'],
    ...(found.length === 0 ? { asks: true as const } : {}),
  });
};

function sealLines(found: readonly SealRow[], missing: readonly FieldId[], voice: Voice) {
  const sizes = found
    .map(({ inside, outside }) => `${decimal(inside, voice)} by ${decimal(outside, voice)} inches`)
    .join(', or ');
  const other = missing.includes('sealBore')
    ? 'match the hub bore too'
    : missing.length > 0
      ? 'match the journal too'
      : undefined;
  return {
    always:
      found.length > 0
        ? [sizes, other]
        : [
            missing.length === 2
              ? 'give me the seal journal and the hub bore, or the number on the seal'
              : `no seal on file ${missing.length === 0 ? 'has those sizes' : missing.includes('sealBore') ? 'runs on that journal' : 'presses into that bore'}; match the number on the old seal`,
          ],
    more: ['a seal runs on its journal and presses into the hub bore: measure both, capacity fixes neither'],
  };
}

const decimal = (size: string, voice: Voice) => voice.amount({ value: new Fraction(size), unit: '1' });
