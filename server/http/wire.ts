// What crosses the network, both ways. Types only: the page imports nothing else from the server.

import type { StockAxle } from '#data';
import type { JobView, RackView, Reply, Sheet, Shop } from '#dialogue';
import type { Intent } from '#intents';
import type { EventBody, HeardBy, JobEvent, JobRecord, JobSummary, ValueRecord } from '#log/events';

export type {
  AlignmentView,
  BillRow,
  CardRow,
  FitAxle,
  FitRow,
  JobView,
  OpenPoint,
  RackView,
  Reply,
  SequenceView,
  Sheet,
  SheetRow,
  SheetValue,
  StepView,
} from '#dialogue';
export type { EventBody, JobEvent, JobRecord, JobSummary, ValueRecord };

/** POST /api/turns. `id` is made by the client; sending it again changes nothing and answers the same. */
export interface TurnRequest {
  readonly id: string;
  /** null: no job is open on this device. */
  readonly job: string | null;
  readonly text: string;
  readonly heardBy: HeardBy;
  readonly confidence?: number;
  readonly alternatives?: readonly string[];
  /** By the device's own clock, which may be wrong: kept as told, judged by nothing. */
  readonly heardAt: string;
  /** How long it was kept on the device before it was sent, by that same clock; absent: sent at once. May differ when sent again. */
  readonly waitedMs?: number;
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

/** GET /api/jobs/:id/sheet.json: the job sheet, of which the paper, the CSV and the plain text are other forms. */
export interface SheetFile {
  readonly format: 'axlehand-sheet-1';
  readonly sheet: Sheet;
}

/** What is wrong with one line of a rack list: `line` counts from 1, the header is line 1; no `column`: the whole line. */
export interface StockLineFault {
  readonly file: string;
  readonly line: number;
  readonly column: string;
  readonly fault: string;
}

/** GET /api/stock: the rack. */
export interface StockList {
  readonly stock: readonly StockAxle[];
}

/** POST /api/stock?file=NAME with text/csv: how many lines were taken, and what is wrong with the others. */
export interface StockTaken {
  readonly taken: number;
  readonly faults?: readonly StockLineFault[];
}

/** GET /api/jobs/:id/rack?most=10: the best axles of the rack against this job, check by check, and the nearest that work would make fit. */
export type JobRack = RackView;

/** Every error, on every route. */
export interface ErrorBody {
  readonly error: { readonly code: string; readonly message: string; readonly whatToDo: string };
}

/** GET /api/jobs?q=&status=open|paused|closed&from=&to=&open=1&limit=: the log book, newest first.
 * `q` looks in titles, customers, notes and values ("72 3/8", "hub face 72"); `from`/`to` are days (2026-11-25); `open=1`: with open points only. */
export interface JobList {
  readonly jobs: readonly JobSummary[];
  /** How many matched, before `limit`. */
  readonly total: number;
}

/** GET /api/due: reminders nobody has dealt with, and the next service of each trailer that has a VIN; soonest first. */
export interface DueList {
  /** ISO time on the server's clock, by which `state` was told. */
  readonly at: string;
  readonly items: readonly DueItem[];
}

export interface DueItem {
  readonly id: string;
  readonly what: 'reminder' | 'service';
  readonly text: string;
  readonly state: 'due' | 'soon' | 'notYet';
  /** ISO date. */
  readonly dueAt?: string;
  /** Odometer reading in miles, exact. */
  readonly dueMiles?: string;
  /** The job it comes from. */
  readonly job: string;
  readonly title: string;
  readonly vin?: string;
  readonly invented: boolean;
  readonly source?: string;
}

/** GET /api/jobs/:id/events: everything that happened to the job, oldest first. */
export interface EventList {
  readonly events: readonly JobEvent[];
}

/** POST /api/jobs/:id/desk: the job after the desk's action, and what it did. 409 `stale` when `version` has been overtaken. */
export interface DeskResponse {
  readonly seq: number;
  readonly events: readonly EventBody[];
  readonly view: JobView;
}

/** GET and PUT /api/settings: how this shop speaks and shows things. */
export type Settings = Shop;

/** GET /api/stream[?job=ID]: one message `turn` for each committed turn, SSE id = `seq`; `bye` when the server stops. Last-Event-ID replays. */
export interface StreamTurn {
  readonly job: string;
  readonly seq: number;
  readonly who: string;
  readonly turn: string;
}

/** `desk` may do everything, `bay` may talk, `reader` may look. */
export type DeviceRole = 'desk' | 'bay' | 'reader';

/** A device that joined. It may do nothing once it is revoked. */
export interface DeviceEntry {
  readonly id: string;
  readonly name: string;
  readonly role: DeviceRole;
  readonly pairedAt: string;
  readonly seenAt: string;
  readonly revokedAt?: string;
}

/** GET /api/devices, for a desk. `own`: the one that asks; null on the shop computer itself. */
export interface DeviceList {
  readonly devices: readonly DeviceEntry[];
  readonly own: string | null;
}

/** PUT /api/devices/:id: another name, another role, or both. DELETE revokes. */
export interface DeviceChange {
  readonly name?: string;
  readonly role?: DeviceRole;
}

/** POST /api/devices/codes {role}: lets one device join. `code` is typed by hand; `token` is for a QR code. */
export interface Invitation {
  readonly code: string;
  readonly token: string;
  readonly role: DeviceRole;
  readonly expiresAt: string;
}
