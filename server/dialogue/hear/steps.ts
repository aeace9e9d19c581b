// Walking the procedures: done, next, back, skip. A gate is never passed without its value or a reason.
import { cautionOf } from '#data';
import type { CommandIntent } from '#intents';
import { judgeValue, remindersAfter } from '../answers/service.ts';
import { ask, closeAsk, type Draft, emit, say } from '../draft.ts';
import { openPoints } from '../open.ts';
import {
  asSlot,
  type Hindrance,
  hindrances,
  openBefore,
  openStepAfter,
  type PlannedStep,
  planOf,
  statusOf,
  stepAt,
  stepBefore,
  stepNamed,
  wanted,
} from '../plan.ts';
import { askAbout } from '../settle.ts';
import type { Shop } from '../types.ts';
import { liveValues } from '../values.ts';
import { stepLine } from '../wording/steps.ts';
import { valueLine } from '../wording/values.ts';
import { saySide, withoutStop } from '../words.ts';

/** Puts a step on the screen and says it; a caution is spoken the first time it comes up in a job. */
export function showStep(draft: Draft, step: PlannedStep): Draft {
  const fresh = step.step.cautions.filter((id) => draft.job.cautions.every((given) => given.id !== id));
  const shown = emit(
    draft,
    ...(draft.job.currentStep === step.key ? [] : [{ kind: 'stepShown' as const, step: step.key }]),
    ...fresh.map((caution) => ({ kind: 'cautionGiven' as const, caution, step: step.key })),
  );
  return say(shown, sayStep(shown, step, fresh));
}

export const placeWords = ({ place }: Pick<PlannedStep, 'place'>, shop: Shop): string =>
  [place.axle && `${place.axle} axle`, place.side && saySide(place.side, shop)].filter(Boolean).join(' ');

function sayStep({ job, know }: Draft, { key, step, title, place }: PlannedStep, cautions: readonly string[]) {
  const plan = planOf(job);
  const where = placeWords({ place }, know.shop);
  const at = `${title}, step ${plan.findIndex((other) => other.key === key) + 1} of ${plan.length}`;
  return stepLine(
    'step',
    { say: step.say, show: step.show, where, place: at, cautions: cautions.map((id) => cautionOf(id).text) },
    know.shop,
  );
}

/** The step again, all its cautions with it. */
export function sayStepAgain(draft: Draft): Draft {
  const step = stepAt(draft.job) ?? openStepAfter(draft.job, undefined);
  return step ? say(draft, sayStep(draft, step, step.step.cautions)) : endOfList(draft);
}

function goTo(draft: Draft, step: PlannedStep | undefined): Draft {
  return step ? showStep(draft, step) : endOfList(draft);
}

function endOfList(draft: Draft): Draft {
  const again = openStepAfter(draft.job, undefined);
  const open = openPoints(draft.job).length;
  const told = say(draft, stepLine('allDone', { open }, draft.know.shop));
  return again && again.key !== draft.job.currentStep ? showStep(told, again) : told;
}

export function done(draft: Draft): Draft {
  const step = stepAt(draft.job);
  if (!step) return goTo(draft, openStepAfter(draft.job, undefined));
  return doneAt(draft, step);
}

/** Marks a step done where nothing hinders it; from the one on the screen it goes on to the next. */
export function doneAt(draft: Draft, step: PlannedStep): Draft {
  const against = hindrances(draft.job, step);
  if (against.length > 0) return hinder(draft, against);
  const marked = markDone(draft, step);
  if (step.key === draft.job.currentStep) return goTo(marked, openStepAfter(draft.job, step.key));
  return say(marked, stepLine('marked', { say: step.step.say }, draft.know.shop));
}

/** A step that torqued something sets the reminders to check it again, once a job. */
function markDone(draft: Draft, { key, step }: PlannedStep): Draft {
  const odometer = liveValues(draft.job).findLast(({ field }) => field === 'odometer')?.value;
  const due = step.record.flatMap(({ field, stage }) =>
    stage === 'fitted' ? remindersAfter(field, draft.heard.turn, draft.now, odometer) : [],
  );
  const fresh = due.filter((body) => body.kind === 'reminderSet' && draft.job.reminders.every(({ text }) => text !== body.text));
  return emit(draft, { kind: 'stepDone', step: key }, ...fresh);
}

/** Says what keeps the step open, the empty gates first. */
function hinder(draft: Draft, against: readonly Hindrance[]): Draft {
  const { shop } = draft.know;
  const empty = against.filter(({ code }) => code === 'empty').map(({ slot }) => asSlot(slot));
  if (empty.length > 0) return say(draft, stepLine('valuesMissing', { slots: empty.slice(0, 3) }, shop));
  const waiting = against.flatMap((one) => (one.code === 'unconfirmed' ? [one.value] : []));
  if (waiting.length > 0) return askAbout(draft, waiting.slice(0, 3), 0, true);
  return against.reduce((left, one) => (one.code === 'outside' ? say(left, outsideLine(draft, one)) : left), draft);
}

function outsideLine({ job, know, now }: Draft, { slot, value }: Extract<Hindrance, { code: 'outside' }>) {
  const { min, max, unit } = slot.record;
  return valueLine(
    'outside',
    { value, least: min, most: max, unit, judged: judgeValue(value, job, know, now)?.speak ?? '' },
    know.shop,
  );
}

/** On to the next step. A step that records is done when all it wants is there; one that only warns must be said done. */
export function next(draft: Draft): Draft {
  const step = stepAt(draft.job);
  if (!step || statusOf(draft.job, step.key) !== undefined) return goTo(draft, openStepAfter(draft.job, step?.key));
  const complete = step.step.record.length > 0 && wanted(draft.job, step).length === 0;
  const against = hindrances(draft.job, step);
  if (complete || against.length > 0) return done(draft);
  if (step.step.cautions.length > 0) return say(draft, stepLine('notSaidDone', { say: step.step.say }, draft.know.shop));
  return goTo(say(draft, stepLine('leftOpen', { say: step.step.say }, draft.know.shop)), openStepAfter(draft.job, step.key));
}

export function back(draft: Draft): Draft {
  const step = stepBefore(draft.job, draft.job.currentStep);
  return step ? showStep(draft, step) : say(draft, stepLine('atStart', {}, draft.know.shop));
}

/** To a step by its name. Nothing between is done by it: it stays open, and the list comes back to it. */
export function jump(draft: Draft, words: string): Draft {
  const step = stepNamed(draft.job, words);
  const { shop } = draft.know;
  if (!step) {
    const titles = [...new Set(planOf(draft.job).map(({ title }) => title))];
    return say(draft, stepLine('noSuchStep', { said: withoutStop(words), titles }, shop));
  }
  const before = openBefore(draft.job, step);
  const shown = showStep(draft, step);
  return before > 0 ? say(shown, stepLine('openBefore', { count: before }, shop)) : shown;
}

/** A skip needs a reason and a yes. */
export function skip(draft: Draft, { rest }: CommandIntent): Draft {
  const step = stepAt(draft.job);
  if (!step) return endOfList(draft);
  const reason = rest?.replace(/^(because|since|as)\s+/i, '').trim();
  if (reason) return askSkip(draft, step, reason);
  return ask(
    draft,
    { about: 'reason', valueIds: [], step: step.key },
    stepLine('skipWhy', { say: step.step.say }, draft.know.shop),
  );
}

export function askSkip(draft: Draft, { key, step }: PlannedStep, words: string): Draft {
  const reason = withoutStop(words);
  const line = stepLine('askSkip', { say: step.say, reason }, draft.know.shop);
  return ask(draft, { about: 'skip', valueIds: [], step: key, given: reason }, line);
}

export function skipNow(draft: Draft, key: string, reason: string): Draft {
  const step = stepAt(draft.job, key);
  const skipped = emit(closeAsk(draft, 'yes'), { kind: 'stepSkipped', step: key, reason });
  const told = say(skipped, stepLine('skipped', { say: step?.step.say ?? key }, draft.know.shop));
  return goTo(told, openStepAfter(told.job, key));
}
