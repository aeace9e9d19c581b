// What crosses the network, both ways. Types only: the page imports nothing else from the server.

import type { JobView, Reply } from '#dialogue';
import type { Intent } from '#intents';
import type { EventBody, HeardBy, JobEvent, JobRecord, JobSummary } from '#log/events';

export type { CardRow, JobView, OpenPoint, Reply, StepView } from '#dialogue';
export type { JobEvent, JobRecord, JobSummary };

/** POST /api/turns. `id` is made by the client; sending it again changes nothing and answers the same. */
export interface TurnRequest {
  readonly id: string;
  /** null: no job is open on this device. */
  readonly job: string | null;
  readonly text: string;
  readonly heardBy: HeardBy;
  readonly confidence?: number;
  readonly alternatives?: readonly string[];
  readonly heardAt: string;
}

export interface TurnResponse {
  readonly job: string | null;
  readonly seq: number;
  readonly reply: Reply;
  readonly intents: readonly Intent[];
  readonly events: readonly EventBody[];
  readonly view: JobView | null;
}

/** POST /api/jobs/:id/desk: the desk's hand on a value. `version` is the job's version the desk saw. */
export interface DeskAction {
  readonly id: string;
  readonly version: number;
  readonly action: 'correct' | 'confirm' | 'strike' | 'annotate' | 'closePoint';
  readonly target: string;
  /** For `correct`: typed as it would be spoken, "72 3/8". */
  readonly value?: string;
  readonly reason: string;
}

/** Every error, on every route. */
export interface ErrorBody {
  readonly error: { readonly code: string; readonly message: string; readonly whatToDo: string };
}
