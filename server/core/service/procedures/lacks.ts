// What a step still wants before it can be marked done.
import { fieldOf, type RecordedValue } from '#data';
import { oncePer } from '../../once.ts';
import { limitsOf } from '../joints.ts';
import { measured, type Place, placeOf, type Reading, type SideName } from '../reading.ts';
import { holds } from './condition.ts';
import type { PlannedStep } from './plan.ts';

/** A value that a step asks for, at one place. */
export interface Slot extends Place {
  readonly record: RecordedValue;
  /** How a thing is built (its thread, its lock) is the same before and after, unless the job brings a new one. */
  readonly anyStage?: boolean;
}

/** Every value that a step asks for now: one slot a side where the field has sides and the step does not say which. */
export function slotsOf(planned: PlannedStep, readings: readonly Reading[]): readonly Slot[] {
  return slotsNow(readings)(planned);
}

const slotsNow = oncePer((readings: readonly Reading[]) => oncePer((planned: PlannedStep) => slots(planned, readings)));

function slots({ step, place, replaces }: PlannedStep, readings: readonly Reading[]): readonly Slot[] {
  return step.record
    .filter((record) => holds(record.when, readings))
    .map((record) => withLimits(record, readings))
    .flatMap((record) => sidesOf(record, place.side).map((side) => slot(record, place, side)))
    .map((wanted) => (!replaces && fieldOf(wanted.record.field).unit === undefined ? { ...wanted, anyStage: true } : wanted));
}

/** The slots that are still empty, gates or not. */
export function lacks(planned: PlannedStep, readings: readonly Reading[]): readonly Slot[] {
  return slotsOf(planned, readings).filter((wanted) => filledBy(wanted, readings) === undefined);
}

/** The empty gates: while there is one, the step cannot be marked done; it can be skipped with a reason. */
export function openGates(planned: PlannedStep, readings: readonly Reading[]): readonly Slot[] {
  return lacks(planned, readings).filter(({ record }) => record.gate);
}

/** The reading that fills a slot. */
export function filledBy<R extends Reading>({ record, anyStage, ...where }: Slot, readings: readonly R[]): R | undefined {
  return measured(readings, { field: record.field, ...(anyStage ? {} : { stage: record.stage }), ...placeOf(where) });
}

/** Limits that follow from this job (its studs, its maker's figure) stand before the ones written in the step. */
function withLimits(record: RecordedValue, readings: readonly Reading[]): RecordedValue {
  const range = limitsOf(record.field, readings);
  if (!range) return record;
  return { ...record, min: range.low.toFraction(), max: range.high.toFraction(), unit: range.unit };
}

function sidesOf(record: RecordedValue, side: SideName | undefined): readonly (SideName | undefined)[] {
  if (!fieldOf(record.field).perSide) return [undefined];
  return side === undefined ? ['left', 'right'] : [side];
}

function slot(record: RecordedValue, { axle }: Place, side: SideName | undefined): Slot {
  return { record, ...(axle && { axle }), ...(side && { side }) };
}
