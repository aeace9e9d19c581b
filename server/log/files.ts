// Whole files, put where they belong only when they are complete and on disk.
import { closeSync, copyFileSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';

/** Flushes a file, or the entries of a folder, to disk. */
function flush(path: string): void {
  const handle = openSync(path, 'r');
  fsyncSync(handle);
  closeSync(handle);
}

/** Gives a finished file its name: flushed before and after, so that a power cut leaves the old or the new one. */
export function settle(temporary: string, path: string): void {
  flush(temporary);
  renameSync(temporary, path);
  flush(dirname(path));
}

/** A copy of a database under a temporary name beside `path`, with what still stands in its write-ahead file. */
export function copyBeside(from: string, path: string): string {
  const temporary = `${path}.coming`;
  dropHelpers(temporary);
  copyFileSync(from, temporary);
  if (existsSync(`${from}-wal`)) copyFileSync(`${from}-wal`, `${temporary}-wal`);
  return temporary;
}

/** Removes a database's helpers; what was in them must have been checkpointed or is not wanted. */
export function dropHelpers(path: string): void {
  for (const end of ['-wal', '-shm']) rmSync(path + end, { force: true });
}

/** The first of `base-1`, `base-2` ... that is not taken. */
export function freeName(base: string): string {
  for (let n = 1; ; n++) if (!existsSync(`${base}-${n}`)) return `${base}-${n}`;
}
