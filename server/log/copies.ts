// Backups and their way back. A copy has its name only when it is complete, checked and on disk.
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Connect, Connection } from './db.ts';
import { guarded, LogFault } from './faults.ts';
import { copyBeside, dropHelpers, freeName, settle } from './files.ts';
import { takeLock } from './lock.ts';
import { versionOf } from './schema.ts';
import { type Verdict, verifyAll } from './verify.ts';

/** Copies the log while turns go on. `pages` at a time between turns; Infinity where another process writes. @throws LogFault */
export async function backup(db: Connection, connect: Connect, to: string, pages: number): Promise<Verdict> {
  const temporary = `${to}.coming`;
  guarded(() => {
    mkdirSync(dirname(to), { recursive: true });
    rmSync(temporary, { force: true });
  });
  await db.backup(temporary, { progress: () => Math.min(pages, 0x7fff_ffff) }).catch((cause) => {
    guarded(() => {
      throw cause;
    });
  });
  return guarded(() => {
    const verdict = inspect(connect, temporary);
    settle(temporary, to);
    return verdict;
  });
}

/** Puts a checked backup in the log's place; the old log is kept beside it. @throws LogFault with nothing changed */
export function restore(connect: Connect, from: string, path: string): { verdict: Verdict; kept?: string } {
  return guarded(() => {
    if (!existsSync(from)) throw new LogFault('missing', { detail: from });
    mkdirSync(dirname(path), { recursive: true });
    const lock = connect(`${path}.lock`);
    try {
      takeLock(lock);
      const temporary = copyBeside(from, path);
      const verdict = inspect(connect, temporary);
      const kept = existsSync(path) ? setAside(path) : undefined;
      settle(temporary, path);
      return { verdict, ...(kept === undefined ? {} : { kept }) };
    } finally {
      lock.close();
    }
  });
}

/** Checks a copy and makes it one self-contained file. A bad one is removed. */
function inspect(connect: Connect, path: string): Verdict {
  try {
    const copy = connect(path);
    try {
      versionOf(copy);
      copy.pragma('journal_mode = DELETE');
      const verdict = verifyAll(copy, connect);
      if (verdict.fault) throw new LogFault('corrupt', { detail: verdict.fault.what });
      return verdict;
    } finally {
      copy.close();
    }
  } catch (fault) {
    rmSync(path, { force: true });
    throw fault;
  } finally {
    dropHelpers(path);
  }
}

function setAside(path: string): string {
  const kept = freeName(`${path}.before-restore`);
  for (const end of ['', '-wal', '-shm']) if (existsSync(path + end)) renameSync(path + end, kept + end);
  return kept;
}
