// The database's shape, one step a version. A step that was ever released is never edited: add the next one.
import { type Db, row } from './db.ts';
import { LogFault } from './faults.ts';

/** "AXLE": marks the file as ours. */
const applicationId = 0x41584c45;

const events = `
  CREATE TABLE events (
    seq INTEGER PRIMARY KEY,
    job INTEGER NOT NULL,
    turn TEXT NOT NULL,
    at TEXT NOT NULL,
    who TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL,
    receipt TEXT,
    hash BLOB NOT NULL
  ) STRICT;
  CREATE INDEX events_of_job ON events (job, seq);
  CREATE UNIQUE INDEX receipt_of_turn ON events (turn) WHERE receipt IS NOT NULL;
  CREATE TRIGGER events_gapless BEFORE INSERT ON events
    WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM events)
    BEGIN SELECT RAISE(ABORT, 'events: the next number is due'); END;
  CREATE TRIGGER events_unchanged BEFORE UPDATE ON events BEGIN SELECT RAISE(ABORT, 'events: append only'); END;
  CREATE TRIGGER events_kept BEFORE DELETE ON events BEGIN SELECT RAISE(ABORT, 'events: append only'); END;`;

const jobs = `
  CREATE TABLE jobs (
    id INTEGER PRIMARY KEY,
    version INTEGER NOT NULL,
    title TEXT NOT NULL,
    kind TEXT NOT NULL,
    status TEXT NOT NULL,
    opened_at TEXT NOT NULL,
    updated_at TEXT NOT NULL,
    open_points INTEGER NOT NULL,
    invented INTEGER NOT NULL
  ) STRICT;`;

const shop = `
  CREATE TABLE settings (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
  CREATE TABLE stock (id TEXT PRIMARY KEY, axle TEXT NOT NULL) STRICT;`;

const search = `
  CREATE INDEX jobs_by_time ON jobs (updated_at DESC, id DESC);
  CREATE TABLE job_values (
    job INTEGER NOT NULL,
    id TEXT NOT NULL,
    field TEXT NOT NULL,
    value TEXT NOT NULL COLLATE NOCASE,
    status TEXT NOT NULL,
    PRIMARY KEY (job, id)
  ) STRICT, WITHOUT ROWID;
  CREATE INDEX values_by_value ON job_values (value, field);
  CREATE VIRTUAL TABLE words USING fts5 (text, content = '', contentless_delete = 1, tokenize = 'unicode61 remove_diacritics 2', detail = none);`;

const devices = `
  CREATE TABLE devices (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    role TEXT NOT NULL,
    token BLOB NOT NULL UNIQUE,
    paired_at TEXT NOT NULL,
    seen_at TEXT NOT NULL,
    revoked_at TEXT
  ) STRICT;`;

const reminders = `
  CREATE TABLE reminders (
    job INTEGER NOT NULL,
    id TEXT NOT NULL,
    text TEXT NOT NULL,
    due_at TEXT,
    due_miles TEXT,
    PRIMARY KEY (job, id)
  ) STRICT, WITHOUT ROWID;`;

const steps = `
  CREATE TABLE job_steps (
    job INTEGER NOT NULL,
    step TEXT NOT NULL,
    at TEXT NOT NULL,
    PRIMARY KEY (job, step)
  ) STRICT, WITHOUT ROWID;`;

export const migrations: readonly string[] = [events + jobs + shop, search + devices, reminders, steps];

/** The version a file has. @throws LogFault `newer`, `notOurs` when it is not one we can take on */
export function versionOf(db: Db): number {
  const found = Number(db.pragma('user_version', { simple: true }));
  const owner = Number(db.pragma('application_id', { simple: true }));
  const tables = row<{ n: number }>(db.prepare('SELECT count(*) AS n FROM sqlite_schema'))?.n ?? 0;
  if ((found > 0 || tables > 0) && owner !== applicationId) throw new LogFault('notOurs');
  if (found > migrations.length) throw new LogFault('newer');
  return found;
}

/** Brings an older file up to date, each step in its own transaction. */
export function migrate(db: Db, from: number, steps = migrations): void {
  steps.slice(from).forEach((step, i) => {
    db.transaction(() => {
      db.exec(step);
      db.pragma(`application_id = ${applicationId}`);
      db.pragma(`user_version = ${from + i + 1}`);
    }).immediate();
  });
}
