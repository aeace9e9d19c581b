// What the disk may do to the log: a torn write, no room, no permission, another hand on it, a clock that goes back.
import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { type Log, LogFault, openLog, openToRead } from '#log';
import type { ErrorBody } from '#wire';
import { aLog, aTurn, hearsValue, opens, somewhere } from '../support/log.ts';
import { ended, post, startServer } from '../support/process.ts';
import { aServer, spoken } from '../support/server.ts';

function faultOf(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    if (error instanceof LogFault) return error.code;
    throw error;
  }
  return 'none';
}

/** Events of the log as it was when each turn had been acknowledged. */
function written(log: Log, turns: number): number[] {
  const heads = [log.append(aTurn(null, [opens('blue trailer')])).seq];
  for (let i = 1; i < turns; i++) heads.push(log.append(aTurn('1', [hearsValue(`v${i}`, 'hubFace', String(70 + i))])).seq);
  return heads;
}

describe('acknowledged', () => {
  const hasStrace = spawnSync('strace', ['-V']).status === 0;

  it.skipIf(!hasStrace)(
    'means flushed: at least one flush to disk a turn',
    () => {
      const path = somewhere();
      const trace = `${path}.strace`;
      const flushes = (count: number): number => {
        rmSync(path, { force: true });
        const script = new URL('../support/append-many.ts', import.meta.url).pathname;
        const traced = [
          '-f',
          '-e',
          'trace=fsync,fdatasync',
          '-o',
          trace,
          process.execPath,
          '--import',
          'tsx',
          script,
          path,
          String(count),
        ];
        spawnSync('strace', traced, { cwd: new URL('../..', import.meta.url).pathname });
        const log = openLog(path);
        expect(log.head()).toBe(count);
        log.close();
        return readFileSync(trace, 'utf8').match(/(fsync|fdatasync)\(/g)?.length ?? 0;
      };
      const turns = 40;
      expect(flushes(turns) - flushes(0)).toBeGreaterThanOrEqual(turns);
    },
    30_000,
  );
});

describe('a torn write-ahead file', () => {
  const path = somewhere();
  const turns = 30;

  /** The files as a power cut would leave them: never closed. */
  function crashed(): { db: Buffer; wal: Buffer; heads: number[] } {
    const log = openLog(path);
    const heads = written(log, turns);
    const files = { db: readFileSync(path), wal: readFileSync(`${path}-wal`), heads };
    log.close();
    return files;
  }

  it('leaves whole turns and a good chain, wherever it is cut or a byte is flipped', () => {
    const { db, wal, heads } = crashed();
    const at = somewhere();
    const seen = new Set<number>();
    for (let i = 0; i <= 60; i++) {
      const isCut = i % 2 === 0;
      const offset = Math.floor((wal.length * i) / 60);
      const torn = Buffer.from(isCut ? wal.subarray(0, offset) : wal);
      if (!isCut && offset < torn.length) torn[offset] = (torn[offset] ?? 0) ^ 0xff;
      writeFileSync(at, db);
      writeFileSync(`${at}-wal`, torn);
      rmSync(`${at}-shm`, { force: true });
      const log = openLog(at);
      const { fault, events } = log.verify();
      expect(fault, `cut ${offset}`).toBeUndefined();
      if (events > 0) expect(heads).toContain(events);
      expect(log.append(aTurn(null, [opens('after the cut')])).seq).toBe(events + 3);
      log.close();
      seen.add(events);
    }
    expect(seen.size).toBeGreaterThan(10);
  }, 60_000);
});

describe('a full disk', () => {
  const canMount = (() => {
    const folder = mkdtempSync(join(tmpdir(), 'axlehand-mount-'));
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=512k', 'none', folder], { stdio: 'ignore' });
      execFileSync('umount', [folder]);
      return true;
    } catch {
      return false;
    } finally {
      rmSync(folder, { recursive: true });
    }
  })();

  it.skipIf(!canMount)(
    'on a small file system: no half turn, a clear message, and the same turn again once there is room',
    async () => {
      const folder = mkdtempSync(join(tmpdir(), 'axlehand-mount-'));
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'none', folder]);
      try {
        const ballast = join(folder, 'ballast');
        writeFileSync(ballast, Buffer.alloc(200_000));
        const log = openLog(join(folder, 'shop.db'));
        const server = await aServer({}, log);
        const say = (turn: ReturnType<typeof spoken>) => server.call('/api/turns', { method: 'POST', body: turn });
        await say(spoken('open a job for the blue trailer'));
        let last = spoken('note 0', '1');
        let answer = await say(last);
        for (let i = 1; answer.status === 200 && i < 500; i++) {
          last = spoken(`note ${'long '.repeat(80)}${i}`, '1');
          answer = await say(last);
        }
        expect(answer.status).toBe(503);
        expect(((await answer.json()) as ErrorBody).error).toMatchObject({
          code: 'full',
          whatToDo: expect.stringContaining('Free some space'),
        });
        const head = log.head();
        expect(log.verify()).toMatchObject({ events: head });
        expect(log.verify().fault).toBeUndefined();
        expect((await server.call('/api/jobs/1/sheet.csv')).status).toBe(200);
        rmSync(ballast);
        expect((await say(last)).status).toBe(200);
        expect(log.job('1')?.version).toBe(log.head());
        expect(log.head()).toBeGreaterThan(head);
        expect(log.verify().fault).toBeUndefined();
        log.close();
      } finally {
        execFileSync('umount', [folder]);
        rmSync(folder, { recursive: true });
      }
    },
    60_000,
  );

  it.skipIf(!canMount)('on a file system gone read-only: a clear message at start', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'axlehand-mount-'));
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=8m', 'none', folder]);
    try {
      const path = join(folder, 'shop.db');
      openLog(path).close();
      execFileSync('mount', ['-o', 'remount,ro', folder]);
      expect(['readOnly', 'cannotOpen']).toContain(faultOf(() => openLog(path)));
    } finally {
      execFileSync('umount', [folder]);
      rmSync(folder, { recursive: true });
    }
  });
});

describe('another hand on the file', () => {
  it('waits, then says that another program holds the log, and takes the same turn when it is free', () => {
    const path = somewhere();
    const log = aLog(path);
    written(log, 2);
    const other = new Database(path);
    other.exec('BEGIN IMMEDIATE');
    const turn = aTurn('1');
    expect(faultOf(() => log.append(turn))).toBe('busy');
    other.exec('ROLLBACK');
    other.close();
    expect(log.append(turn).seq).toBe(log.head());
    expect(log.job('1')?.version).toBe(log.head());
    expect(log.verify().fault).toBeUndefined();
  });

  it('still reads and exports a damaged log, and adds nothing to it', async () => {
    const path = somewhere();
    const first = openLog(path);
    written(first, 5);
    first.close();
    const db = new Database(path);
    db.exec("DROP TRIGGER events_unchanged; UPDATE events SET body = replace(body, '72', '74') WHERE seq = 8");
    db.close();
    const server = await aServer({}, aLog(path));
    const answer = await server.call('/api/turns', { method: 'POST', body: spoken('hub face 72', '1') });
    expect(answer.status).toBe(503);
    expect(((await answer.json()) as ErrorBody).error).toMatchObject({
      code: 'damaged',
      message: expect.stringContaining('event 8'),
    });
    expect((await server.call('/api/health')).status).toBe(503);
    expect((await server.call('/api/jobs/1/sheet.json')).status).toBe(200);
    expect(server.log.head()).toBe(15);
  });

  it('says so when the file’s pages are damaged', () => {
    const path = somewhere();
    const log = openLog(path);
    written(log, 200);
    log.close();
    const bytes = readFileSync(path);
    const damaged = somewhere();
    let found = 0;
    for (let page = 1; page < bytes.length / 4096; page += 3) {
      const torn = Buffer.from(bytes);
      torn.fill(0xa5, page * 4096, page * 4096 + 4096);
      writeFileSync(damaged, torn);
      for (const end of ['-wal', '-shm', '.lock']) rmSync(damaged + end, { force: true });
      const code = faultOf(() => {
        const opened = openLog(damaged);
        try {
          const refusal = opened.refusal();
          const { fault } = opened.verify();
          if (refusal ?? fault) found += 1;
        } finally {
          opened.close();
        }
      });
      expect(['none', 'corrupt', 'notOurs']).toContain(code);
      if (code !== 'none') found += 1;
    }
    expect(found).toBeGreaterThan(10);
    truncateSync(damaged, 5000);
    expect(['corrupt', 'notOurs']).toContain(faultOf(() => openLog(damaged)));
    copyFileSync(path, damaged);
  });
});

describe('a clock that goes back', () => {
  it('keeps the order and the chain, and verify points it out', () => {
    const path = somewhere();
    const log = aLog(path);
    log.append(aTurn(null, [opens('blue trailer')], { at: '2026-11-25T09:00:00.000Z' }));
    log.append(aTurn('1', [hearsValue('v1', 'hubFace', '72')], { at: '1999-12-31T23:59:00.000Z' }));
    log.append(aTurn('1', [hearsValue('v2', 'hubFace', '73')], { at: '2026-11-25T09:01:00.000Z' }));
    expect(log.events('1').map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(log.verify()).toMatchObject({ clockWentBack: [4] });
    expect(log.verify().fault).toBeUndefined();
    expect(log.job('1')?.values.map(({ id }) => id)).toEqual(['v1', 'v2']);
  });
});

describe('the process', () => {
  it('finishes turns in hand, ends open streams and exits when told to stop', async () => {
    const db = somewhere();
    const server = await startServer(db);
    const stream = await fetch(`${server.address}/api/stream`);
    const turns = Array.from({ length: 10 }, (_, i) => post(server.address, spoken(`note number ${i}`, '1')));
    const answers = Promise.all(turns);
    const news = stream.text();
    await turns[0];
    server.child.kill('SIGTERM');
    expect((await answers).map(({ status }) => status)).toEqual(Array.from({ length: 10 }, () => 200));
    expect(await news).toContain('event: bye');
    expect(await ended(server)).toBe(0);
    const log = openToRead(db);
    expect(log.job('1')?.notes).toHaveLength(10);
    log.close();
  }, 30_000);

  it('says in one line why it cannot start', async () => {
    const db = somewhere();
    const server = await startServer(db);
    const port = new URL(server.address).port;
    const second = (path: string, env: Record<string, string>) =>
      startServer(path, env).then(
        () => 'started',
        (error: Error) => error.message,
      );
    expect(await second(db, {})).toMatch(/ended with 1: axlehand: Another Axlehand is using this log\. .*\n$/);
    expect(await second(somewhere(), { PORT: port })).toMatch(/ended with 1: axlehand: 127\.0\.0\.1:\d+ is in use\. .*PORT.*\n$/);
    expect(await second(somewhere(), { PORT: 'eight' })).toMatch(/ended with 1: axlehand: PORT is no port number/);
    expect(await second(somewhere(), { HOST: '0.0.0.0' })).toMatch(
      /ended with 1: axlehand: plain http is for this computer alone/,
    );
    server.child.kill('SIGTERM');
    expect(await ended(server)).toBe(0);
  }, 60_000);
});
