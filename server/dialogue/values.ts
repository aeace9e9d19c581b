// Which values of a job count, which slot each one fills, and what is due next. Slot = field, side, axle and stage.
import { oncePer } from '#core';
import { type FieldId, fieldOf } from '#data';
import type { JobRecord, ValueRecord } from '#log/events';

export interface Slot {
  readonly field: FieldId;
  readonly stage: 'found' | 'fitted';
  readonly side?: 'left' | 'right' | 'both';
  readonly axle?: 'front' | 'middle' | 'rear';
  /** The maker's figure stands beside the measured one, never in its place. */
  readonly origin?: 'maker';
}

export const isLive = ({ status }: ValueRecord): boolean => status === 'heard' || status === 'confirmed';

/** Heard as the replacement of another that still stands: not agreed yet. */
export function isPending(value: ValueRecord, job: Pick<JobRecord, 'values'>): boolean {
  return value.status === 'heard' && job.values.some((old) => old.id === value.supersedes && isLive(old));
}

/** Values that count now, oldest first; a replacement that is not agreed does not. */
export const liveValues = ({ values }: Pick<JobRecord, 'values'>): readonly ValueRecord[] => liveOf(values);

const liveOf = oncePer((values: JobRecord['values']) => values.filter((value) => isLive(value) && !isPending(value, { values })));

export const unconfirmed = (job: JobRecord): readonly ValueRecord[] => job.values.filter(({ status }) => status === 'heard');

export function sameSlot(a: Slot, b: Slot): boolean {
  return a.field === b.field && a.origin === b.origin && a.stage === b.stage && sameSide(a.side, b.side) && a.axle === b.axle;
}

function sameSide(a: Slot['side'], b: Slot['side']): boolean {
  return a === b || (a !== undefined && b !== undefined && (a === 'both' || b === 'both'));
}

/** The value that counts in a slot. */
export function valueIn(job: JobRecord, slot: Slot): ValueRecord | undefined {
  return liveValues(job).findLast((value) => sameSlot(value, slot));
}

export function byId(job: JobRecord, id: string): ValueRecord | undefined {
  return job.values.find((value) => value.id === id);
}

/** A value that needs a yes before it counts: its field says so, or it was asked about. */
export function needsYes({ field, asked }: ValueRecord): boolean {
  return fieldOf(field).risk === 'asked' || asked === true;
}
