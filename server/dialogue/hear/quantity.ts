// A number with no name: the value asked about, else the next one the step wants, else the last one read back.
import { type FieldId, fieldOf } from '#data';
import type { QuantityIntent, Said, Where } from '#intents';
import { isPlausible, unitSuits } from '../doubts.ts';
import { ask, type Draft, openQuestion, say } from '../draft.ts';
import { asSlot, wanted } from '../plan.ts';
import { liveValues } from '../values.ts';
import { valueLine } from '../wording/values.ts';
import { sayOnly } from '../words.ts';
import { correct } from './correct.ts';
import { sideIsOpen, take } from './take.ts';

export function bareNumber(draft: Draft, said: QuantityIntent): Draft {
  // Words nobody understood may be the name of something else: "cast limit is 12.09" is no drum reading.
  if (draft.heard.understanding.unclaimed.length > 0) return whatIsIt(draft, said);
  const asked = openQuestion(draft);
  if (asked && asked.valueIds.length > 0) return correct(draft, { ...said, kind: 'correct' });
  const slot = wanted(draft.job)
    .map(asSlot)
    .find(
      ({ field, side }) =>
        (said.side === undefined || side === undefined || said.side === side || said.side === 'both') && suits(field, said),
    );
  if (slot) return takeHere(draft, slot.field, said);
  const last = liveValues(draft.job).findLast(({ status }) => status === 'heard');
  if (last && suits(last.field, said)) return correct(draft, { ...said, kind: 'correct' });
  return whatIsIt(draft, said);
}

function whatIsIt(draft: Draft, said: QuantityIntent): Draft {
  const { shop } = draft.know;
  return say(draft, valueLine('whatIsIt', { said: sayOnly({ field: 'hubFace', ...said }, shop) }, shop));
}

/** A bare number never fills a stamped number: a bearing must be named. */
function suits(field: FieldId, said: Said): boolean {
  const { unit, choices } = fieldOf(field);
  if (unit === undefined && choices === undefined) return false;
  return unitSuits(field, said) && isPlausible(field, said.unit === '1' && !said.unitSaid ? { value: said.value } : said);
}

/** Takes a value in, asking which side where the field has two and none was said. */
export function takeHere(draft: Draft, field: FieldId, said: Said & Where): Draft {
  if (!unitSuits(field, said)) return say(draft, valueLine('wrongKind', { field, said }, draft.know.shop));
  if (!sideIsOpen(draft, field, said)) return take(draft, field, said);
  const { kind: _kind, span: _span, ...rest } = said as QuantityIntent;
  const line = valueLine('askSide', { field, value: { field, ...rest } }, draft.know.shop);
  const { left, right } = draft.know.shop.sides;
  return ask(draft, { about: 'target', valueIds: [], choices: [left, right], given: JSON.stringify({ field, ...rest }) }, line);
}
