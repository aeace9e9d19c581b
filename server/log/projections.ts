// The log book: one line a job, made from events alone and thrown away and remade at will.
import type { JobEvent, JobRecord, JobSummary } from '#log/events';
import type { Cell, Db } from './db.ts';
import { row, rows } from './db.ts';
import { openPoints } from './open-points.ts';
import type { Found, JobQuery } from './types.ts';

export interface Projections {
  /** Brings the log book up to date with the events just added to a job. */
  add(job: JobRecord, added: readonly JobEvent[]): void;
  clear(): void;
  search(query: JobQuery): Found;
}

export function openProjections(db: Db): Projections {
  const put = db.prepare(
    `INSERT INTO jobs (id, version, title, kind, status, opened_at, updated_at, open_points, invented)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET version = excluded.version, title = excluded.title, kind = excluded.kind, status = excluded.status,
       opened_at = excluded.opened_at, updated_at = excluded.updated_at, open_points = excluded.open_points, invented = excluded.invented`,
  );
  return {
    add(job, added) {
      const at = added.at(-1)?.at ?? job.openedAt;
      const points = openPoints(job);
      put.run(Number(job.id), job.version, job.title, job.kind, job.status, job.openedAt, at, points, Number(job.invented));
    },
    clear: () => void db.exec('DELETE FROM jobs'),
    search: (query) => search(db, query),
  };
}

function search(db: Db, query: JobQuery): Found {
  const terms: [sql: string, cell: Cell][] = [];
  if (query.status) terms.push(['status = ?', query.status]);
  if (query.from) terms.push(['updated_at >= ?', query.from]);
  if (query.to) terms.push(['opened_at < ?', `${query.to}~`]);
  if (query.open) terms.push(['open_points > ?', 0]);
  if (query.q) terms.push(['instr(lower(title), lower(?)) > 0', query.q]);
  const where = terms.length > 0 ? `WHERE ${terms.map(([sql]) => sql).join(' AND ')}` : '';
  const cells = terms.map(([, cell]) => cell);
  const total = row<{ n: number }>(db.prepare(`SELECT count(*) AS n FROM jobs ${where}`), ...cells)?.n ?? 0;
  const found = db.prepare(`SELECT * FROM jobs ${where} ORDER BY updated_at DESC, id DESC LIMIT ?`);
  return { jobs: rows<JobRow>(found, ...cells, query.limit ?? 50).map(toSummary), total };
}

interface JobRow {
  readonly id: number;
  readonly title: string;
  readonly kind: JobSummary['kind'];
  readonly status: JobSummary['status'];
  readonly opened_at: string;
  readonly updated_at: string;
  readonly open_points: number;
  readonly invented: number;
}

function toSummary({ id, title, kind, status, opened_at, updated_at, open_points, invented }: JobRow): JobSummary {
  const times = { openedAt: opened_at, updatedAt: updated_at };
  return { id: String(id), title, kind, status, ...times, openPoints: open_points, invented: invented === 1 };
}
