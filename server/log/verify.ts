// Checks the log from its first event: numbers, chain, bodies, and that the log book says what the events say.
import { emptyJob, fold, type JobRecord } from '#log/events';
import { genesis, link, type StoredEvent } from './chain.ts';
import { type Cell, type Db, row } from './db.ts';
import { bookColumns, bookRow } from './projections.ts';
import { toEvent } from './store.ts';

/** `fault` names the first thing that is wrong; `seq` is absent where it is not one event's. */
export interface Verdict {
  readonly events: number;
  readonly jobs: number;
  /** Hash of the last event, in hex. */
  readonly head: string;
  readonly fault?: { readonly seq?: number; readonly job?: string; readonly what: string };
  /** Not faults: places where the clock went back. */
  readonly clockWentBack: readonly number[];
}

type Hashed = StoredEvent & { readonly hash: Buffer };

/** The whole log. Slow on a long one: reads every event. */
export function verifyAll(db: Db): Verdict {
  const chain = walk(db, 0, genesis);
  const fault = chain.fault ?? pageFault(db) ?? bookFault(db, chain.records);
  const { events, head, clockWentBack, records } = chain;
  return { events, jobs: records.size, head, clockWentBack, ...(fault ? { fault } : {}) };
}

/** The newest `count` links, and the pages of the file as far as a quick look goes. */
export function verifyTail(db: Db, count: number): Verdict['fault'] {
  const last = row<{ seq: number }>(db.prepare('SELECT max(seq) AS seq FROM events'))?.seq ?? 0;
  const from = Math.max(0, last - count);
  const before = row<{ hash: Buffer }>(db.prepare('SELECT hash FROM events WHERE seq = ?'), from);
  if (from > 0 && !before) return { seq: from, what: 'is missing' };
  return walk(db, from, before?.hash ?? genesis, false).fault;
}

function walk(db: Db, after: number, start: Buffer, folding = true) {
  const all = db.prepare('SELECT seq, job, turn, at, who, kind, body, receipt, hash FROM events WHERE seq > ? ORDER BY seq');
  const records = new Map<string, { record: JobRecord; at: string }>();
  const clockWentBack: number[] = [];
  let due = after;
  let prev = start;
  let at = '';
  const seen = (fault?: Verdict['fault']) => ({ events: due, head: prev.toString('hex'), clockWentBack, records, fault });
  try {
    for (const event of all.iterate(after) as Iterable<Hashed>) {
      const what = faultOf(event, due + 1, prev);
      if (what) return seen({ seq: what === 'is missing' ? due + 1 : event.seq, job: String(event.job), what });
      if (event.at < at) clockWentBack.push(event.seq);
      if (folding && event.job > 0) put(records, event);
      at = event.at;
      due = event.seq;
      prev = event.hash;
    }
    return seen();
  } catch (error) {
    if (!isUnreadable(error)) throw error;
    return seen({ seq: due + 1, what: 'cannot be read: the file is damaged there' });
  }
}

const isUnreadable = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_CORRUPT');

function faultOf(event: Hashed, due: number, prev: Buffer): string | null {
  if (event.seq !== due) return 'is missing';
  if (!link(prev, event).equals(event.hash)) return 'does not match its hash';
  return isJson(event.body) ? null : 'is no event, although its hash is right';
}

function isJson(text: string): boolean {
  try {
    return typeof JSON.parse(text)?.kind === 'string';
  } catch {
    return false;
  }
}

function put(records: Map<string, { record: JobRecord; at: string }>, stored: StoredEvent): void {
  const event = toEvent(stored);
  const before = records.get(event.job)?.record ?? emptyJob(event.job);
  records.set(event.job, { record: fold(before, event), at: event.at });
}

function pageFault(db: Db): Verdict['fault'] {
  const found = String(db.pragma('integrity_check(1)', { simple: true }));
  return found === 'ok' ? undefined : { what: `the file's pages: ${found}` };
}

function bookFault(db: Db, records: Map<string, { record: JobRecord; at: string }>): Verdict['fault'] {
  const line = db.prepare(`SELECT ${bookColumns.join(', ')} FROM jobs WHERE id = ?`);
  for (const [id, { record, at }] of records) {
    const have = Object.values((line.get(Number(id)) as Record<string, Cell> | undefined) ?? {});
    if (JSON.stringify(have) !== JSON.stringify(bookRow(record, at))) {
      return { job: id, what: 'the log book differs from the events; `npm run -s rebuild` mends it' };
    }
  }
  const extra = row<{ n: number }>(db.prepare('SELECT count(*) AS n FROM jobs'))?.n ?? 0;
  return extra === records.size
    ? undefined
    : { what: 'the log book has jobs that no event made; events may be missing at the end' };
}
