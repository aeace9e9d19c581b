import { copyFileSync, existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { LogFault, openLog, openToRead, restoreLog } from '#log';
import { foldAll } from '#log/events';
import { link, type StoredEvent } from '../../../server/log/chain.ts';
import type { Connection, Db } from '../../../server/log/db.ts';
import { migrate, migrations } from '../../../server/log/schema.ts';
import { openStore } from '../../../server/log/store.ts';
import { verifyAll } from '../../../server/log/verify.ts';
import { aLog, aTurn, connect, hearsValue, opens, somewhere } from '../../support/log.ts';

const fixture = new URL('../../support/logs/schema-1.db', import.meta.url).pathname;

/** A second hand on the file, as a meddler or a tool would have. */
function meddle(path: string, sql: string): void {
  const db = new Database(path);
  db.exec(sql);
  db.close();
}

function faultOf(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    if (error instanceof LogFault) return error.code;
    throw error;
  }
  return 'none';
}

describe('append', () => {
  it('gives back what it took, job by job, in order', () => {
    const log = aLog();
    const first = log.append(aTurn(null, [opens('blue trailer')]));
    const second = log.append(aTurn(null, [opens('red trailer')]));
    log.append(aTurn(first.job, [hearsValue('v1', 'hubFace', '579/8')]));
    expect([first.job, second.job]).toEqual(['1', '2']);
    expect(log.events('1').map(({ body }) => body.kind)).toEqual([
      'heard',
      'jobOpened',
      'replied',
      'heard',
      'valueHeard',
      'replied',
    ]);
    expect(log.job('1')?.values[0]?.value).toBe('579/8');
    expect(log.job('1')?.turns).toBe(2);
    expect(log.job('3')).toBeNull();
  });

  it('keeps the job in memory as the events make it', () => {
    const path = somewhere();
    const log = openLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    log.append(aTurn('1', [hearsValue('v1', 'hubFace', '72')]));
    const live = log.job('1');
    expect(foldAll('1', log.events('1'))).toEqual(live);
    log.close();
    expect(aLog(path).job('1')).toEqual(live);
  });

  it('takes a turn once', () => {
    const log = aLog();
    const turn = aTurn(null, [opens('blue trailer')]);
    log.append(turn);
    expect(() => log.append(turn)).toThrow(/UNIQUE/);
    expect(log.head()).toBe(3);
    expect(log.receipt(turn.turn)).toMatchObject({ job: '1', first: 1, seq: 3, digest: turn.turn });
  });

  it('adds nothing of a turn that fails half way', () => {
    const log = aLog();
    const circular: Record<string, unknown> = { kind: 'noteTaken', id: 'n', text: 'x' };
    circular.self = circular;
    expect(() => log.append(aTurn(null, [opens('blue trailer'), circular as never]))).toThrow();
    expect(log.head()).toBe(0);
    expect(log.search({}).total).toBe(0);
  });

  it('keeps nothing of a turn that cannot be answered', () => {
    const log = aLog();
    log.append(aTurn(null, [opens('blue trailer')]));
    const answer = () => {
      throw new TypeError('no words for this');
    };
    expect(() => log.append(aTurn('1', [hearsValue('v1', 'hubFace', '72')]), answer)).toThrow(/no words/);
    expect(log.head()).toBe(3);
    expect(log.job('1')?.values).toEqual([]);
  });
});

describe('the events table', () => {
  it.each([
    "UPDATE events SET body = '{}' WHERE seq = 2",
    'DELETE FROM events WHERE seq = 3',
    "INSERT OR REPLACE INTO events SELECT 2, job, turn, at, who, kind, '{}', receipt, hash FROM events WHERE seq = 2",
    "INSERT INTO events SELECT 2, job, 'x', at, who, kind, '{}', NULL, hash FROM events WHERE seq = 2 ON CONFLICT (seq) DO UPDATE SET body = '{}'",
    "INSERT INTO events SELECT 99, job, 'x', at, who, kind, body, NULL, hash FROM events WHERE seq = 2",
    "INSERT INTO events SELECT 4, 'one', 'x', at, who, kind, body, NULL, hash FROM events WHERE seq = 2",
  ])('refuses %s', (sql) => {
    const path = somewhere();
    const log = aLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    expect(() => meddle(path, sql)).toThrow();
    expect(log.verify().fault).toBeUndefined();
  });

  const free = 'DROP TRIGGER events_unchanged; DROP TRIGGER events_kept; DROP TRIGGER events_gapless;';
  it.each([
    [`${free} UPDATE events SET body = replace(body, '72', '73') WHERE seq = 5`, 5],
    [`${free} UPDATE events SET at = '2020-01-01T00:00:00.000Z' WHERE seq = 4`, 4],
    [`${free} UPDATE events SET who = 'nobody' WHERE seq = 1`, 1],
    [`${free} UPDATE events SET receipt = NULL WHERE seq = 6`, 6],
    [`${free} DELETE FROM events WHERE seq = 2`, 2],
    [
      `${free} UPDATE events SET seq = 99 WHERE seq = 6; UPDATE events SET seq = 6 WHERE seq = 5; UPDATE events SET seq = 5 WHERE seq = 99`,
      5,
    ],
  ])('names the first bad event after %s', (sql, seq) => {
    const path = somewhere();
    const log = openLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    log.append(aTurn('1', [hearsValue('v1', 'hubFace', '72')]));
    log.close();
    meddle(path, sql);
    const damaged = aLog(path);
    expect(damaged.verify().fault?.seq).toBe(seq);
    expect(faultOf(() => damaged.append(aTurn('1')))).toBe('damaged');
    expect(damaged.search({}).total).toBe(1);
  });

  it('names an event that is none, although someone made the chain fit it', () => {
    const path = somewhere();
    const log = openLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    log.close();
    const db = new Database(path);
    const last = db.prepare('SELECT * FROM events WHERE seq = 3').get() as StoredEvent;
    const before = db.prepare('SELECT hash FROM events WHERE seq = 2').pluck().get() as Buffer;
    db.exec('DROP TRIGGER events_unchanged');
    db.prepare('UPDATE events SET body = ?, hash = ? WHERE seq = 3').run('{', link(before, { ...last, body: '{' }));
    db.close();
    expect(aLog(path).verify().fault).toMatchObject({ seq: 3, what: expect.stringContaining('is no event') });
  });

  it('misses events cut off at the end', () => {
    const path = somewhere();
    const log = openLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    log.append(aTurn('1', []));
    log.close();
    meddle(path, 'DROP TRIGGER events_kept; DELETE FROM events WHERE seq > 3');
    expect(aLog(path).verify().fault).toEqual({ job: '1', what: expect.stringContaining('missing at the end') });
  });
});

describe('what is made from the events', () => {
  function aFullLog(): string {
    const path = somewhere();
    const log = openLog(path);
    for (const name of ['blue', 'green']) log.append(aTurn(null, [opens(`${name} trailer`)]));
    for (const job of ['1', '2']) {
      log.append(aTurn(job, [hearsValue(`v${job}`, 'hubFace', '72')]));
      log.append(aTurn(job, [{ kind: 'reminderSet', id: `r${job}`, text: 'grease', dueAt: '2026-12-24' }]));
    }
    log.close();
    return path;
  }
  const wordOfJob = 'rowid >> 32 = 2';

  it.each([
    ["UPDATE jobs SET title = 'red' WHERE id = 2", 'the log book'],
    ['DELETE FROM jobs WHERE id = 2', 'the log book'],
    ["UPDATE job_values SET value = '73' WHERE job = 2", 'the values'],
    ["UPDATE job_values SET status = 'struck' WHERE job = 2", 'the values'],
    ['DELETE FROM job_values WHERE job = 2', 'the values'],
    ["INSERT INTO job_values VALUES (2, 'w', 'hubFace', '72', 'heard')", 'the values'],
    ["UPDATE reminders SET due_at = '2027-01-01' WHERE job = 2", 'the reminders'],
    ['DELETE FROM reminders WHERE job = 2', 'the reminders'],
    [`DELETE FROM words WHERE ${wordOfJob}`, 'the words'],
    ["INSERT INTO words (rowid, text) VALUES ((2 << 32) | 999, 'aardvark')", 'the words'],
    ["INSERT INTO words (rowid, text) VALUES ((2 << 32) | 999, 'zebra')", 'the words'],
  ])('is missed or found odd by verify after %s, and mended by a rebuild', (sql, what) => {
    const path = aFullLog();
    meddle(path, sql);
    const log = aLog(path);
    expect(log.verify().fault).toEqual({ job: '2', what: expect.stringContaining(what) });
    log.rebuild();
    expect(log.verify().fault).toBeUndefined();
  });

  it('is checked as of one moment, whatever another process adds meanwhile', () => {
    const path = aFullLog();
    const log = aLog(path);
    const reader = connect(path, { readonly: true });
    const pragma: Connection['pragma'] = (text, options) => {
      log.append(aTurn('1', [hearsValue(`w${log.head()}`, 'hubFace', '71')]));
      return reader.pragma(text, options);
    };
    const busy: Db = {
      get inTransaction() {
        return reader.inTransaction;
      },
      prepare: (sql) => reader.prepare(sql),
      exec: (sql) => reader.exec(sql),
      transaction: (work) => reader.transaction(work),
      pragma,
    };
    const before = log.head();
    expect(verifyAll(busy, connect)).toMatchObject({ events: before });
    expect(verifyAll(busy, connect).fault).toBeUndefined();
    expect(log.head()).toBeGreaterThan(before);
    reader.close();
  });
});

describe('opening', () => {
  it('refuses a second writer and names the first; a reader is welcome', () => {
    const path = somewhere();
    const log = aLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    expect(() => openLog(path)).toThrow(new RegExp(`process ${process.pid}, since`));
    expect(faultOf(() => openLog(path))).toBe('inUse');
    const reader = openToRead(path);
    expect(reader.search({}).total).toBe(1);
    expect(faultOf(() => reader.append(aTurn('1')))).toBe('readOnly');
    reader.close();
  });

  it('takes a log again after its holder has gone', () => {
    const path = somewhere();
    openLog(path).close();
    expect(faultOf(() => aLog(path))).toBe('none');
  });

  it.each([
    [
      'text',
      'this is no database, but it is longer than a header of one hundred bytes would be, so that it is looked at',
      'notOurs',
    ],
    ['another program’s database', null, 'notOurs'],
  ])('refuses %s', (_, text, code) => {
    const path = somewhere();
    if (text === null) meddle(path, 'CREATE TABLE theirs (x)');
    else writeFileSync(path, text);
    const before = readFileSync(path);
    expect(faultOf(() => openLog(path))).toBe(code);
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it('refuses a log of a newer version and leaves it as it is', () => {
    const path = somewhere();
    openLog(path).close();
    meddle(path, `PRAGMA user_version = ${migrations.length + 1}`);
    const before = readFileSync(path);
    expect(faultOf(() => openLog(path))).toBe('newer');
    expect(faultOf(() => openToRead(path))).toBe('newer');
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it('says so where the folder cannot be', () => {
    const file = somewhere('a-file');
    writeFileSync(file, 'x');
    expect(faultOf(() => openLog(`${file}/shop.db`))).toBe('cannotOpen');
    expect(faultOf(() => openToRead(somewhere()))).toBe('missing');
  });
});

describe('migrations', () => {
  it('has a log of each earlier schema to try', () => {
    for (let version = 1; version < migrations.length; version++) {
      expect(existsSync(fixture.replace('schema-1', `schema-${version}`)), `tests/support/logs/schema-${version}.db`).toBe(true);
    }
  });

  it('opens a log of the first schema, keeps a copy of it, and finds everything in it', () => {
    const path = somewhere();
    copyFileSync(fixture, path);
    expect(faultOf(() => openToRead(path))).toBe('older');
    const log = aLog(path);
    expect(existsSync(`${path}.schema-1-1`)).toBe(true);
    expect(log.verify()).toMatchObject({ events: 16, jobs: 2 });
    expect(log.verify().fault).toBeUndefined();
    expect(log.search({ values: [{ field: 'hubFace', value: '579/8' }] }).jobs[0]?.title).toBe('grey stock trailer');
    expect(log.search({ words: ['crack'] }).total).toBe(1);
    expect(log.setting('shop')).toMatchObject({ name: 'Threepenny Bend' });
    expect(log.append(aTurn('1')).seq).toBe(18);
  });

  it('finds the reminders of an older log that nobody has dealt with', () => {
    const path = somewhere();
    copyFileSync(fixture.replace('schema-1', 'schema-2'), path);
    const log = aLog(path);
    const reminders = [{ job: '1', id: 'b', text: 'check the U-bolts', dueAt: '2027-02-25' }];
    expect(log.reminders()).toEqual(reminders);
    log.rebuild();
    expect(log.reminders()).toEqual(reminders);
    log.append(aTurn('1', [{ kind: 'reminderDone', id: 'b' }]));
    expect(log.reminders()).toEqual([]);
  });

  it('finds what an older log did and when', () => {
    const path = somewhere();
    copyFileSync(fixture.replace('schema-1', 'schema-3'), path);
    const done = [
      { step: 'hubBearing/pack@left', at: '2026-01-11T09:00:00.000Z' },
      { step: 'hubBearing/pack@right', at: '2026-01-12T09:00:00.000Z' },
    ];
    const log = aLog(path);
    expect(log.search({ steps: true }).jobs[0]?.done).toEqual(done);
    log.append(aTurn('1', [{ kind: 'stepReopened', step: 'hubBearing/pack@left' }]));
    expect(log.search({ steps: true }).jobs[0]?.done).toEqual(done.slice(1));
    expect(log.search({}).jobs[0]).not.toHaveProperty('done');
  });

  it('leaves the old version when a step breaks off', () => {
    const path = somewhere();
    copyFileSync(fixture, path);
    const db = new Database(path);
    expect(() => migrate(db, 1, [...migrations.slice(0, 1), 'CREATE TABLE halfway (x); SELECT broken FROM nowhere'])).toThrow();
    expect(db.pragma('user_version', { simple: true })).toBe(1);
    expect(db.prepare("SELECT count(*) AS n FROM sqlite_schema WHERE name = 'halfway'").get()).toEqual({ n: 0 });
    db.close();
    expect(aLog(path).verify().fault).toBeUndefined();
  });
});

describe('backup and restore', () => {
  it('copies a log while turns go on, and puts it back with the old one kept', async () => {
    const path = somewhere();
    const log = openLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    for (let i = 0; i < 50; i++) log.append(aTurn('1', [hearsValue(`v${i}`, 'hubFace', '72')]));
    const to = `${path}.backup`;
    const copying = log.backup(to);
    log.append(aTurn('1'));
    const copied = await copying;
    expect(copied.fault).toBeUndefined();
    expect(copied.events).toBeGreaterThanOrEqual(153);
    log.append(aTurn('1'));
    const now = log.verify();
    expect(() => restoreLog(to, path)).toThrow(/using this log/);
    log.close();
    const { verdict, kept } = restoreLog(to, path);
    expect(verdict.head).toBe(copied.head);
    expect(kept && openToRead(kept).verify().head).toBe(now.head);
    const restored = aLog(path);
    expect(restored.verify().head).toBe(copied.head);
    expect(restored.append(aTurn('1')).seq).toBe(copied.events + 2);
  });

  it('puts back a log that was set aside after a crash, with what stood in its write-ahead file', async () => {
    const path = somewhere();
    const log = aLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    const kept = somewhere('kept.db');
    for (const end of ['', '-wal']) copyFileSync(path + end, kept + end);
    expect(statSync(`${kept}-wal`).size).toBeGreaterThan(0);
    const again = somewhere();
    expect(restoreLog(kept, again).verdict.events).toBe(3);
    expect(aLog(again).verify()).toMatchObject({ events: 3, jobs: 1 });
    expect(existsSync(`${again}.coming-wal`)).toBe(false);
  });

  it('does not put back a copy that fails its check', async () => {
    const path = somewhere();
    const log = openLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    const to = `${path}.backup`;
    await log.backup(to);
    const head = log.verify().head;
    log.close();
    meddle(to, "DROP TRIGGER events_unchanged; UPDATE events SET who = 'x' WHERE seq = 2");
    expect(faultOf(() => restoreLog(to, path))).toBe('corrupt');
    expect(aLog(path).verify().head).toBe(head);
    expect(existsSync(`${path}.coming`)).toBe(false);
  });
});

describe('a file that may not grow', () => {
  it('takes whole turns until there is no room, says so, and takes the same turn when there is', () => {
    const db = new Database(somewhere());
    db.pragma('journal_mode = WAL');
    migrate(db, 0);
    db.pragma('max_page_count = 60');
    const store = openStore(db);
    store.append(aTurn(null, [opens('blue trailer')]));
    let turn = aTurn('1');
    let fault = 'none';
    for (let i = 0; fault === 'none' && i < 500; i++) {
      turn = aTurn('1', [{ kind: 'annotated', text: 'long '.repeat(200) }]);
      fault = faultOf(() => store.append(turn));
    }
    expect(fault).toBe('full');
    expect(store.head() % 3).toBe(0);
    expect(store.job('1')?.version).toBe(store.head());
    expect(verifyAll(db, connect).fault).toBeUndefined();
    db.pragma('max_page_count = 100000');
    expect(store.append(turn).seq).toBe(store.head());
    expect(verifyAll(db, connect).fault).toBeUndefined();
    db.close();
  });
});

describe('a file that turns read-only under a running server', () => {
  it('takes no half turn, says so, and takes the same turn when it may be written again', () => {
    const db = new Database(somewhere());
    migrate(db, 0);
    const store = openStore(db);
    store.append(aTurn(null, [opens('blue trailer')]));
    const turn = aTurn('1', [hearsValue('v1', 'hubFace', '72')]);
    db.pragma('query_only = ON');
    expect(faultOf(() => store.append(turn))).toBe('readOnly');
    expect([store.head(), store.job('1')?.values.length]).toEqual([3, 0]);
    db.pragma('query_only = OFF');
    expect(store.append(turn).seq).toBe(6);
    expect(verifyAll(db, connect).fault).toBeUndefined();
    db.close();
  });
});

describe('the write-ahead file', () => {
  it('stays bounded while nobody reads', () => {
    const path = somewhere();
    const log = aLog(path);
    log.append(aTurn(null, [opens('blue trailer')]));
    const note = 'x'.repeat(5000);
    for (let i = 0; i < 150; i++)
      log.together((each) => {
        for (let n = 0; n < 10; n++) each(() => log.append(aTurn('1', [{ kind: 'annotated', text: note }])));
      });
    expect(statSync(path).size).toBeGreaterThan(7_000_000);
    expect(statSync(`${path}-wal`).size).toBeLessThan(9_000_000);
  }, 60_000);
});
