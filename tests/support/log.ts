// A log in a temporary folder, and turns to put into it.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach } from 'vitest';
import { type Log, type NewTurn, openLog } from '#log';
import type { EventBody } from '#log/events';
import type { Connect } from '../../server/log/db.ts';

export const connect: Connect = (path, options) => new Database(path, options);

const folders: string[] = [];
const opened: Log[] = [];

/** A path in a folder that goes away after the test. */
export function somewhere(name = 'shop.db'): string {
  const folder = mkdtempSync(join(tmpdir(), 'axlehand-'));
  folders.push(folder);
  return join(folder, name);
}

/** An open log that is closed after the test. */
export function aLog(path = somewhere()): Log {
  const log = openLog(path);
  opened.push(log);
  return log;
}

afterEach(() => {
  for (const log of opened.splice(0)) log.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

let turns = 0;

/** A turn with a heard and a replied event around `bodies`. */
export function aTurn(job: string | null, bodies: readonly EventBody[] = [], more: Partial<NewTurn> = {}): NewTurn {
  const turn = `turn-${String(++turns).padStart(8, '0')}`;
  const text = more.turn ?? turn;
  const heard: EventBody = {
    kind: 'heard',
    text,
    heardBy: 'typed',
    intents: [],
    unclaimed: [],
    heardAt: '2026-11-25T09:00:00.000Z',
  };
  const replied: EventBody = { kind: 'replied', code: 'taken', speak: 'taken', show: 'taken' };
  const events = [heard, ...bodies, replied];
  return { turn, job, at: '2026-11-25T09:00:00.000Z', who: 'bay 1', events, receipt: { digest: turn }, ...more };
}

export function opens(title: string, customer?: string): EventBody {
  return { kind: 'jobOpened', jobKind: 'axleReplacement', title, ...(customer === undefined ? {} : { customer }) };
}

export function hearsValue(id: string, field: 'hubFace' | 'springCentre', value: string): EventBody {
  return { kind: 'valueHeard', value: { id, field, stage: 'found', value, unit: 'in', raw: value, heardBy: 'typed' } };
}
