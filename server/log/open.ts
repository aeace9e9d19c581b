// Getting from a path to a connection that may be trusted with a turn.
import type { Connect, Connection } from './db.ts';
import { guarded, LogFault } from './faults.ts';
import { freeName } from './files.ts';
import { migrate, migrations, versionOf } from './schema.ts';
import { openStore } from './store.ts';
import { verifyTail } from './verify.ts';

/** Set at every open and read back: WAL reopens at NORMAL, which may lose an acknowledged turn in a power cut. */
export const pragmas: readonly (readonly [name: string, value: string, readsBack: unknown])[] = [
  ['journal_mode', 'WAL', 'wal'],
  ['synchronous', 'FULL', 2],
  ['foreign_keys', 'ON', 1],
  ['recursive_triggers', 'ON', 1],
  ['trusted_schema', 'OFF', 0],
  ['busy_timeout', '2000', 2000],
  ['wal_autocheckpoint', '1000', 1000],
  ['journal_size_limit', '8388608', 8_388_608],
];

/** Links checked at every start; the whole chain is checked by `verify`. */
const linksAtStart = 1000;

/** Makes or migrates the file where needed; a migrated one is copied first. @returns null for `wasAt` 0: it is new */
export function openWritable(connect: Connect, path: string) {
  return closing(connect(path), (db) => {
    const wasAt = versionOf(db);
    setPragmas(db);
    const isOlder = wasAt > 0 && wasAt < migrations.length;
    if (isOlder) db.prepare('VACUUM INTO ?').run(freeName(`${path}.schema-${wasAt}`));
    migrate(db, wasAt);
    const store = openStore(db);
    if (isOlder) store.rebuild();
    const damage = damageOf(db);
    if (damage) store.refuse(new LogFault('damaged', { detail: damage }));
    return { db, store, isNew: wasAt === 0 };
  });
}

/** For looking only. @throws LogFault `older` where a migration is due first */
export function openReadable(connect: Connect, path: string) {
  return closing(connect(path, { readonly: true }), (db) => {
    if (versionOf(db) < migrations.length) throw new LogFault('older');
    const store = openStore(db);
    store.refuse(new LogFault('readOnly'));
    return { db, store, isNew: false };
  });
}

function setPragmas(db: Connection): void {
  for (const [name, value, readsBack] of pragmas) {
    db.pragma(`${name} = ${value}`);
    const got = db.pragma(name, { simple: true });
    if (got !== readsBack) throw new LogFault('pragma', { detail: `${name} is ${got}` });
  }
}

/** What is wrong with the newest links or the file's pages, as far as a quick look goes. */
function damageOf(db: Connection): string | undefined {
  const fault = verifyTail(db, linksAtStart);
  if (fault) return `event ${fault.seq} ${fault.what}`;
  const pages = String(db.pragma('quick_check(1)', { simple: true }));
  return pages === 'ok' ? undefined : pages;
}

function closing<T>(db: Connection, work: (db: Connection) => T): T {
  try {
    return guarded(() => work(db));
  } catch (fault) {
    db.close();
    throw fault;
  }
}
