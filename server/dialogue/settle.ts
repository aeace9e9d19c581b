// Reading back: what was heard and not yet read back is either said, or asked about. At most three values at a time.
import { policy } from '#data';
import type { JobRecord, ValueRecord } from '#log/events';
import { judgeValue } from './answers/service.ts';
import type { Judged } from './answers/service-judged.ts';
import { type Doubt, doubtsOf } from './doubts.ts';
import { ask, type Draft, emit, type Line, say } from './draft.ts';
import { isMeasuredAgain } from './plan.ts';
import { byId, isLive, isPending, needsYes } from './values.ts';
import { valueLine } from './wording/values.ts';
import { sentence } from './words.ts';

/** Kinds of utterance that go on with the work, and so confirm what was read back before. */
const goesOn = new Set(['measure', 'quantity', 'note', 'next', 'done', 'told', 'skip', 'remind']);

/** Kinds that object: such an utterance confirms nothing by the way. */
const objects = new Set(['deny', 'correct', 'strike', 'undo']);

/** Plain values read back in an earlier turn count once the technician goes on without objecting. */
export function goOn(draft: Draft): Draft {
  const { heard, job, late } = draft;
  const kinds = heard.understanding.intents.map((intent) => (intent.kind === 'command' ? intent.name : intent.kind));
  const going = kinds.some((kind) => goesOn.has(kind)) && !kinds.some((kind) => objects.has(kind));
  if (!going || late) return draft;
  const agreed = job.values.filter(
    (value) =>
      value.status === 'heard' &&
      value.readBack &&
      value.turn !== heard.turn &&
      !needsYes(value) &&
      !isPending(value, job) &&
      !hasPending(value, draft),
  );
  return emit(draft, ...agreed.map(({ id }) => ({ kind: 'valueConfirmed' as const, id, how: 'wentOn' as const })));
}

const hasPending = (old: ValueRecord, { job }: Draft): boolean =>
  job.values.some((value) => value.supersedes === old.id && value.status === 'heard');

/** Values heard and neither read back nor asked about, oldest first. */
function unread({ job, lines }: Draft): readonly ValueRecord[] {
  const told = new Set(lines.flatMap(({ values }) => values ?? []));
  return job.values.filter(({ id, status, readBack, asked }) => status === 'heard' && !readBack && !asked && !told.has(id));
}

/** Reads back or asks about what is waiting. Does nothing while a question of this turn is open. */
export function settle(before: Draft): Draft {
  const draft = goOn(before);
  if (askedNow(draft)) return draft;
  const waiting = unread(draft);
  if (waiting.length === 0) return draft;
  const chunk = waiting.slice(0, policy.valuesPerReadBack);
  const more = waiting.length - chunk.length;
  const doubted = chunk.filter((value) => doubtsNow(value, draft.job).length > 0);
  const plain = chunk.filter((value) => !doubted.includes(value));
  const told =
    plain.length > 0 ? say(draft, takenLine(draft, plain, doubted.length > 0 ? 0 : more), ...judgedLines(draft, plain)) : draft;
  const alone = doubted.find((value) => standsAlone(doubtsNow(value, draft.job)));
  if (alone) return askAbout(told, [alone, ...partners(alone, doubted, draft)], 0);
  return doubted.length > 0 ? askAbout(told, doubted, more) : told;
}

export const askedNow = (draft: Draft): boolean => draft.job.asked !== undefined && draft.job.asked.id !== draft.wasAsked?.id;

/** Values of the same breath that contradict it: which of them is wrong is one question. */
function partners(value: ValueRecord, doubted: readonly ValueRecord[], { job }: Draft): readonly ValueRecord[] {
  const [doubt] = doubtsNow(value, job);
  const others = doubt?.code === 'sidesApart' ? [doubt.other] : doubt?.code === 'order' ? [doubt.over, doubt.under] : [];
  return doubted.filter(({ id }) => id !== value.id && others.some((other) => other.id === id));
}

/** A doubt with its own question cannot share it with other values. */
const standsAlone = (doubts: readonly Doubt[]): boolean => doubts.some(({ code }) => code !== 'risk' && code !== 'lowConfidence');

function takenLine({ job, know }: Draft, values: readonly ValueRecord[], more: number): Line {
  const replaced = values.length === 1 ? byId(job, values[0]?.supersedes ?? '') : undefined;
  const [value] = values;
  const line =
    value && replaced && !isLive(replaced)
      ? valueLine('corrected', { value, old: replaced }, know.shop)
      : valueLine('taken', { values, more }, know.shop);
  return { ...line, values: values.map(({ id }) => id) };
}

/** Asks whether the values are right, in the words of the first doubt. `more`: values that wait behind them. */
export function askAbout(draft: Draft, values: readonly ValueRecord[], more: number, again = false): Draft {
  const ids = values.map(({ id }) => id);
  const [value] = values;
  const doubts = value ? doubtsNow(value, draft.job) : [];
  const shared = values.length === 1 || doubts[0]?.code === 'sidesApart' || doubts[0]?.code === 'order';
  const doubt = shared ? doubts.find(({ code }) => !again || code !== 'soundsLike') : undefined;
  const line = value && doubt ? lineOf(doubt, value, more, draft) : valueLine('askRight', { values, more }, draft.know.shop);
  const choices =
    doubt?.code === 'soundsLike' ? { about: 'alternatives' as const, choices: doubt.choices } : { about: 'value' as const };
  return ask(draft, { ...choices, valueIds: ids, ...(again ? { again } : {}) }, { ...line, values: ids });
}

/** Nothing is judged against a reading that is about to be taken again. */
function doubtsNow(value: ValueRecord, job: JobRecord): readonly Doubt[] {
  const doubts = doubtsOf(value, job);
  return isMeasuredAgain(job, value.field)
    ? doubts.filter(({ code }) => code !== 'outOfLimits' && code !== 'sidesApart')
    : doubts;
}

/** What is not plainly good is said beside the value. */
function judgedLines(draft: Draft, values: readonly ValueRecord[]): readonly Line[] {
  return values
    .filter(({ field }) => !isMeasuredAgain(draft.job, field))
    .flatMap((value) => judgedLine(draft, value, ['doubtful']));
}

/** What the trade or the maker says of a reading, where that is of one of these kinds. */
export function judgedLine({ job, know, now }: Draft, value: ValueRecord, kinds: readonly Judged['gravity'][]): readonly Line[] {
  const judged = judgeValue(value, job, know, now);
  return judged && kinds.includes(judged.gravity)
    ? [{ code: judged.code, tone: 'caution' as const, speak: sentence(judged.speak), show: sentence(judged.show) }]
    : [];
}

function lineOf(doubt: Doubt, value: ValueRecord, more: number, { job, know, now }: Draft): Line {
  const { shop } = know;
  switch (doubt.code) {
    case 'soundsLike':
      return valueLine('askAlike', { value, choices: doubt.choices }, shop);
    case 'replaces':
      return valueLine('askReplace', { value, old: doubt.old }, shop);
    case 'implausible':
      return valueLine('askImplausible', { value, field: doubt.field }, shop);
    case 'order':
      return valueLine('askOrder', { value, over: doubt.over, under: doubt.under }, shop);
    case 'sidesApart':
      return valueLine('askSides', { value, other: doubt.other }, shop);
    case 'outOfLimits':
      return valueLine('askLimits', { value, judged: judgeValue(value, job, know, now) ?? { speak: '', show: '' } }, shop);
    case 'lowConfidence':
      return valueLine('askUnsure', { value }, shop);
    case 'risk':
      return valueLine('askRight', { values: [value], more }, shop);
  }
}
