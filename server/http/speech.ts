// Everything the server knows of language and dialogue, handed in so that tests and benchmarks can hand in less.
import type { Practice } from '#core';
import type { Heard, JobView, Know, Turn } from '#dialogue';
import type { Expects, NoteReading, Understanding } from '#intents';
import type { EventBody, JobRecord } from '#log/events';
import type { DeskAction } from '#wire';

export interface Speech {
  readonly understand: (text: string, expects?: Expects) => Understanding;
  readonly readNote: (text: string) => NoteReading;
  readonly takeTurn: (job: JobRecord | null, heard: Heard, now: string, know: Know) => Turn;
  readonly view: (job: JobRecord, know: Know) => JobView;
  /** With the shop's own procedures; absent where it has none. */
  readonly practice?: Practice;
  readonly deskAction: (job: JobRecord, action: DeskAction, now: string, know: Know) => DeskOutcome;
}

/** What the desk's hand did, or why it could not. */
type DeskOutcome = { readonly events: readonly EventBody[] } | { readonly refused: string; readonly whatToDo: string };
