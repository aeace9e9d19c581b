// A backup a day beside the log, taken while the server runs; old ones go as they thin out with age.
import { execFile } from 'node:child_process';
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { surplus } from '#log';
import type { Services } from './app.ts';

const lookEveryMs = 3_600_000;

/** Looks every hour whether the day has its backup. */
export function keepBackups(services: Services): { stop(): void } {
  const timer = setInterval(() => void backupOfTheDay(services), lookEveryMs).unref();
  return { stop: () => clearInterval(timer) };
}

/** Copies the log at `from` to a new file and checks the copy. */
type Copy = (from: string, file: string) => Promise<unknown>;

/** In a process of its own: checking a long log takes seconds, in which no turn would be answered. */
const apart: Copy = (from, file) => {
  const main = new URL('../main.ts', import.meta.url).pathname;
  const env = { ...process.env, AXLEHAND_DB: from };
  return promisify(execFile)(process.execPath, [...process.execArgv, main, 'backup', file], { env });
};

/** @returns the file it made, or null where the day has one already or it failed (which is logged) */
export async function backupOfTheDay(
  { log, clock, line }: Pick<Services, 'log' | 'clock' | 'line'>,
  copy = apart,
): Promise<string | null> {
  const folder = backupFolder(log.path);
  const now = clock();
  const names = existsSync(folder) ? readdirSync(folder) : [];
  if (names.some((name) => name.startsWith(`axlehand-${now.slice(0, 10)}`) && name.endsWith('.db'))) return null;
  const file = join(folder, backupName(now));
  try {
    await copy(log.path, file);
    for (const old of surplus(readdirSync(folder))) rmSync(join(folder, old));
    line('info', 'backup', { file });
    return file;
  } catch (error) {
    line('error', 'backupFailed', { why: error instanceof Error ? error.message : '' });
    return null;
  }
}

export function backupFolder(logPath: string): string {
  return join(dirname(logPath), 'backups');
}

export function backupName(at: string): string {
  return `axlehand-${at.slice(0, 19).replaceAll(':', '-')}.db`;
}
