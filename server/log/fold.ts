// Events -> the job as it stands. Pure; the log and the dialogue both use it, so live and replayed states are one.
import type { JobKindId } from '#data';
import type { NoteReading } from '#intents';
import type { Asked, JobEvent, JobId, ValueFact, ValueId } from './events.ts';

export type ValueStatus = 'heard' | 'confirmed' | 'corrected' | 'struck';

export interface ValueRecord extends ValueFact {
  readonly status: ValueStatus;
  readonly at: string;
  readonly who: string;
  readonly turn: string;
  readonly correctedBy?: ValueId;
  readonly reason?: string;
  readonly notes: readonly string[];
}

export interface StepRecord {
  readonly step: string;
  readonly status: 'done' | 'skipped';
  readonly at: string;
  readonly reason?: string;
}

export interface NoteRecord {
  readonly id: string;
  readonly text: string;
  readonly at: string;
  readonly who: string;
  readonly reading?: NoteReading;
  readonly closed?: string;
}

export interface Reminder {
  readonly id: string;
  readonly text: string;
  readonly dueAt?: string;
  readonly dueMiles?: string;
  readonly done: boolean;
}

export interface JobRecord {
  readonly id: JobId;
  /** Sequence number of the last event folded in; the version that a correction from the desk names. */
  readonly version: number;
  readonly kind: JobKindId;
  readonly title: string;
  readonly customer?: string;
  readonly invented: boolean;
  readonly status: 'open' | 'paused' | 'closed';
  readonly openedAt: string;
  readonly closedAt?: string;
  readonly values: readonly ValueRecord[];
  readonly steps: readonly StepRecord[];
  /** The step on the screen: `procedure/step` or `procedure/step@left`, `@front.right`. */
  readonly currentStep?: string;
  readonly asked?: Asked;
  readonly notes: readonly NoteRecord[];
  readonly cautions: readonly { readonly id: string; readonly at: string }[];
  readonly reminders: readonly Reminder[];
  readonly candidate?: { readonly stock: string; readonly title: string; readonly values: Readonly<Record<string, string>> };
  readonly verdict?: { readonly verdict: string; readonly at: string; readonly unconfirmed: readonly ValueId[] };
  readonly lastReply?: { readonly code: string; readonly speak: string; readonly show: string };
  readonly turns: number;
}

/** One line of the log book. */
export interface JobSummary {
  readonly id: JobId;
  readonly title: string;
  readonly kind: JobKindId;
  readonly status: JobRecord['status'];
  readonly openedAt: string;
  readonly updatedAt: string;
  readonly openPoints: number;
  readonly invented: boolean;
}

export function emptyJob(id: JobId): JobRecord {
  return {
    id,
    version: 0,
    kind: 'axleReplacement',
    title: '',
    invented: false,
    status: 'open',
    openedAt: '',
    values: [],
    steps: [],
    notes: [],
    cautions: [],
    reminders: [],
    turns: 0,
  };
}

export function foldAll(id: JobId, events: readonly JobEvent[]): JobRecord {
  return events.reduce(fold, emptyJob(id));
}

/** One event applied. An event about an id that is not there changes nothing but the version. */
export function fold(job: JobRecord, event: JobEvent): JobRecord {
  return { ...change(job, event), version: event.seq };
}

function change(job: JobRecord, { body, at, who, turn }: JobEvent): JobRecord {
  switch (body.kind) {
    case 'jobOpened':
      return {
        ...job,
        kind: body.jobKind,
        title: body.title,
        openedAt: at,
        status: 'open',
        invented: body.invented ?? false,
        ...(body.customer === undefined ? {} : { customer: body.customer }),
      };
    case 'jobRenamed':
      return { ...job, title: body.title };
    case 'heard':
      return { ...job, turns: job.turns + 1 };
    case 'valueHeard':
      return { ...job, values: [...job.values, { ...body.value, status: 'heard', at, who, turn, notes: [] }] };
    case 'valueConfirmed':
      return withValue(job, body.id, { status: 'confirmed' });
    case 'valueCorrected':
      return withValue(job, body.id, { status: 'corrected', correctedBy: body.by, ...reason(body) });
    case 'valueStruck':
      return withValue(job, body.id, { status: 'struck', ...reason(body) });
    case 'valueRestored':
      return withValue(job, body.id, { status: 'heard' });
    case 'asked':
      return { ...job, asked: body.asked };
    case 'askClosed':
      return job.asked?.id === body.id ? without(job, 'asked') : job;
    case 'stepShown':
      return { ...job, currentStep: body.step };
    case 'stepDone':
      return withStep(job, { step: body.step, status: 'done', at });
    case 'stepSkipped':
      return withStep(job, { step: body.step, status: 'skipped', at, reason: body.reason });
    case 'stepReopened':
      return { ...job, steps: job.steps.filter(({ step }) => step !== body.step) };
    case 'cautionGiven':
      return { ...job, cautions: [...job.cautions, { id: body.caution, at }] };
    case 'noteTaken':
      return {
        ...job,
        notes: [...job.notes, { id: body.id, text: body.text, at, who, ...(body.reading ? { reading: body.reading } : {}) }],
      };
    case 'pointClosed':
      return { ...job, notes: job.notes.map((note) => (note.id === body.id ? { ...note, closed: body.reason } : note)) };
    case 'candidateChosen':
      return { ...job, candidate: { stock: body.stock, title: body.title, values: body.values } };
    case 'verdictGiven':
      return { ...job, verdict: { verdict: body.verdict, at, unconfirmed: body.unconfirmed } };
    case 'reminderSet':
      return { ...job, reminders: [...job.reminders, { id: body.id, text: body.text, done: false, ...due(body) }] };
    case 'reminderDone':
      return { ...job, reminders: job.reminders.map((r) => (r.id === body.id ? { ...r, done: true } : r)) };
    case 'annotated':
      return annotate(job, body.value, body.text);
    case 'paused':
      return { ...job, status: 'paused' };
    case 'resumed':
      return { ...job, status: 'open' };
    case 'closed':
      return { ...job, status: 'closed', closedAt: at };
    case 'reopened':
      return { ...without(job, 'closedAt'), status: 'open' };
    case 'replied':
      return { ...job, lastReply: { code: body.code, speak: body.speak, show: body.show } };
  }
}

function withValue(job: JobRecord, id: ValueId, patch: Partial<ValueRecord>): JobRecord {
  return { ...job, values: job.values.map((value) => (value.id === id ? { ...value, ...patch } : value)) };
}

function withStep(job: JobRecord, done: StepRecord): JobRecord {
  return { ...job, steps: [...job.steps.filter(({ step }) => step !== done.step), done] };
}

function annotate(job: JobRecord, id: ValueId | undefined, text: string): JobRecord {
  const values = job.values.map((value) => (value.id === id ? { ...value, notes: [...value.notes, text] } : value));
  return { ...job, values };
}

function reason(body: { readonly reason?: string }): { reason?: string } {
  return body.reason === undefined ? {} : { reason: body.reason };
}

function due(body: { readonly dueAt?: string; readonly dueMiles?: string }): { dueAt?: string; dueMiles?: string } {
  return {
    ...(body.dueAt === undefined ? {} : { dueAt: body.dueAt }),
    ...(body.dueMiles === undefined ? {} : { dueMiles: body.dueMiles }),
  };
}

function without<K extends keyof JobRecord>(job: JobRecord, key: K): Omit<JobRecord, K> {
  const { [key]: _dropped, ...rest } = job;
  return rest;
}
