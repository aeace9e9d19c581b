// What can go wrong with the file under the log, in words for the person in front of it.

const words = {
  newer: ['This log was written by a newer Axlehand.', 'Start the newer version, or restore a backup made by this one.'],
  notOurs: ['This file is not an Axlehand log.', 'Check AXLEHAND_DB, or name a new file.'],
  older: ['This log was written by an older Axlehand.', 'Start the server once; it brings the log up to date and keeps a copy.'],
  missing: ['There is no log at that place.', 'Check the name, or AXLEHAND_DB.'],
  corrupt: ['The log file is damaged.', 'Nothing was changed. Run `npm run -s verify`, then restore the last backup.'],
  damaged: [
    'The log failed its check, so nothing is added to it.',
    'Reading and exports work. Run `npm run -s verify`, then restore the last backup.',
  ],
  full: ['The disk is full; nothing of this turn was kept.', 'Free some space, then say it again.'],
  readOnly: [
    'The log file cannot be written; nothing of this turn was kept.',
    'Make the file and its folder writable, then say it again.',
  ],
  busy: ['Another program holds the log; nothing of this turn was kept.', 'Close the other program, then say it again.'],
  inUse: ['Another Axlehand is using this log.', 'Stop it first, or name another file in AXLEHAND_DB.'],
  io: [
    'The disk did not answer as it should; nothing of this turn was kept.',
    'Check the disk and its cable, then say it again.',
  ],
  cannotOpen: ['The log file cannot be opened.', 'Check that the folder exists and may be written to.'],
  pragma: ['The database would not take a setting that keeps the log safe.', 'Use a local disk, not a network share.'],
} as const;

export type LogFaultCode = keyof typeof words;

/** The file failed, not the request. `message` and `whatToDo` are fit to show. */
export class LogFault extends Error {
  readonly code: LogFaultCode;
  readonly whatToDo: string;
  constructor(code: LogFaultCode, options?: { cause?: unknown; detail?: string }) {
    super(options?.detail ? `${words[code][0]} (${options.detail})` : words[code][0], { cause: options?.cause });
    this.name = 'LogFault';
    this.code = code;
    this.whatToDo = words[code][1];
  }
}

const bySqlite: readonly (readonly [prefix: string, code: LogFaultCode])[] = [
  ['SQLITE_FULL', 'full'],
  ['SQLITE_READONLY', 'readOnly'],
  ['SQLITE_BUSY', 'busy'],
  ['SQLITE_LOCKED', 'busy'],
  ['SQLITE_CORRUPT', 'corrupt'],
  ['SQLITE_NOTADB', 'notOurs'],
  ['SQLITE_CANTOPEN', 'cannotOpen'],
  ['SQLITE_IOERR', 'io'],
  ['EACCES', 'cannotOpen'],
  ['ENOENT', 'cannotOpen'],
  ['ENOTDIR', 'cannotOpen'],
  ['EEXIST', 'cannotOpen'],
  ['EISDIR', 'cannotOpen'],
  ['ENOSPC', 'full'],
  ['EROFS', 'readOnly'],
];

/** Runs `work`; what SQLite or the file system throws comes out as a LogFault. */
export function guarded<T>(work: () => T): T {
  try {
    return work();
  } catch (cause) {
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
    const fault = bySqlite.find(([prefix]) => code.startsWith(prefix));
    if (!fault) throw cause;
    throw new LogFault(fault[1], { cause });
  }
}
