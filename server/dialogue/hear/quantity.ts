// A number with no name: the value asked about, else the next one the step wants, else the last one read back.
import { type FieldId, fieldOf } from '#data';
import { type QuantityIntent, type Said, type Where, wholeIfCounted } from '#intents';
import type { ValueRecord } from '#log/events';
import { torqueAsked } from '../answers/service.ts';
import { isPlausible, meantBy, unitSuits } from '../doubts.ts';
import { ask, type Draft, openQuestion, say } from '../draft.ts';
import { asSlot, stepAt, wanted } from '../plan.ts';
import { byId, liveValues } from '../values.ts';
import { valueLine } from '../wording/values.ts';
import { sayOnly } from '../words.ts';
import { correct } from './correct.ts';
import { lastAsked } from './last-asked.ts';
import { sideIsOpen, take } from './take.ts';

export function bareNumber(draft: Draft, said: QuantityIntent): Draft {
  const field = said.origin === 'maker' ? makersField(draft, said) : undefined;
  if (field) return takeHere(draft, field, said);
  // Words nobody understood may be the name of something else: "cast limit is 12.09" is no drum reading.
  if (draft.heard.understanding.unclaimed.length > 0) return whatIsIt(draft, said);
  const asked = openQuestion(draft);
  const mate = mateOf(draft, said);
  if (said.otherSide && !mate) return whatIsIt(draft, said);
  if (mate && (said.otherSide || asked?.valueIds.includes(mate.id))) return takeBeside(draft, mate, said);
  const about = byId(draft.job, asked?.valueIds[0] ?? '');
  if (about && !wholeIfCounted(about.field, said.value)) return whatIsIt(draft, said);
  // A side is told of no value that has none: it is another reading.
  const isOther = (value: ValueRecord) => said.side !== undefined && !fieldOf(value.field).perSide;
  if (asked && asked.valueIds.length > 0 && !(about && isOther(about))) return correct(draft, { ...said, kind: 'correct' });
  const slot = wanted(draft.job)
    .map(asSlot)
    .find(
      ({ field, side }) =>
        (said.side === undefined || side === undefined || said.side === side || said.side === 'both') && suits(field, said),
    );
  if (slot) return takeHere(draft, slot.field, said);
  if (mate) return takeBeside(draft, mate, said);
  const last = liveValues(draft.job).findLast(({ status }) => status === 'heard');
  if (last && !isOther(last) && suits(last.field, said)) return correct(draft, { ...said, kind: 'correct' });
  return whatIsIt(draft, said);
}

/** "The book says seventy": of what was just asked about, else of what the step records. */
function makersField(draft: Draft, said: QuantityIntent): FieldId | undefined {
  const asked = lastAsked(draft);
  const about = asked?.topic === 'torque' ? torqueAsked(asked, draft.job, draft.know, draft.now) : undefined;
  const here = stepAt(draft.job)?.step.record.map(({ field }) => field) ?? [];
  return [...(about ? [about] : []), ...here].find((field) => makersGive.has(field) && suits(field, said));
}

/** What a part's maker publishes a figure for, and what is judged by it. */
const makersGive: ReadonlySet<FieldId> = new Set<FieldId>([
  'wheelNutTorque',
  'uBoltTorque',
  'springBoltTorque',
  'seatTorque',
  'endPlay',
]);

/** "Right six thou" after the left, "the other side": the value told last that it could be the other side of. */
function mateOf({ job }: Draft, said: QuantityIntent): ValueRecord | undefined {
  const live = liveValues(job);
  if (!said.otherSide && said.side !== 'left' && said.side !== 'right') return undefined;
  const isTold = ({ field, axle, stage }: ValueRecord) =>
    live.some((value) => value.field === field && value.axle === axle && value.stage === stage && value.side === said.side);
  return live.findLast((value) => isOfOneSide(value) && suits(value.field, said) && (said.otherSide || !isTold(value)));
}

const takeBeside = (draft: Draft, { field, axle, stage }: ValueRecord, said: QuantityIntent): Draft =>
  take(draft, field, { ...(axle && { axle }), stage, ...sided(draft, field, said) });

const isOfOneSide = ({ side }: ValueRecord): boolean => side === 'left' || side === 'right';

/** "The other side" of a field: opposite the one told last. */
export function sided<T extends Where>(draft: Draft, field: FieldId, said: T): T {
  const last = said.otherSide && liveValues(draft.job).findLast((value) => value.field === field && isOfOneSide(value));
  return last ? { ...said, side: last.side === 'left' ? 'right' : 'left' } : said;
}

function whatIsIt(draft: Draft, said: QuantityIntent): Draft {
  const { shop } = draft.know;
  return say(draft, valueLine('whatIsIt', { said: sayOnly({ field: 'hubFace', ...said }, shop) }, shop));
}

/** A bare number never fills a stamped number: a bearing must be named. */
function suits(field: FieldId, said: Said): boolean {
  const { unit, choices } = fieldOf(field);
  if (unit === undefined && choices === undefined) return false;
  if (!wholeIfCounted(field, said.value)) return false;
  return unitSuits(field, said) && isPlausible(field, meantBy(said));
}

/** Takes a value in, asking which side where the field has two and none was said. */
export function takeHere(draft: Draft, field: FieldId, said: Said & Where): Draft {
  if (!unitSuits(field, said)) return say(draft, valueLine('wrongKind', { field, said }, draft.know.shop));
  if (!sideIsOpen(draft, field, said)) return take(draft, field, said);
  const { kind: _kind, span: _span, ...rest } = said as QuantityIntent;
  return askSide(draft, { field, ...rest });
}

interface Given extends Said, Where {
  readonly field: FieldId;
}

function askSide(draft: Draft, given: Given, again?: true): Draft {
  const line = valueLine('askSide', { field: given.field, value: given }, draft.know.shop);
  const { left, right } = draft.know.shop.sides;
  const asked = { about: 'target' as const, valueIds: [], choices: [left, right], given: JSON.stringify(given) };
  return ask(draft, { ...asked, ...(again && { again }) }, line);
}

/** A value whose side was asked for and not told is asked about once more, then kept as it is: it was read off something. */
export function sideUntold(draft: Draft): Draft {
  const { wasAsked, events } = draft;
  const lapsed = events.some(
    (body) => body.kind === 'askClosed' && body.id === wasAsked?.id && /expired|replaced/.test(body.outcome),
  );
  if (wasAsked?.about !== 'target' || wasAsked.valueIds.length > 0 || !lapsed) return draft;
  const given = JSON.parse(wasAsked.given ?? '{}') as Given;
  if (events.some((body) => body.kind === 'valueHeard' && body.value.field === given.field)) return draft;
  const isFree = draft.job.asked === undefined && draft.job.status === 'open' && !wasAsked.again;
  return isFree ? askSide(draft, given, true) : take(draft, given.field, given);
}
