// What can happen to a job, as facts that are only ever added. Pure: no storage here.
import type { FieldId, JobKindId, UnitId } from '#data';
import type { Intent, NoteReading, Said, Stage, Where } from '#intents';

export type JobId = string;
export type ValueId = string;
/** Who heard it: typed by hand, our own recogniser, or the browser's. */
export type HeardBy = 'typed' | 'builtIn' | 'browser';

/** A value taken into the job: what was said beside what it means. `stage` is always decided by now. */
export interface ValueFact extends Said, Where {
  readonly id: ValueId;
  readonly field: FieldId;
  readonly stage: Stage;
  readonly unit?: UnitId;
  /** The words it came from, verbatim. */
  readonly raw: string;
  readonly heardBy: HeardBy;
  readonly confidence?: number;
  /** Where it came from, when not from the technician's own measuring: the part maker's published value. */
  readonly origin?: 'maker';
}

/** What the dialogue asked and waits for; a yes binds to this id and to no other. */
export interface Asked {
  readonly id: string;
  readonly about:
    | 'value'
    | 'alternatives'
    | 'skip'
    | 'told'
    | 'verdict'
    | 'close'
    | 'strike'
    | 'undo'
    | 'target'
    | 'reason'
    | 'facts';
  readonly valueIds: readonly ValueId[];
  readonly question: string;
  /** Values to choose from, where it is a choice. */
  readonly choices?: readonly string[];
  /** The step it concerns. */
  readonly step?: string;
  /** Fields that would answer it, where it asks for facts. */
  readonly fields?: readonly FieldId[];
  /** What was given so far: the reason of a skip, the value that looks for its target, the question that lacks facts. */
  readonly given?: string;
  /** Asked before and left unanswered; it is not asked a third time by itself. */
  readonly again?: boolean;
}

/** What is tightened one after the other, in an order. */
export type Tightened = 'wheelNuts' | 'uBolts';

export interface Problem {
  readonly code: string;
  readonly message: string;
}

export type EventBody =
  | {
      readonly kind: 'jobOpened';
      readonly jobKind: JobKindId;
      readonly title: string;
      readonly customer?: string;
      readonly invented?: boolean;
    }
  | { readonly kind: 'jobRenamed'; readonly title: string }
  | {
      readonly kind: 'heard';
      readonly text: string;
      readonly heardBy: HeardBy;
      readonly confidence?: number;
      readonly alternatives?: readonly string[];
      readonly intents: readonly Intent[];
      readonly unclaimed: readonly string[];
      readonly heardAt: string;
    }
  | { readonly kind: 'valueHeard'; readonly value: ValueFact; readonly supersedes?: ValueId }
  | { readonly kind: 'valueConfirmed'; readonly id: ValueId; readonly how: 'said' | 'wentOn' | 'desk' }
  | { readonly kind: 'valueCorrected'; readonly id: ValueId; readonly by: ValueId; readonly reason?: string }
  | { readonly kind: 'valueStruck'; readonly id: ValueId; readonly reason?: string }
  | { readonly kind: 'valueRestored'; readonly id: ValueId; readonly to?: 'heard' | 'confirmed' }
  | { readonly kind: 'asked'; readonly asked: Asked }
  | { readonly kind: 'askClosed'; readonly id: string; readonly outcome: 'yes' | 'no' | 'replaced' | 'expired' }
  | { readonly kind: 'stepShown'; readonly step: string }
  | { readonly kind: 'stepDone'; readonly step: string }
  | { readonly kind: 'stepReopened'; readonly step: string }
  | { readonly kind: 'stepSkipped'; readonly step: string; readonly reason: string }
  | { readonly kind: 'cautionGiven'; readonly caution: string; readonly step?: string }
  | { readonly kind: 'noteTaken'; readonly id: string; readonly text: string; readonly reading?: NoteReading }
  | { readonly kind: 'pointClosed'; readonly id: string; readonly reason: string }
  | {
      readonly kind: 'candidateChosen';
      readonly stock: string;
      readonly title: string;
      readonly values: Readonly<Record<string, string>>;
    }
  | { readonly kind: 'candidateDropped' }
  | {
      readonly kind: 'verdictGiven';
      readonly verdict: string;
      /** What settled it, in the words shown then. */
      readonly reasons?: readonly string[];
      readonly stock?: string;
      readonly rests: readonly ValueId[];
      readonly unconfirmed: readonly ValueId[];
    }
  | {
      readonly kind: 'reminderSet';
      readonly id: string;
      readonly text: string;
      readonly dueAt?: string;
      readonly dueMiles?: string;
    }
  | { readonly kind: 'reminderDone'; readonly id: string }
  | { readonly kind: 'annotated'; readonly value?: ValueId; readonly text: string }
  /** `place`: which of the order is tightened next, from 0. */
  | { readonly kind: 'orderReached'; readonly what: Tightened; readonly place: number }
  | { readonly kind: 'paused' }
  | { readonly kind: 'resumed' }
  | { readonly kind: 'closed'; readonly open: readonly string[] }
  | { readonly kind: 'reopened'; readonly reason: string }
  /** The events after it in the same turn take back what `turn` did. */
  | { readonly kind: 'undone'; readonly turn: string }
  | {
      readonly kind: 'replied';
      readonly code: string;
      readonly speak: string;
      readonly show: string;
      /** Codes of what else it said. */
      readonly also?: readonly string[];
      /** Values this reply read back: only these can be confirmed by going on. */
      readonly readBack?: readonly ValueId[];
    };

export type EventKind = EventBody['kind'];

/** A committed event. `turn` groups what one utterance or one desk action did. */
export interface JobEvent {
  readonly seq: number;
  readonly job: JobId;
  readonly turn: string;
  readonly at: string;
  /** Device name that sent it. */
  readonly who: string;
  readonly body: EventBody;
}

export type { JobRecord, JobSummary, NoteRecord, Reminder, StepDone, StepRecord, ValueRecord, ValueStatus } from './fold.ts';
export { emptyJob, fold, foldAll } from './fold.ts';
export { withMore } from './last-question.ts';
