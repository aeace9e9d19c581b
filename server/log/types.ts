import type { EventBody, JobEvent, JobId, JobRecord, JobSummary } from '#log/events';

/** What one utterance or one desk action adds. `job: null` opens the next number. */
export interface NewTurn {
  readonly turn: string;
  readonly job: JobId | null;
  readonly at: string;
  readonly who: string;
  readonly events: readonly EventBody[];
  readonly receipt: { readonly digest: string; readonly reply?: unknown };
}

export interface Committed {
  readonly job: JobId;
  readonly seq: number;
  readonly events: readonly JobEvent[];
  /** The job after it; null for events outside any job. */
  readonly record: JobRecord | null;
}

/** Kept with a turn's last event, so that the same request again is answered and not taken twice. */
export interface Receipt {
  readonly job: JobId;
  readonly seq: number;
  readonly first: number;
  readonly digest: string;
  readonly reply?: unknown;
}

/** A turn by its last event. */
export interface TurnEnd {
  readonly job: JobId;
  readonly seq: number;
  readonly turn: string;
  readonly who: string;
}

/** What to look for in the log book. Days are `2026-11-25`. */
export interface JobQuery {
  /** All must occur in what was said, noted or named. */
  readonly words?: readonly string[];
  /** All must be among the job's standing values; exact, in the form they are stored ("579/8"). */
  readonly values?: readonly { readonly field?: string; readonly value?: string }[];
  /** Each stands among the values, or in what was said: as an exact number and as it was typed. */
  readonly numbers?: readonly { readonly value: string; readonly typed: string }[];
  readonly status?: JobRecord['status'];
  readonly from?: string;
  readonly to?: string;
  readonly open?: boolean;
  readonly limit?: number;
  /** With what was done and when. */
  readonly steps?: true;
}

export interface Found {
  readonly jobs: readonly JobSummary[];
  readonly total: number;
}
