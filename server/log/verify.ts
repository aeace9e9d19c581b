// Checks the log from its first event: numbers, chain, bodies, and that the log book says what the events say.
import { bookFault } from './book.ts';
import { genesis, link, type StoredEvent } from './chain.ts';
import { type Connect, type Db, row } from './db.ts';

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

/** The whole log as it stands at one moment, also while another process adds to it. Slow on a long one: reads every event, twice. */
export function verifyAll(db: Db, connect: Connect): Verdict {
  return atOnce(db, () => {
    const { events, jobs, head, clockWentBack, ...chain } = walk(db, 0, genesis);
    const fault = chain.fault ?? pageFault(db) ?? bookFault(db, connect, events);
    return { events, jobs: jobs.size, head, clockWentBack, ...(fault ? { fault } : {}) };
  });
}

/** All that `work` reads is of one moment. */
function atOnce<T>(db: Db, work: () => T): T {
  if (db.inTransaction) return work();
  db.exec('BEGIN');
  try {
    return work();
  } finally {
    db.exec('ROLLBACK');
  }
}

/** The newest `count` links, and the pages of the file as far as a quick look goes. */
export function verifyTail(db: Db, count: number): Verdict['fault'] {
  const last = row<{ seq: number }>(db.prepare('SELECT max(seq) AS seq FROM events'))?.seq ?? 0;
  const from = Math.max(0, last - count);
  const before = row<{ hash: Buffer }>(db.prepare('SELECT hash FROM events WHERE seq = ?'), from);
  if (from > 0 && !before) return { seq: from, what: 'is missing' };
  return walk(db, from, before?.hash ?? genesis).fault;
}

function walk(db: Db, after: number, start: Buffer) {
  const all = db.prepare('SELECT seq, job, turn, at, who, kind, body, receipt, hash FROM events WHERE seq > ? ORDER BY seq');
  const jobs = new Set<number>();
  const clockWentBack: number[] = [];
  let due = after;
  let prev = start;
  let at = '';
  const seen = (fault?: Verdict['fault']) => ({ events: due, head: prev.toString('hex'), clockWentBack, jobs, fault });
  try {
    for (const event of all.iterate(after) as Iterable<Hashed>) {
      const what = faultOf(event, due + 1, prev);
      if (what) return seen({ seq: what === 'is missing' ? due + 1 : event.seq, job: String(event.job), what });
      if (event.at < at) clockWentBack.push(event.seq);
      if (event.job > 0) jobs.add(event.job);
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

function pageFault(db: Db): Verdict['fault'] {
  const found = String(db.pragma('integrity_check(1)', { simple: true }));
  return found === 'ok' ? undefined : { what: `the file's pages: ${found}` };
}
