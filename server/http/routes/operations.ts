import { readdirSync, statfsSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Hono } from 'hono';
import type { Services } from '../app.ts';
import { only } from '../gate.ts';
import { backupFolder } from '../nightly.ts';
import { problemOf } from '../problem.ts';

/** GET /api/health, for whoever watches: 200 while turns are taken, 503 with the reason while they are not. */
export function healthRoutes({ log }: Services): Hono {
  return new Hono().get('/', (c) => {
    const refusal = log.refusal();
    return refusal ? problemOf(c, refusal) : c.json({ ok: true, events: log.head() });
  });
}

/** GET /api/metrics, for a desk: numbers in the text format of Prometheus. */
export function metricsRoutes(services: Services): Hono {
  return new Hono().get('/', only('desk'), (c) => c.text(services.metrics.text(gauges(services))));
}

/** What is true now. A backup that was never made has no age. */
function gauges({ log, listeners, clock }: Services): Readonly<Record<string, number>> {
  const { rss, heapUsed } = process.memoryUsage();
  const { bavail, bsize } = statfsSync(dirname(log.path));
  const backupAt = newestIn(backupFolder(log.path));
  return {
    events: log.head(),
    taking_turns: log.refusal() ? 0 : 1,
    streams: listeners.count(),
    uptime_seconds: Math.round(process.uptime()),
    memory_bytes: rss,
    heap_bytes: heapUsed,
    log_bytes: sizeOf(log.path),
    log_wal_bytes: sizeOf(`${log.path}-wal`),
    disk_free_bytes: bavail * bsize,
    ...(backupAt === null ? {} : { backup_age_seconds: Math.max(0, Math.round((Date.parse(clock()) - backupAt) / 1000)) }),
  };
}

const sizeOf = (path: string): number => statSync(path, { throwIfNoEntry: false })?.size ?? 0;

/** When the newest backup of a folder was made, in ms; null where there is none. */
function newestIn(folder: string): number | null {
  if (!statSync(folder, { throwIfNoEntry: false })) return null;
  const times = readdirSync(folder)
    .filter((name) => name.endsWith('.db'))
    .map((name) => statSync(join(folder, name), { throwIfNoEntry: false })?.mtimeMs ?? 0);
  return times.length === 0 ? null : Math.max(...times);
}
