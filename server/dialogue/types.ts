import type { Practice } from '#core';
import type { FieldId, StockAxle } from '#data';
import type { Expects, NoteReading, QuestionIntent, Understanding } from '#intents';
import type { EventBody, HeardBy, JobRecord, JobSummary, Tightened, ValueId } from '#log/events';

/** How this shop speaks and shows things. */
export interface Shop {
  readonly name: string;
  readonly lengthUnit: 'in' | 'mm';
  readonly spelling: 'british' | 'american';
  /** What the shop calls left and right. */
  readonly sides: { readonly left: string; readonly right: string };
}

/** Everything a turn may look at besides the job: handed in, so that a turn stays a pure function. */
export interface Know {
  readonly shop: Shop;
  readonly stock: readonly StockAxle[];
  readonly jobs: readonly JobSummary[];
  readonly readNote: (text: string) => NoteReading;
  /** With the shop's own procedures laid over ours; absent where it has none. */
  readonly practice?: Practice;
}

/** One utterance on its way in. */
export interface Heard {
  /** Client's id of the turn; ids of values and questions derive from it. */
  readonly turn: string;
  readonly understanding: Understanding;
  readonly heardBy: HeardBy;
  /** 0..1; absent when typed. */
  readonly confidence?: number;
  /** Runner-up texts of the recogniser, understood; for fifteen/fifty. */
  readonly runnersUp: readonly Understanding[];
  readonly heardAt: string;
}

/** What the technician hears and sees. `code` names the kind of reply; words may change, codes stay. */
export interface Reply {
  readonly code: string;
  /** Codes of the other lines in it. */
  readonly also?: readonly string[];
  readonly speak: string;
  /** Plain text, lines separated by \n. */
  readonly show: string;
  readonly tone: 'taken' | 'ask' | 'answer' | 'step' | 'refused' | 'caution';
  readonly expects: Expects;
  /** Values that it reads back; kept with the `replied` event. */
  readonly readBack?: readonly ValueId[];
  /** Asked for: to be spoken slowly. */
  readonly pace?: 'slow';
}

export interface Turn {
  /** `job` is set when the turn opened or switched to another job; events then belong to that job. */
  readonly open?: 'new' | { readonly switchTo: string };
  readonly events: readonly EventBody[];
  readonly reply: Reply;
}

/** An answer from a core, put into words. `rests`: values it used; `missing`: fields it would still need. */
export interface Answer {
  readonly code: string;
  readonly speak: string;
  readonly show: string;
  readonly sources: readonly string[];
  readonly rests: readonly ValueId[];
  readonly missing: readonly FieldId[];
  readonly caution?: string;
  /** It asks back: what is told next is added to the question, and it is answered anew. */
  readonly asks?: true;
  /** Events an answer causes by itself (a verdict given, a candidate chosen). */
  readonly events?: readonly EventBody[];
}

export type Answerer = (question: QuestionIntent, job: JobRecord, know: Know, now: string) => Answer;

/** The step on the screen. */
export interface StepView {
  readonly key: string;
  readonly procedure: string;
  readonly number: number;
  readonly of: number;
  readonly where?: string;
  readonly say: string;
  readonly show: string;
  readonly why: string;
  readonly cautions: readonly string[];
  readonly tools: readonly string[];
  readonly parts: readonly string[];
  readonly record: readonly { readonly field: FieldId; readonly label: string; readonly gate: boolean; readonly have: boolean }[];
  readonly source: string;
}

export interface CardRow {
  readonly id: ValueId;
  readonly field: FieldId;
  readonly label: string;
  readonly side?: string;
  readonly axle?: string;
  readonly stage: 'found' | 'fitted';
  /** Ready to show, with unit and hedge. */
  readonly shown: string;
  readonly value: string;
  readonly unit?: string;
  readonly status: 'heard' | 'confirmed';
}

export interface OpenPoint {
  readonly id: string;
  readonly kind: 'unconfirmed' | 'missing' | 'skipped' | 'defect' | 'asked' | 'reminder';
  readonly text: string;
  /** In words, where the text has figures. */
  readonly say?: string;
  readonly safety: boolean;
}

/** A tightening order to draw. Positions count clockwise from the top, from 1; `next` is an index into `order`. */
export interface SequenceView {
  readonly what: Tightened;
  readonly positions: number;
  readonly order: readonly number[];
  readonly next: number;
  /** "stage 2 of 3: 60 lbf.ft", where stages apply. */
  readonly stage?: string;
}

/** An axle out of square to draw: which diagonal is longer, and the move that squares it. Ready to show, with units. */
export interface AlignmentView {
  readonly left?: string;
  readonly right?: string;
  readonly difference?: string;
  readonly longer?: 'left' | 'right' | 'equal';
  /** The wheel end to move; `distance` on that side. */
  readonly move?: { readonly side: 'left' | 'right'; readonly direction: 'forward' | 'back'; readonly distance: string };
}

/** The job as the page shows it. */
export interface JobView {
  readonly id: string;
  readonly version: number;
  readonly title: string;
  readonly kind: string;
  readonly status: 'open' | 'paused' | 'closed';
  readonly invented: boolean;
  readonly step?: StepView;
  readonly card: readonly CardRow[];
  readonly open: readonly OpenPoint[];
  readonly question?: string;
  /** Answers to the question besides yes and no: `say` is sent as if spoken, `show` stands on the button ("58", "fifty-eight"). */
  readonly choices?: readonly { readonly say: string; readonly show: string }[];
  /** What was said last, with its figures. */
  readonly said?: string;
  readonly candidate?: { readonly title: string; readonly values: Readonly<Record<string, string>> };
  readonly verdict?: string;
  /** Drawn while the step or the last answer is about it. */
  readonly sequence?: SequenceView;
  readonly alignment?: AlignmentView;
  readonly expects: Expects;
}
