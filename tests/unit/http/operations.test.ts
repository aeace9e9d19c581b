// What the shop sees of a server that runs: metrics, log lines, the backup of the day.
import { mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LogFault, openToRead } from '#log';
import { createLogLine } from '../../../server/http/lines.ts';
import { backupFolder, backupOfTheDay } from '../../../server/http/nightly.ts';
import { aTurn, opens } from '../../support/log.ts';
import { aServer, spoken } from '../../support/server.ts';

describe('metrics', () => {
  it('count requests by status, turns by time, and say how long the log is', async () => {
    const server = await aServer();
    const stream = await server.call('/api/stream');
    await server.call('/api/turns', { method: 'POST', body: spoken('open a job for the zebra trailer') });
    await server.call('/api/turns', { method: 'POST', body: spoken('note a zebra', '1') });
    await server.call('/api/turns', { method: 'POST', body: spoken('note a zebra', '99') });
    const text = await (await server.call('/api/metrics')).text();
    const of = (name: string): number => Number(new RegExp(`^${name} (\\S+)$`, 'm').exec(text)?.[1]);
    expect(of('axlehand_turn_ms_count')).toBe(2);
    expect(of('axlehand_turn_ms_bucket{le="\\+Inf"}')).toBe(2);
    expect(of('axlehand_turn_ms_sum')).toBeGreaterThan(0);
    expect(of('axlehand_requests_total{status="2xx"}')).toBe(3);
    expect(of('axlehand_requests_total{status="4xx"}')).toBe(1);
    expect(of('axlehand_events')).toBe(server.log.head());
    expect(of('axlehand_streams')).toBe(1);
    expect(of('axlehand_taking_turns')).toBe(1);
    expect(of('axlehand_memory_bytes')).toBeGreaterThan(of('axlehand_heap_bytes'));
    expect(of('axlehand_log_bytes')).toBe(statSync(server.log.path).size);
    expect(of('axlehand_log_wal_bytes')).toBe(statSync(`${server.log.path}-wal`).size);
    expect(of('axlehand_disk_free_bytes')).toBeGreaterThan(0);
    expect(text).not.toMatch(/zebra/);
    // Prometheus text format: a name, labels in braces, a number.
    for (const line of text.trimEnd().split('\n')) expect(line).toMatch(/^[a-z_]+(\{[a-z]+="[^"]+"\})? [\d.]+$/);
    await stream.body?.cancel();
  });

  it('know how old the newest backup is, and nothing of one that was never made', async () => {
    let now = new Date().toISOString();
    const server = await aServer({}, undefined, () => now);
    const age = async () => /^axlehand_backup_age_seconds (\d+)$/m.exec(await (await server.call('/api/metrics')).text())?.[1];
    expect(await age()).toBeUndefined();
    await server.log.backup(join(backupFolder(server.log.path), 'axlehand-2026-11-25T02-00-00.db'));
    now = new Date(Date.now() + 7200_000).toISOString();
    expect(Math.abs(Number(await age()) - 7200)).toBeLessThan(60);
  });

  it('tell a sign of life from a log that takes no more', async () => {
    const server = await aServer();
    expect(await (await server.call('/api/health')).json()).toEqual({ ok: true, events: 0 });
    server.log.refuse(new LogFault('damaged', { detail: 'event 8 is missing' }));
    const refused = await server.call('/api/health');
    expect(refused.status).toBe(503);
    expect(await refused.json()).toEqual({
      error: {
        code: 'damaged',
        message: expect.stringContaining('event 8 is missing'),
        whatToDo: expect.stringContaining('verify'),
      },
    });
    expect(await (await server.call('/api/metrics')).text()).toMatch(/^axlehand_taking_turns 0$/m);
  });
});

describe('log lines', () => {
  it('are JSON, one a line, from the level asked for on', () => {
    const written: string[] = [];
    const line = createLogLine(
      'info',
      () => '2026-11-25T09:00:00.000Z',
      (text) => void written.push(text),
    );
    line('debug', 'request', { ms: 1 });
    line('info', 'started', { why: 'two\nlines' });
    line('error', 'request', { status: 500 });
    expect(written).toHaveLength(2);
    for (const text of written) expect(text).not.toContain('\n');
    expect(JSON.parse(written[0] ?? '')).toEqual({
      at: '2026-11-25T09:00:00.000Z',
      level: 'info',
      code: 'started',
      why: 'two\nlines',
    });
  });

  it('name the route by its pattern, and the device by its id', async () => {
    const server = await aServer();
    await server.call('/api/jobs/17/record');
    const { level, code, ...facts } = JSON.parse(server.lines.at(-1) ?? '{}');
    expect([level, code]).toEqual(['debug', 'request']);
    expect(facts).toMatchObject({ method: 'GET', route: '/api/jobs/:id/record', status: 404 });
    expect(facts.request).toMatch(/^[\da-f-]{36}$/);
  });
});

describe('the backup of the day', () => {
  it('is made once a day, good, and thins out the old ones', async () => {
    let now = '2026-11-25T02:00:00.000Z';
    const server = await aServer({}, undefined, () => now);
    server.log.append(aTurn(null, [opens('blue trailer')]));
    const folder = backupFolder(server.log.path);
    mkdirSync(folder);
    for (let day = 10; day < 25; day++) writeFileSync(join(folder, `axlehand-2026-11-${day}T02-00-00.db`), '');
    const copy = (_: string, file: string) => server.log.backup(file);
    const file = await backupOfTheDay(server, copy);
    expect(file).toBe(join(folder, 'axlehand-2026-11-25T02-00-00.db'));
    const made = openToRead(file ?? '');
    expect(made.verify()).toMatchObject({ events: 3, jobs: 1 });
    made.close();
    expect(readdirSync(folder).length).toBeLessThan(12);
    expect(await backupOfTheDay(server, copy)).toBeNull();
    now = '2026-11-26T02:00:00.000Z';
    expect(await backupOfTheDay(server, copy)).not.toBeNull();
  });

  it('that fails is said, leaves nothing under its name, and is tried again', async () => {
    const server = await aServer({}, undefined, () => '2026-11-25T02:00:00.000Z');
    const fails = () => Promise.reject(new Error('no room'));
    expect(await backupOfTheDay(server, fails)).toBeNull();
    expect(server.lines.join()).toContain('backupFailed');
    expect(await backupOfTheDay(server, (_, file) => server.log.backup(file))).not.toBeNull();
  });
});
