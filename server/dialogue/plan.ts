// Where the job stands in its procedures, and what the step on the screen still wants.
import { filledBy, type PlannedStep, type Practice, planSteps, slotsOf, type Slot as WantedSlot } from '#core';
import { type FieldId, fieldOf } from '#data';
import { understand } from '#intents';
import type { JobRecord, ValueRecord } from '#log/events';
import { inUnit, isOutOfLimits } from './doubts.ts';
import type { Know } from './types.ts';
import { liveValues, needsYes, type Slot, sameSlot } from './values.ts';

export type { PlannedStep, WantedSlot };

/** A job as this shop works it. */
export type JobHere = JobRecord & { readonly practice?: Practice };

export const inShop = (job: JobRecord, { practice }: Pick<Know, 'practice'>): JobHere => (practice ? { ...job, practice } : job);

export function planOf(job: JobHere): readonly PlannedStep[] {
  return planSteps(job.kind, liveValues(job), job.practice);
}

export function stepAt(job: JobHere, key = job.currentStep): PlannedStep | undefined {
  return key === undefined ? undefined : planOf(job).find((step) => step.key === key);
}

export const statusOf = (job: JobHere, key: string): 'done' | 'skipped' | undefined =>
  job.steps.find(({ step }) => step === key)?.status;

/** The first step after `key` that is neither done nor skipped. */
export function openStepAfter(job: JobHere, key: string | undefined): PlannedStep | undefined {
  const plan = planOf(job);
  const at = plan.findIndex((step) => step.key === key);
  return plan.slice(at + 1).find((step) => statusOf(job, step.key) === undefined);
}

export function stepBefore(job: JobHere, key: string | undefined): PlannedStep | undefined {
  const plan = planOf(job);
  return plan[plan.findIndex((step) => step.key === key) - 1];
}

/** How many steps before this one are neither done nor skipped. */
export function openBefore(job: JobHere, { key }: PlannedStep): number {
  const plan = planOf(job);
  const at = plan.findIndex((step) => step.key === key);
  return plan.slice(0, at).filter((step) => statusOf(job, step.key) === undefined).length;
}

/** The step that words name by its id and its procedure's title, else by what it records: the one with the most of them, of equals the next that is open. */
export function stepNamed(job: JobHere, words: string): PlannedStep | undefined {
  const plan = planOf(job);
  const number = /^(?:step|number) (?:number )?(\S.*)$/i.exec(words.trim())?.[1];
  const counted = number === undefined ? undefined : understand(number).intents[0];
  if (counted?.kind === 'quantity') return plan[Number(counted.value) - 1];
  const asked = wordsOf(words).filter((word) => !plainWords.has(word));
  const from = plan.findIndex(({ key }) => key === job.currentStep);
  const rank = (step: PlannedStep, at: number) => (statusOf(job, step.key) === undefined ? (at > from ? 2 : 1) : 0);
  const ranked = plan.map((step, at) => ({ step, named: namedBy(step, asked), rank: rank(step, at) }));
  const best = Math.max(0, ...ranked.map(({ named }) => named));
  return best === 0
    ? undefined
    : ranked.filter(({ named }) => named === best).toSorted((one, other) => other.rank - one.rank)[0]?.step;
}

/** A word of the procedure's title weighs more than one of the step's own name or place, and that more than a field it records. */
function namedBy({ key, title, step, place }: PlannedStep, asked: readonly string[]): number {
  const titled = new Set(wordsOf(title));
  const own = new Set(wordsOf(`${key.split(/[/@]/)[1]} ${place.axle ?? ''} ${place.side ?? ''}`));
  const recorded = new Set(step.record.flatMap(({ field }) => wordsOf(`${field} ${fieldOf(field).label}`)));
  return asked.reduce((sum, word) => sum + (titled.has(word) ? 4 : own.has(word) ? 3 : recorded.has(word) ? 2 : 0), 0);
}

/** Words in lower case, without their endings: "uBoltTorque" is three, "measuring" is "measure". */
const wordsOf = (text: string): readonly string[] =>
  text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z]+/)
    .map((word) => word.replace(/s$/, '').replace(/(ing|e)$/, ''))
    .filter(Boolean);

const plainWords: ReadonlySet<string> = new Set(wordsOf('the a an and of on it step part bit check test job at to in for me'));

/** Slots of the step that hold no value yet, gates first in the order the step names them. */
export function wanted(job: JobHere, step = stepAt(job)): readonly WantedSlot[] {
  return step ? slotsOf(step, liveValues(job)).filter((slot) => filling(job, step, slot) === undefined) : [];
}

/** The value that fills a slot of a step. One that an earlier step already asked for and was done with does not: it is measured again. */
function filling(job: JobHere, step: PlannedStep, slot: WantedSlot): ValueRecord | undefined {
  const value = filledBy(slot, liveValues(job));
  const before = value && doneBefore(job, step, slot);
  return before !== undefined && value && value.at <= before ? undefined : value;
}

/** The step measures this field anew and has not got all of it yet: an older reading still stands in a slot it wants. */
export function isMeasuredAgain(job: JobHere, field: FieldId): boolean {
  return wanted(job).some((slot) => slot.record.field === field && filledBy(slot, liveValues(job)) !== undefined);
}

function doneBefore(job: JobHere, step: PlannedStep, slot: WantedSlot): string | undefined {
  const plan = planOf(job);
  const earlier = plan.slice(
    0,
    plan.findIndex(({ key }) => key === step.key),
  );
  const asking = earlier.filter((other) => slotsOf(other, liveValues(job)).some((one) => sameSlot(asSlot(one), asSlot(slot))));
  return job.steps.findLast(({ step: key, status }) => status === 'done' && asking.some((other) => other.key === key))?.at;
}

export const asSlot = ({ record, side, axle }: WantedSlot): Slot => ({
  field: record.field,
  stage: record.stage,
  ...(side ? { side } : {}),
  ...(axle ? { axle } : {}),
});

/** What keeps a step from being done: an empty gate, a value that waits for a yes, or one outside its limits. */
export type Hindrance =
  | { readonly code: 'empty'; readonly slot: WantedSlot }
  | { readonly code: 'unconfirmed'; readonly slot: WantedSlot; readonly value: ValueRecord }
  | { readonly code: 'outside'; readonly slot: WantedSlot; readonly value: ValueRecord };

export function hindrances(job: JobHere, step: PlannedStep): readonly Hindrance[] {
  const values = liveValues(job);
  return slotsOf(step, values).flatMap((slot): readonly Hindrance[] => {
    const value = filling(job, step, slot);
    const instead = value && replacing(job, value);
    if (instead) return [{ code: 'unconfirmed', slot, value: instead }];
    if (!value) return slot.record.gate ? [{ code: 'empty', slot }] : [];
    if (value.status === 'heard' && needsYes(value)) return [{ code: 'unconfirmed', slot, value }];
    return slot.record.stage === 'fitted' && (isOutside(slot, value) || isOutOfLimits(value, job))
      ? [{ code: 'outside', slot, value }]
      : [];
  });
}

/** A replacement that waits for a yes. */
const replacing = (job: JobHere, old: ValueRecord): ValueRecord | undefined =>
  job.values.find((value) => value.supersedes === old.id && value.status === 'heard');

function isOutside({ record: { min, max, unit } }: WantedSlot, value: ValueRecord): boolean {
  const amount = unit === undefined ? undefined : inUnit(value, unit);
  if (!amount) return false;
  return (min !== undefined && amount.compare(min) < 0) || (max !== undefined && amount.compare(max) > 0);
}

/** The slot of the current step that a value of this field would fill, empty ones first. */
export function slotFor(job: JobHere, field: FieldId, side: Slot['side'], step = stepAt(job)): WantedSlot | undefined {
  if (!step) return undefined;
  const values = liveValues(job);
  const own = slotsOf(step, values).filter(
    ({ record, side: at }) => record.field === field && (side === undefined || at === undefined || at === side),
  );
  return own.find((slot) => filling(job, step, slot) === undefined) ?? own[0];
}

/** `fitted` from the first step on that cannot be done without something fitted; before it the old axle is being looked at. */
export function stageNow(job: JobHere): 'found' | 'fitted' {
  const plan = planOf(job);
  const turning = plan.findIndex(({ step }) => step.record.some(({ stage, gate }) => gate && stage === 'fitted'));
  const at = plan.findIndex(({ key }) => key === job.currentStep);
  return turning >= 0 && at >= turning ? 'fitted' : 'found';
}
