// The log over one open connection: append whole turns, read them back, keep the projections in step.
import type { JobEvent, JobId, JobRecord } from '#log/events';
import { emptyJob, fold, foldAll } from '#log/events';
import { genesis, link, type StoredEvent, toEvent } from './chain.ts';
import type { Db } from './db.ts';
import { row, rows } from './db.ts';
import { guarded, LogFault } from './faults.ts';
import { openProjections } from './projections.ts';
import { rebuild } from './rebuild.ts';
import { type OpenReminder, remindersOf } from './reminders.ts';
import { search } from './search.ts';
import type { Committed, Found, JobQuery, NewTurn, Receipt, TurnEnd } from './types.ts';

/** Events that belong to no job: what was said while none was open. */
export const noJob: JobId = '0';
const columns = 'seq, job, turn, at, who, kind, body, receipt';
const keptInMemory = 500;

export function openStore(db: Db) {
  const insert = db.prepare(`INSERT INTO events (${columns}, hash) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`);
  const head = db.prepare('SELECT seq, hash FROM events ORDER BY seq DESC LIMIT 1');
  const ofJob = db.prepare(`SELECT ${columns} FROM events WHERE job = ? AND seq > ? ORDER BY seq`);
  const since = db.prepare(`SELECT ${columns} FROM events WHERE seq > ? ORDER BY seq LIMIT ?`);
  const between = db.prepare(`SELECT ${columns} FROM events WHERE job = ? AND seq BETWEEN ? AND ? ORDER BY seq`);
  const ends = db.prepare('SELECT seq, job, turn, who FROM events WHERE seq > ? AND receipt IS NOT NULL ORDER BY seq LIMIT ?');
  const receipted = db.prepare('SELECT seq, job, receipt FROM events WHERE turn = ? AND receipt IS NOT NULL');
  const lastJob = db.prepare('SELECT coalesce(max(job), 0) AS id FROM events');
  const projections = openProjections(db);
  const recent = new Map<JobId, JobRecord>();
  let refusal: LogFault | null = null;
  let later: (() => void)[] | null = null;

  function remember(record: JobRecord): void {
    recent.delete(record.id);
    recent.set(record.id, record);
    if (recent.size > keptInMemory) for (const oldest of recent.keys()) return void recent.delete(oldest);
  }

  function events(id: JobId, after = 0): JobEvent[] {
    return rows<StoredEvent>(ofJob, Number(id), after).map(toEvent);
  }

  function job(id: JobId): JobRecord | null {
    const known = recent.get(id);
    if (known) return known;
    const past = isJobId(id) ? events(id) : [];
    if (past.length === 0) return null;
    const record = foldAll(id, past);
    remember(record);
    return record;
  }

  function commit(turn: NewTurn): Committed {
    const id = turn.job ?? String(row<{ id: number }>(lastJob)?.id ?? 0);
    const target = turn.job === null ? String(Number(id) + 1) : id;
    const before = target === noJob ? null : (job(target) ?? emptyJob(target));
    if (before?.version === 0 && turn.job !== null) throw new TypeError(`there is no job ${target} to add to`);
    const last = row<{ seq: number; hash: Buffer }>(head);
    let seq = last?.seq ?? 0;
    let prev = last?.hash ?? genesis;
    const first = seq + 1;
    const done: JobEvent[] = turn.events.map((body, i) => {
      const receipt = i === turn.events.length - 1 ? JSON.stringify({ ...turn.receipt, first }) : null;
      const { turn: name, at, who } = turn;
      const stored = {
        seq: ++seq,
        job: Number(target),
        turn: name,
        at,
        who,
        kind: body.kind,
        body: JSON.stringify(body),
        receipt,
      };
      prev = link(prev, stored);
      insert.run(seq, stored.job, name, at, who, body.kind, stored.body, receipt, prev);
      return { seq, job: target, turn: turn.turn, at: turn.at, who: turn.who, body };
    });
    const record = before && done.reduce(fold, before);
    if (record) projections.add(record, done);
    return { job: target, seq, events: done, record };
  }

  /** Adds a whole turn in one transaction; when this returns it is on disk. `answer` is made of the job as it will stand, before
   * the turn is kept: what cannot be answered is not kept. @throws LogFault, or what `answer` throws, with nothing added */
  function append(turn: NewTurn): Committed;
  function append<T>(turn: NewTurn, answer: (done: Committed) => T): T;
  function append<T>(turn: NewTurn, answer?: (done: Committed) => T): T | Committed {
    if (turn.events.length === 0) throw new TypeError('a turn without events cannot be appended');
    if (refusal) throw refusal;
    const [done, made] = guarded(() =>
      db
        .transaction((): [Committed, T | Committed] => {
          const added = commit(turn);
          return [added, answer ? answer(added) : added];
        })
        .immediate(),
    );
    if (done.record) remember(done.record);
    return made;
  }

  /** Several pieces of work in one transaction, so that one flush to disk serves them all; each may fail alone and must
   * keep its failure to itself. Nothing that it appended is acknowledged before this returns. @throws LogFault with nothing of any of them added */
  function together(work: (each: <T>(piece: () => T) => T) => void): void {
    const after: (() => void)[] = [];
    later = after;
    const each = <T>(piece: () => T): T => {
      const made = piece();
      // A full disk may end the transaction under us, and with it what the pieces before this one added.
      if (!db.inTransaction) throw new LogFault('full');
      return made;
    };
    try {
      guarded(() => db.transaction(() => work(each)).immediate());
    } catch (fault) {
      recent.clear();
      throw fault;
    } finally {
      later = null;
    }
    for (const tell of after) tell();
  }

  /** Runs `tell` when what was appended so far is on disk. */
  function onceOnDisk(tell: () => void): void {
    if (later) later.push(tell);
    else tell();
  }

  /** What was answered to a turn already taken. */
  function receipt(turn: string): Receipt | null {
    const found = row<{ seq: number; job: number; receipt: string }>(receipted, turn);
    return found ? { ...JSON.parse(found.receipt), job: String(found.job), seq: found.seq } : null;
  }

  return {
    append,
    together,
    onceOnDisk,
    receipt,
    job,
    events,
    /** Events of one turn again. */
    eventsBetween: (id: JobId, first: number, last: number): JobEvent[] =>
      rows<StoredEvent>(between, Number(id), first, last).map(toEvent),
    /** Events of all jobs after a number, oldest first. */
    eventsSince: (seq: number, limit: number): JobEvent[] => rows<StoredEvent>(since, seq, limit).map(toEvent),
    /** Turns of all jobs whose last event comes after a number, oldest first. */
    turnsSince: (seq: number, limit: number): TurnEnd[] =>
      rows<TurnEnd & { job: number }>(ends, seq, limit).map((end) => ({ ...end, job: String(end.job) })),
    head: (): number => row<{ seq: number }>(head)?.seq ?? 0,
    search: (query: JobQuery): Found => search(db, query),
    reminders: (): readonly OpenReminder[] => remindersOf(db),
    rebuild: (): number => guarded(() => rebuild(db, projections)),
    /** From now on nothing is added; reading goes on. */
    refuse: (fault: LogFault): void => {
      refusal = fault;
    },
    refusal: (): LogFault | null => refusal,
  };
}

function isJobId(id: JobId): boolean {
  return /^[1-9]\d{0,8}$/.test(id);
}
