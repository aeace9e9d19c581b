// Events -> the job as it stands. Pure; the log and the dialogue both use it, so live and replayed states are one.
import type { JobKindId } from '#data';
import type { NoteReading, QuestionIntent } from '#intents';
import type { Asked, EventBody, JobEvent, JobId, Tightened, ValueFact, ValueId } from './events.ts';
import { inverse } from './inverse.ts';
import { questionAfter } from './last-question.ts';

export type ValueStatus = 'heard' | 'confirmed' | 'corrected' | 'struck';

export interface ValueRecord extends ValueFact {
  readonly status: ValueStatus;
  readonly at: string;
  readonly who: string;
  readonly turn: string;
  readonly correctedBy?: ValueId;
  /** The value it would replace, also while that is not yet agreed. */
  readonly supersedes?: ValueId;
  readonly reason?: string;
  /** The turn whose reply read it back last; only such a value can be confirmed by going on, unless it was asked about. */
  readonly readBack?: string;
  readonly asked?: boolean;
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
  readonly askedAt?: string;
  readonly notes: readonly NoteRecord[];
  readonly cautions: readonly { readonly id: string; readonly at: string }[];
  readonly reminders: readonly Reminder[];
  readonly candidate?: { readonly stock: string; readonly title: string; readonly values: Readonly<Record<string, string>> };
  readonly verdict?: {
    readonly verdict: string;
    readonly reasons?: readonly string[];
    readonly at: string;
    readonly unconfirmed: readonly ValueId[];
    readonly accepted?: boolean;
  };
  /** How far an order of tightening has come, and at which step. */
  readonly reached?: { readonly what: Tightened; readonly place: number; readonly step?: string };
  readonly lastReply?: {
    readonly code: string;
    readonly also?: readonly string[];
    readonly speak: string;
    readonly show: string;
    readonly turn: string;
    readonly at: string;
  };
  /** What was asked last, with what was added to it since. */
  readonly lastQuestion?: { readonly question: QuestionIntent; readonly at: string };
  readonly turns: number;
  /** What would take back the last turns, newest last. */
  readonly trail: readonly TurnTrail[];
}

interface TurnTrail {
  readonly turn: string;
  readonly undo: readonly EventBody[];
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
  /** Of the trailer, and the odometer read, where they were taken down: they tie the jobs of one trailer together. */
  readonly vin?: string;
  readonly odometer?: string;
  /** Where they were asked for: the steps done, each with its time, and the trailer's axles. */
  readonly done?: readonly StepDone[];
  readonly axleCount?: string;
}

export interface StepDone {
  /** As in `JobRecord.currentStep`. */
  readonly step: string;
  readonly at: string;
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
    trail: [],
  };
}

export function foldAll(id: JobId, events: readonly JobEvent[]): JobRecord {
  return events.reduce(fold, emptyJob(id));
}

/** One event applied. An event about an id that is not there changes nothing but the version. */
export function fold(job: JobRecord, event: JobEvent): JobRecord {
  return { ...change(job, event), version: event.seq, trail: trailAfter(job, event) };
}

const turnsKept = 20;

/** An undoing turn leaves an entry without a way back, so that undoing is not undone by itself. */
function trailAfter({ trail, ...job }: JobRecord, { turn, body }: JobEvent): readonly TurnTrail[] {
  if (body.kind === 'undone')
    return [...trail.filter(({ turn: of, undo }) => of !== body.turn && undo.length > 0), { turn, undo: [] }];
  const last = trail.at(-1);
  if (last?.turn === turn && last.undo.length === 0) return trail;
  const back = inverse(job, body);
  if (back.length === 0) return trail;
  if (last?.turn !== turn) return [...trail, { turn, undo: back }].slice(-turnsKept);
  return [...trail.slice(0, -1), { turn, undo: [...back, ...last.undo] }];
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
      return { ...job, turns: job.turns + 1, ...questionAfter(job, body, at) };
    case 'valueHeard':
      return { ...job, values: [...job.values, { ...body.value, status: 'heard', at, who, turn, notes: [], ...replaces(body) }] };
    case 'valueConfirmed':
      return withValue(job, body.id, { status: 'confirmed' });
    case 'valueCorrected':
      return withValue(job, body.id, { status: 'corrected', correctedBy: body.by, ...reason(body) });
    case 'valueStruck':
      return withValue(job, body.id, { status: 'struck', ...reason(body) });
    case 'valueRestored':
      return withValue(job, body.id, { status: body.to ?? 'heard' });
    case 'asked':
      return { ...markValues(job, body.asked.valueIds, { asked: true }), asked: body.asked, askedAt: at };
    case 'askClosed':
      return job.asked?.id === body.id ? without(accept(job, body.outcome), 'asked') : job;
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
    case 'candidateDropped':
      return without(job, 'candidate');
    case 'verdictGiven':
      return { ...job, verdict: { verdict: body.verdict, at, unconfirmed: body.unconfirmed, ...reasons(body) } };
    case 'reminderSet':
      return { ...job, reminders: [...job.reminders, { id: body.id, text: body.text, done: false, ...due(body) }] };
    case 'reminderDone':
      return { ...job, reminders: job.reminders.map((r) => (r.id === body.id ? { ...r, done: true } : r)) };
    case 'annotated':
      return annotate(job, body.value, body.text);
    case 'orderReached':
      return { ...job, reached: { what: body.what, place: body.place, ...atStep(job) } };
    case 'paused':
      return { ...job, status: 'paused' };
    case 'resumed':
      return { ...job, status: 'open' };
    case 'closed':
      return { ...job, status: 'closed', closedAt: at };
    case 'reopened':
      return { ...without(job, 'closedAt'), status: 'open' };
    case 'undone':
      return job;
    case 'replied':
      return {
        ...markValues(job, body.readBack ?? [], { readBack: turn }),
        lastReply: { code: body.code, ...(body.also ? { also: body.also } : {}), speak: body.speak, show: body.show, turn, at },
      };
  }
}

function withValue(job: JobRecord, id: ValueId, patch: Partial<ValueRecord>): JobRecord {
  return { ...job, values: job.values.map((value) => (value.id === id ? { ...value, ...patch } : value)) };
}

function markValues(job: JobRecord, ids: readonly ValueId[], mark: Partial<ValueRecord>): JobRecord {
  return ids.length === 0
    ? job
    : { ...job, values: job.values.map((value) => (ids.includes(value.id) ? { ...value, ...mark } : value)) };
}

function accept(job: JobRecord, outcome: string): JobRecord {
  const taken = job.asked?.about === 'verdict' && outcome === 'yes';
  return taken && job.verdict ? { ...job, verdict: { ...job.verdict, accepted: true } } : job;
}

function replaces(body: { readonly supersedes?: ValueId }): { supersedes?: ValueId } {
  return body.supersedes === undefined ? {} : { supersedes: body.supersedes };
}

function withStep(job: JobRecord, done: StepRecord): JobRecord {
  return { ...job, steps: [...job.steps.filter(({ step }) => step !== done.step), done] };
}

function annotate(job: JobRecord, id: ValueId | undefined, text: string): JobRecord {
  const values = job.values.map((value) => (value.id === id ? { ...value, notes: [...value.notes, text] } : value));
  return { ...job, values };
}

function atStep({ currentStep }: JobRecord): { step?: string } {
  return currentStep === undefined ? {} : { step: currentStep };
}

function reason(body: { readonly reason?: string }): { reason?: string } {
  return body.reason === undefined ? {} : { reason: body.reason };
}

function reasons(body: { readonly reasons?: readonly string[] }): { reasons?: readonly string[] } {
  return body.reasons === undefined ? {} : { reasons: body.reasons };
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
