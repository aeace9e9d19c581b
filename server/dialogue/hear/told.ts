// Work told as done in a step's own words. It counts for the step on the screen; for any other it is asked about.
import { procedures, type Told, told as toldRows } from '#data';
import type { CommandIntent, Where } from '#intents';
import type { Asked } from '#log/events';
import { ask, closeAsk, type Draft, emit, openQuestion, say } from '../draft.ts';
import { type PlannedStep, planOf, statusOf, stepAt } from '../plan.ts';
import { stepLine } from '../wording/steps.ts';
import { takeNote } from './note.ts';
import { doneAt, placeWords } from './steps.ts';

const rowOf = new Map(toldRows.map((row) => [row.id, row]));
const stepOf = ({ id }: Told): string => id.split('.')[0] ?? id;
const rowsOf = (step: string) => toldRows.filter((row) => stepOf(row) === step);

/** A shop that words a step anew tells it by "done": our words need not fit it. */
const ownSteps = new Set(procedures.flatMap(({ steps }) => steps));

const nameOf = ({ key }: PlannedStep): string => key.split('@')[0] ?? key;

const isAt = ({ place }: PlannedStep, { side, axle }: Where): boolean =>
  (side === undefined || side === 'both' || place.side === undefined || place.side === side) &&
  (axle === undefined || place.axle === undefined || place.axle === axle);

/** The acts that this step knows; undefined where one of them is of no part of it. */
function actsOf(step: PlannedStep, { acts = [], ...where }: CommandIntent): readonly Told[] | undefined {
  if (!ownSteps.has(step.step) || !isAt(step, where)) return undefined;
  const own = acts.map((ids) => ids.map((id) => rowOf.get(id)).find((row) => row && stepOf(row) === nameOf(step)));
  return own.every((row) => row !== undefined) ? own : undefined;
}

export function told(draft: Draft, intent: CommandIntent): Draft {
  const here = stepAt(draft.job);
  const acts = here && statusOf(draft.job, here.key) === undefined ? actsOf(here, intent) : undefined;
  return here && acts ? toldHere(draft, here, acts) : toldElsewhere(draft, intent);
}

/** Done when nothing of the step is left to ask about, what was told just before it counted in. */
function toldHere(draft: Draft, step: PlannedStep, acts: readonly Told[]): Draft {
  const asked = openQuestion(draft);
  const before = asked?.about === 'told' && asked.step === step.key ? (asked.given?.split(' ') ?? []) : [];
  const ids = [...new Set([...before, ...acts.map(({ id }) => id)])];
  const whole = acts.some(({ left }) => left === undefined) || rowsOf(nameOf(step)).every(({ id }) => ids.includes(id));
  if (whole) return doneAt(asked?.about === 'told' ? closeAsk(draft, 'yes') : draft, step);
  const left = acts.at(-1)?.left ?? '';
  return ask(
    draft,
    { about: 'told', valueIds: [], step: step.key, given: ids.join(' ') },
    stepLine('alsoDone', { left }, draft.know.shop),
  );
}

/** The next step it may belong to that is open; one already done is only named. */
function toldElsewhere(draft: Draft, intent: CommandIntent): Draft {
  const plan = planOf(draft.job);
  const at = plan.findIndex(({ key }) => key === draft.job.currentStep);
  const ahead = [...plan.slice(at + 1), ...plan.slice(0, Math.max(at, 0))].filter((step) => actsOf(step, intent));
  const open = ahead.find(({ key }) => statusOf(draft.job, key) === undefined);
  const { shop } = draft.know;
  const words = draft.heard.understanding.text;
  if (open) {
    const line = stepLine('otherStep', { say: open.step.say, where: placeWords(open, shop) }, shop);
    return ask(draft, { about: 'told', valueIds: [], step: open.key, given: words }, line);
  }
  if (isDefect(draft, words)) return takeNote(draft, words);
  const [known] = ahead;
  return say(draft, known ? stepLine('doneBefore', { say: known.step.say }, shop) : stepLine('noStepSo', {}, shop));
}

/** A yes, or "done", to "that too?". */
export function toldAll(draft: Draft, { step }: Asked): Draft {
  const planned = stepAt(draft.job, step);
  return planned ? doneAt(draft, planned) : draft;
}

const isDefect = ({ know }: Draft, words: string): boolean => know.readNote(words).seriousness !== 'info';

/** A no: what was meant of another step was perhaps a defect, and is not lost. */
export function toldNot(draft: Draft, { step, given = '' }: Asked): Draft {
  if (step !== draft.job.currentStep && isDefect(draft, given)) return takeNote(draft, given);
  return say(draft, stepLine('notYet', {}, draft.know.shop));
}

/** What was marked and is said not to be done is open again. */
export function notYet(draft: Draft, intent: CommandIntent): Draft {
  const { job, know } = draft;
  const marked = planOf(job).findLast(
    (step) => statusOf(job, step.key) === 'done' && intent.acts?.some((ids) => ids.length > 0) && actsOf(step, intent),
  );
  const open = stepAt(job);
  if (!marked || (open && statusOf(job, open.key) === undefined && actsOf(open, intent)))
    return say(draft, stepLine('notYet', {}, know.shop));
  return say(emit(draft, { kind: 'stepReopened', step: marked.key }), stepLine('openAgain', { say: marked.step.say }, know.shop));
}
