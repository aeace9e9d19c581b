// The log: append-only events in SQLite. A turn is acknowledged only after `append` has returned.
import { existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { backup, restore } from './copies.ts';
import type { Connect, Connection } from './db.ts';
import { openDevices } from './devices.ts';
import { guarded, LogFault } from './faults.ts';
import { takeLock } from './lock.ts';
import { openReadable, openWritable } from './open.ts';
import { openShop } from './shop.ts';
import type { openStore } from './store.ts';
import { type Verdict, verifyAll } from './verify.ts';

export type { Device, Role } from './devices.ts';
export { LogFault, type LogFaultCode } from './faults.ts';
export { surplus } from './keep.ts';
export type { OpenReminder } from './reminders.ts';
export { noJob } from './store.ts';
export type { Committed, Found, JobQuery, NewTurn, Receipt } from './types.ts';
export type { Verdict } from './verify.ts';

const connect: Connect = (path, options) => new Database(path, options);

/** Opens the log to add to it; makes or migrates the file where needed. @throws LogFault when it cannot be trusted with a turn */
export function openLog(path: string) {
  return guarded(() => {
    mkdirSync(dirname(path), { recursive: true });
    const lock = connect(`${path}.lock`);
    try {
      takeLock(lock);
      const { db, store, isNew } = openWritable(connect, path);
      return log(path, db, store, isNew, 500, lock);
    } catch (fault) {
      lock.close();
      throw fault;
    }
  });
}

/** Opens the log to look only, also while a server adds to it. @throws LogFault */
export function openToRead(path: string): Log {
  return guarded(() => {
    if (!existsSync(path)) throw new LogFault('missing', { detail: path });
    const { db, store, isNew } = openReadable(connect, path);
    return log(path, db, store, isNew, Number.POSITIVE_INFINITY);
  });
}

export type Log = ReturnType<typeof openLog>;

/** Puts a checked backup in the log's place; the old log is kept beside it. @throws LogFault with nothing changed */
export function restoreLog(from: string, path: string): ReturnType<typeof restore> {
  return restore(connect, from, path);
}

function log(
  path: string,
  db: Connection,
  store: ReturnType<typeof openStore>,
  isNew: boolean,
  pages: number,
  lock?: Connection,
) {
  return {
    path,
    isNew,
    ...store,
    ...openShop(db),
    ...openDevices(db),
    /** Checks everything; reads every event. */
    verify: (): Verdict => guarded(() => verifyAll(db, connect)),
    /** A checked copy, complete under its name or not there at all; turns go on meanwhile. @throws LogFault */
    backup: (to: string): Promise<Verdict> => backup(db, connect, to, pages),
    close(): void {
      db.close();
      lock?.close();
    },
  };
}
