// The log: append-only events in SQLite. A turn is acknowledged only after `append` has returned.

import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { guarded, LogFault } from './faults.ts';
import { migrate } from './schema.ts';
import { openShop } from './shop.ts';
import { openStore } from './store.ts';

export { LogFault } from './faults.ts';
export { noJob } from './store.ts';
export type { Committed, Found, JobQuery, NewTurn, Receipt } from './types.ts';

/** Set at every open and read back: WAL reopens at NORMAL, which may lose an acknowledged turn in a power cut. */
const pragmas: readonly (readonly [name: string, value: string, readsBack: unknown])[] = [
  ['journal_mode', 'WAL', 'wal'],
  ['synchronous', 'FULL', 2],
  ['foreign_keys', 'ON', 1],
  ['recursive_triggers', 'ON', 1],
  ['trusted_schema', 'OFF', 0],
  ['busy_timeout', '2000', 2000],
];

/** Opens the log, makes or migrates the file where needed. @throws LogFault when the file cannot be trusted with a turn */
export function openLog(path: string) {
  const db = guarded(() => {
    if (path !== ':memory:') mkdirSync(dirname(path), { recursive: true });
    return new Database(path);
  });
  try {
    return guarded(() => {
      const wasAt = prepare(db, path);
      return { path, isNew: wasAt === 0, ...openStore(db), ...openShop(db), close: () => void db.close() };
    });
  } catch (fault) {
    db.close();
    throw fault;
  }
}

export type Log = ReturnType<typeof openLog>;

function prepare(db: Database.Database, path: string): number {
  for (const [name, value, readsBack] of pragmas) {
    db.pragma(`${name} = ${value}`);
    const got = db.pragma(name, { simple: true });
    const inMemory = path === ':memory:' && name === 'journal_mode';
    if (got !== readsBack && !inMemory) throw new LogFault('pragma', { detail: `${name} is ${got}` });
  }
  return migrate(db);
}
