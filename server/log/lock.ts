// One writer a log. The lock is held by the operating system, so it dies with its process and a power cut leaves none behind;
// beside it stands who holds it, for the message.
import type { Db } from './db.ts';
import { row } from './db.ts';
import { guarded, LogFault } from './faults.ts';

/** Takes the lock by a write transaction that is never ended on a database of its own. @throws LogFault `inUse` */
export function takeLock(db: Db): void {
  db.pragma('busy_timeout = 0');
  db.pragma('synchronous = OFF');
  try {
    guarded(() => {
      db.exec('BEGIN IMMEDIATE; CREATE TABLE IF NOT EXISTS holder (pid INTEGER, since TEXT); DELETE FROM holder');
      db.prepare('INSERT INTO holder VALUES (?, ?)').run(process.pid, new Date().toISOString());
      db.exec('COMMIT; BEGIN IMMEDIATE');
    });
  } catch (fault) {
    if (!(fault instanceof LogFault) || fault.code !== 'busy') throw fault;
    const holder = row<{ pid: number; since: string }>(db.prepare('SELECT pid, since FROM holder'));
    throw new LogFault('inUse', holder ? { detail: `process ${holder.pid}, since ${holder.since}` } : {});
  }
}
