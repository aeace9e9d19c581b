// Everything of a job that still waits for someone, most serious first.
import { fieldOf } from '#data';
import type { JobRecord, ValueRecord } from '#log/events';
import { isOutOfLimits } from './doubts.ts';
import { hindrances, type PlannedStep, planOf, statusOf } from './plan.ts';
import type { OpenPoint, Shop } from './types.ts';
import { liveValues, needsYes, unconfirmed } from './values.ts';
import { clause, sayNamed, showNamed, withoutStop } from './words.ts';

const plainShop: Shop = { name: '', lengthUnit: 'in', spelling: 'british', sides: { left: 'left', right: 'right' } };

/** A value that selects a part or clears someone to drive, and nobody said yes to. */
export const blocksClosing = (value: ValueRecord): boolean => value.status === 'heard' && needsYes(value);

export function openPoints(job: JobRecord, shop: Shop = plainShop): readonly OpenPoint[] {
  const points = [...values(job, shop), ...limits(job, shop), ...steps(job), ...notes(job), ...verdict(job), ...reminders(job)];
  return [...points.filter(({ safety }) => safety), ...points.filter(({ safety }) => !safety)].map(tidy);
}

/** They are listed and spoken one after another: a stop of their own would stand before ours. */
const tidy = (point: OpenPoint): OpenPoint => ({ ...point, text: withoutStop(point.text) });

function values(job: JobRecord, shop: Shop): readonly OpenPoint[] {
  return unconfirmed(job).map((value) => ({
    id: value.id,
    kind: 'unconfirmed',
    text: `not confirmed: ${showNamed(value, shop)}`,
    say: `not confirmed: ${sayNamed(value, shop)}`,
    safety: blocksClosing(value),
  }));
}

/** Readings that stand and are out of limits: what was found so stays a finding until someone deals with it. */
function limits(job: JobRecord, shop: Shop): readonly OpenPoint[] {
  return liveValues(job)
    .filter((value) => isOutOfLimits(value, job))
    .map((value) => ({
      id: `${value.id}.limits`,
      kind: 'defect',
      text: `out of limits: ${showNamed(value, shop)}`,
      say: `out of limits: ${sayNamed(value, shop)}`,
      safety: true,
    }));
}

/** Steps skipped, and steps of the plan that nobody said were done; a procedure not begun is one point. */
function steps(job: JobRecord): readonly OpenPoint[] {
  const plan = planOf(job);
  const begun = new Set([...job.steps.map(({ step }) => step), job.currentStep ?? ''].map((key) => key.split('/')[0]));
  const waiting = plan.filter(({ procedure }) => !begun.has(procedure));
  const ahead = [...new Set(waiting.map(({ procedure }) => procedure))].map((id): OpenPoint => {
    const all = waiting.filter(({ procedure }) => procedure === id);
    const text = `not begun: ${all[0]?.title ?? id} (${all.length} ${all.length === 1 ? 'step' : 'steps'})`;
    return { id, kind: 'missing', text, safety: all.some(({ step }) => isSafety(step)) };
  });
  return [...plan.filter(({ procedure }) => begun.has(procedure)).flatMap((step) => stepPoint(job, step)), ...ahead];
}

function stepPoint(job: JobRecord, step: PlannedStep): readonly OpenPoint[] {
  const status = statusOf(job, step.key);
  if (status === 'done') return [];
  const name = `${clause(step.step.say)}${where(step.place)}`;
  const safety = isSafety(step.step);
  if (status === 'skipped')
    return [{ id: step.key, kind: 'skipped', text: `skipped: ${name} (${reasonOf(job, step.key)})`, safety }];
  const lacking = hindrances(job, step).map(({ slot }) => fieldOf(slot.record.field).label);
  const text = lacking.length > 0 ? `missing: ${[...new Set(lacking)].join(', ')}${where(step.place)}` : `not done: ${name}`;
  return [{ id: step.key, kind: 'missing', text, safety }];
}

const isSafety = ({ cautions, record }: PlannedStep['step']): boolean =>
  cautions.length > 0 || record.some(({ gate, stage }) => gate && stage === 'fitted');

const where = ({ axle, side }: { readonly axle?: string; readonly side?: string }): string =>
  axle || side ? `, ${[axle, side].filter(Boolean).join(' ')}` : '';

const reasonOf = (job: JobRecord, key: string): string => withoutStop(job.steps.find(({ step }) => step === key)?.reason ?? '');

function notes(job: JobRecord): readonly OpenPoint[] {
  return job.notes
    .filter(({ closed, reading }) => closed === undefined && reading !== undefined && reading.seriousness !== 'info')
    .map(({ id, text, reading }) => ({ id, kind: 'defect', text, safety: reading?.seriousness === 'safety' }));
}

function verdict({ verdict: given }: JobRecord): readonly OpenPoint[] {
  return given && !given.accepted ? [{ id: 'verdict', kind: 'asked', text: 'the verdict was not taken', safety: true }] : [];
}

function reminders(job: JobRecord): readonly OpenPoint[] {
  return job.reminders.filter(({ done }) => !done).map(({ id, text }) => ({ id, kind: 'reminder', text, safety: false }));
}
