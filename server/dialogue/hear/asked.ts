// What a yes, a no or a choice does to the question that is open. A yes binds to the question asked, in time, and to no other.

import { type FieldId, fieldOf, policy } from '#data';
import { type CommandName, type Intent, type Said, sayField, type Where } from '#intents';
import type { Asked, ValueRecord } from '#log/events';
import { isPlausible, meantBy, unitSuits } from '../doubts.ts';
import { closeAsk, type Draft, emit, openQuestion, say } from '../draft.ts';
import { stepAt } from '../plan.ts';
import { askAbout } from '../settle.ts';
import { byId, isLive } from '../values.ts';
import { jobLine } from '../wording/jobs.ts';
import { repairLine } from '../wording/repair.ts';
import { stepLine } from '../wording/steps.ts';
import { valueLine } from '../wording/values.ts';
import { askClosing, leftForClosing } from './closing.ts';
import { askTarget, replace, strikeNow } from './correct.ts';
import { factsTold } from './facts.ts';
import { askSkip, skipNow } from './steps.ts';
import { take } from './take.ts';
import { toldAll, toldNot } from './told.ts';

function isStale({ job, now, late }: Draft): boolean {
  const asked = Date.parse(job.askedAt ?? now);
  const seconds = job.asked?.about === 'facts' ? policy.factsSeconds : policy.askSeconds;
  return late || Date.parse(now) - asked > seconds * 1000;
}

export function yes(draft: Draft): Draft {
  const asked = openQuestion(draft);
  if (!asked) return yesToReadBack(draft);
  return isStale(draft) ? askAgain(draft, asked) : agreed(draft, asked);
}

/** No question open: a yes to what the last turn read back. */
function yesToReadBack(draft: Draft): Draft {
  const last = draft.job.values.filter(
    ({ status, readBack, asked }) => status === 'heard' && !asked && readBack === draft.lastTurn,
  );
  if (last.length === 0 || isLongAgo(draft)) return say(draft, repairLine('nothingAsked', {}, draft.know.shop));
  return confirm(draft, last);
}

const isLongAgo = ({ job, now, late }: Draft): boolean =>
  late || Date.parse(now) - Date.parse(job.lastReply?.at ?? now) > policy.askSeconds * 1000;

function confirm(draft: Draft, values: readonly ValueRecord[]): Draft {
  const bodies = values.flatMap(({ id, supersedes }) => {
    const old = supersedes === undefined ? undefined : byId(draft.job, supersedes);
    const corrected = old && isLive(old) ? [{ kind: 'valueCorrected' as const, id: old.id, by: id }] : [];
    return [...corrected, { kind: 'valueConfirmed' as const, id, how: 'said' as const }];
  });
  return say(emit(draft, ...bodies), valueLine('confirmed', { values }, draft.know.shop));
}

/** Too late for a yes: the same question anew, under a new id. */
function askAgain(draft: Draft, asked: Asked): Draft {
  const { id: _id, ...rest } = asked;
  const fresh = { ...rest, id: `${draft.heard.turn}.q`, again: true };
  const line = repairLine('questionIsOld', { question: asked.question }, draft.know.shop);
  return say(emit(closeAsk(draft, 'expired'), { kind: 'asked', asked: fresh }), line);
}

const valuesOf = ({ job }: Draft, { valueIds }: Asked): readonly ValueRecord[] =>
  valueIds.map((id) => byId(job, id)).filter((value) => value !== undefined && isLive(value)) as ValueRecord[];

function agreed(draft: Draft, asked: Asked): Draft {
  const closed = closeAsk(draft, 'yes');
  const { shop } = draft.know;
  switch (asked.about) {
    case 'value':
      return confirm(closed, valuesOf(closed, asked));
    case 'alternatives':
      return choose(draft, asked);
    case 'strike':
      return strikeNow(closed, valuesOf(closed, asked));
    case 'skip':
      return asked.step ? skipNow(draft, asked.step, asked.given ?? '') : closed;
    case 'close':
      return leftForClosing(draft).some(({ safety }) => safety) ? askClosing(draft, 'closeNeedsWord') : closeNow(closed);
    case 'told':
      return toldAll(closed, asked);
    case 'verdict':
      return say(closed, jobLine('verdictTaken', {}, shop));
    case 'undo':
    case 'target':
    case 'reason':
    case 'facts':
      return repeatQuestion(draft, asked);
  }
}

/** What would close a job with open points of safety: a word of its own, said to the list of them and in time. */
export function anyway(draft: Draft): Draft | undefined {
  const asked = openQuestion(draft);
  return asked?.about === 'close' && !isStale(draft) ? closeNow(closeAsk(draft, 'yes')) : undefined;
}

function closeNow(draft: Draft): Draft {
  const open = leftForClosing(draft).map(({ text }) => text);
  return say(emit(draft, { kind: 'closed', open }), jobLine('closed', { open: open.length }, draft.know.shop));
}

/** A yes cannot answer a choice: the choice again. */
function choose(draft: Draft, asked: Asked): Draft {
  return askAbout(closeAsk(draft, 'replaced'), valuesOf(draft, asked), 0);
}

export function repeatQuestion(draft: Draft, asked: Asked): Draft {
  const { id: _id, ...rest } = asked;
  const fresh = { ...rest, id: `${draft.heard.turn}.q` };
  const line = { code: 'question', tone: 'ask' as const, speak: asked.question, show: asked.question };
  return say(emit(closeAsk(draft, 'replaced'), { kind: 'asked', asked: fresh }), line);
}

export function no(draft: Draft): Draft {
  const asked = openQuestion(draft);
  return asked ? denied(draft, asked) : noToReadBack(draft);
}

function noToReadBack(draft: Draft): Draft {
  const last = draft.job.values.filter(({ status, readBack }) => status === 'heard' && readBack === draft.lastTurn);
  if (last.length === 0) return say(draft, repairLine('nothingToDeny', {}, draft.know.shop));
  return wrong(draft, last);
}

/** One value: struck, and said again. Several: which one. */
function wrong(draft: Draft, values: readonly ValueRecord[]): Draft {
  const [value] = values;
  if (!value) return draft;
  if (values.length > 1) return askTarget(draft, values, { value: '' });
  const struck = emit(draft, { kind: 'valueStruck', id: value.id, reason: 'denied' });
  return say(struck, valueLine('sayItAgain', { value }, draft.know.shop));
}

function denied(draft: Draft, asked: Asked): Draft {
  const closed = closeAsk(draft, 'no');
  const { shop } = draft.know;
  switch (asked.about) {
    case 'value':
    case 'alternatives':
      return wrong(closed, valuesOf(closed, asked));
    case 'told':
      return toldNot(closed, asked);
    case 'skip':
    case 'reason':
      return say(closed, stepLine('keptStep', {}, shop));
    case 'close':
      return say(closed, jobLine('notClosed', {}, shop));
    case 'verdict':
      return say(closed, jobLine('verdictNot', {}, shop));
    case 'strike':
    case 'undo':
    case 'target':
    case 'facts':
      return say(closed, repairLine('leftAsIs', {}, shop));
  }
}

/** What the utterance answers besides yes and no; undefined where it answers nothing. */
export function answerTo(draft: Draft, asked: Asked): Draft | undefined {
  const { intents, text } = draft.heard.understanding;
  if (isStale(draft)) return undefined;
  switch (asked.about) {
    case 'reason':
      return reasonGiven(draft, asked, intents, text);
    case 'alternatives':
      return pick(draft, asked, intents);
    case 'target':
      return target(draft, asked);
    case 'facts':
      return factsTold(draft, asked);
    case 'verdict':
      return takesIt(intents) ? agreed(draft, asked) : undefined;
    case 'told':
      return isOnly(intents, 'done') ? agreed(draft, asked) : undefined;
    default:
      return undefined;
  }
}

/** "Take that one", said to the verdict on it; one named by its place is another question. */
const takesIt = ([only, ...more]: readonly Intent[]): boolean =>
  only?.kind === 'question' && only.of === 'chosen' && !/\bthe\b/.test(only.words ?? '') && more.length === 0;

const isOnly = ([only, ...more]: readonly Intent[], name: CommandName): boolean =>
  only?.kind === 'command' && only.name === name && more.length === 0;

/** Any words but a command are the reason. */
function reasonGiven(draft: Draft, asked: Asked, intents: readonly Intent[], text: string): Draft | undefined {
  const step = stepAt(draft.job, asked.step);
  const commanded = intents.some((intent) => intent.kind === 'command' && intent.name !== 'skip');
  return step && !commanded && text.trim() !== '' ? askSkip(draft, step, text.trim()) : undefined;
}

/** One of the choices was said. Where it could again be misheard, it is asked once more by its digits. */
function pick(draft: Draft, asked: Asked, intents: readonly Intent[]): Draft | undefined {
  const said = intents.find((intent) => intent.kind === 'quantity' || intent.kind === 'measure' || intent.kind === 'correct');
  const [old] = valuesOf(draft, asked);
  if (!old || intents.length !== 1 || !said || !asked.choices?.includes(said.value) || isElsewhere(said, old)) return undefined;
  const alike = asked.choices.filter((choice) => choice !== said.value);
  const sure = !alike.some((choice) => said.alternatives?.includes(choice));
  if (said.value === old.value) {
    const closed = closeAsk(draft, sure ? 'yes' : 'replaced');
    return sure ? confirm(closed, [old]) : askPlainly(closed, [old]);
  }
  const { alternatives: _alternatives, ...plain } = { ...old, ...pickWords(said) };
  const replaced = replace(draft, old, plain);
  const fresh = replaced.job.values.at(-1);
  if (!fresh) return replaced;
  return sure ? confirm(replaced, [fresh]) : askPlainly(replaced, [fresh]);
}

/** "Front right ninety", asked of the left: another value, no choice between two. */
const isElsewhere = (said: Where, { side, axle }: ValueRecord): boolean =>
  (said.side !== undefined && said.side !== side) || (said.axle !== undefined && said.axle !== axle);

const pickWords = ({ value, resolution }: Said): Said => ({ value, ...(resolution ? { resolution } : {}) });

function askPlainly(draft: Draft, values: readonly ValueRecord[]): Draft {
  return askAbout(draft, values, 0, true);
}

/** "Left", "the spring centre": completes what was given, or names the value that is wrong. */
function target(draft: Draft, asked: Asked): Draft | undefined {
  const given = JSON.parse(asked.given ?? '{}') as Said & Where & { field?: ValueRecord['field'] };
  const side = sideSaid(draft);
  const { intents } = draft.heard.understanding;
  if (asked.valueIds.length === 0) return side && given.field && sideTold(draft, given.field, { ...given, side });
  const offered = valuesOf(draft, asked);
  const elsewhere = intents.some((intent) => intent.kind === 'measure' && !offered.some(({ field }) => field === intent.field));
  const named = offered.filter((value) => isNamed(draft, value, side));
  const [value] = named;
  if (!value || named.length > 1 || elsewhere) return undefined;
  const amount = intents.find((intent) => intent.kind === 'measure' || intent.kind === 'correct');
  const said = amount ?? (given.value === '' ? undefined : given);
  const closed = closeAsk(draft, 'yes');
  return said ? replace(closed, value, said) : wrong(closed, [value]);
}

/** A side and no more completes what was given, a number beside it takes its place; whatever else was said is heard for itself. */
function sideTold(draft: Draft, field: FieldId, given: Said & Where): Draft | undefined {
  const [only, ...more] = draft.heard.understanding.intents;
  if (more.length > 0) return undefined;
  if (only === undefined || isNoMore(only)) return take(closeAsk(draft, 'yes'), field, given);
  if (only.kind !== 'quantity' || !unitSuits(field, only) || !isPlausible(field, meantBy(only))) return undefined;
  return take(closeAsk(draft, 'no'), field, only);
}

/** "Right" is a yes elsewhere, and "the left one" no number. */
const isNoMore = (intent: Intent): boolean =>
  intent.kind === 'unknown' ||
  (intent.kind === 'command' && intent.name === 'confirm') ||
  (intent.kind === 'quantity' && intent.value === '1' && !intent.unitSaid);

const namesOf = ({ field }: ValueRecord): readonly string[] => [
  ...fieldOf(field).said,
  sayField(field, { spelling: 'american' }),
];

function isNamed({ heard }: Draft, value: ValueRecord, side: Where['side']): boolean {
  const words = heard.understanding.normalised;
  const intent = heard.understanding.intents.some((one) => 'field' in one && one.field === value.field);
  return (side !== undefined && side === value.side) || intent || namesOf(value).some((name) => words.includes(name));
}

function sideSaid({ heard, know }: Draft): Where['side'] {
  const words = heard.understanding.normalised;
  const said = heard.understanding.intents
    .map((intent) => ('side' in intent ? intent.side : undefined))
    .find((side) => side !== undefined);
  if (said) return said;
  if (/\bboth\b/.test(words)) return 'both';
  const left = /\bleft\b/.test(words) || words.includes(know.shop.sides.left);
  const right = /\bright\b/.test(words) || words.includes(know.shop.sides.right);
  if (left === right) return undefined;
  return left ? 'left' : 'right';
}
