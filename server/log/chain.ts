// Each event's hash covers the one before it: changing, moving or dropping an old event breaks every later link.
import { createHash } from 'node:crypto';
import type { JobEvent } from '#log/events';

/** What the first event hangs on. */
export const genesis: Buffer = createHash('sha256').update('axlehand log').digest();

/** An event as it lies in its table; `body` and `receipt` are the stored texts, byte for byte. */
export interface StoredEvent {
  readonly seq: number;
  readonly job: number;
  readonly turn: string;
  readonly at: string;
  readonly who: string;
  readonly kind: string;
  readonly body: string;
  readonly receipt: string | null;
}

/** The hash of an event that follows `prev`. */
export function link(prev: Buffer, { seq, job, turn, at, who, kind, body, receipt }: StoredEvent): Buffer {
  return createHash('sha256')
    .update(prev)
    .update(JSON.stringify([seq, job, turn, at, who, kind, body, receipt]))
    .digest();
}

/** An event as the rest of the house knows it. */
export function toEvent({ seq, job, turn, at, who, body }: StoredEvent): JobEvent {
  return { seq, job: String(job), turn, at, who, body: JSON.parse(body) };
}
