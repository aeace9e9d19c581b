// Looking things up in the log book. Only prepared statements and bound values; nothing asked for becomes SQL.
import type { JobSummary, StepDone } from '#log/events';
import { type Cell, type Db, row, rows } from './db.ts';
import type { Found, JobQuery } from './types.ts';
import { wordsTerm } from './words.ts';

type Term = readonly [sql: string, ...cells: Cell[]];

export function search(db: Db, query: JobQuery): Found {
  const terms = termsOf(query);
  const where = terms.length > 0 ? `WHERE ${terms.map(([sql]) => sql).join(' AND ')}` : '';
  const cells = terms.flatMap(([, ...given]) => given);
  const total = row<{ n: number }>(db.prepare(`SELECT count(*) AS n FROM jobs ${where}`), ...cells)?.n ?? 0;
  const found = db.prepare(
    `SELECT *, ${standing('vin')}, ${standing('odometer')}${query.steps ? ofTrailer : ''} FROM jobs ${where} ORDER BY updated_at DESC, id DESC LIMIT ?`,
  );
  return { jobs: rows<JobRow>(found, ...cells, query.limit ?? 50).map(toSummary), total };
}

/** The value of a field that stands in a job, as a column: it ties the jobs of one trailer together. */
function standing(field: 'vin' | 'odometer' | 'axleCount'): string {
  const own = `job = jobs.id AND field = '${field}' AND status IN ('heard', 'confirmed')`;
  return `(SELECT value FROM job_values WHERE ${own} ORDER BY id DESC LIMIT 1) AS ${field}`;
}

/** What was done on the trailer and when, where it is asked for. */
const ofTrailer = `, ${standing('axleCount')},
  (SELECT json_group_array(json_object('step', step, 'at', at)) FROM job_steps WHERE job = jobs.id) AS done`;

function termsOf({ status, from, to, open, words = [], values = [], numbers = [] }: JobQuery): Term[] {
  const terms: Term[] = [...wordsTerm(words)];
  if (status) terms.push(['status = ?', status]);
  if (from) terms.push(['updated_at >= ?', from]);
  // '~' sorts after every time of the day.
  if (to) terms.push(['opened_at < ?', `${to}~`]);
  if (open) terms.push(['open_points > 0']);
  for (const { field, value } of values) terms.push(valueTerm(field, value));
  for (const { value, typed } of numbers) terms.push(either(valueTerm(undefined, value), wordsTerm([typed])));
  return terms;
}

function either(one: Term, others: readonly Term[]): Term {
  const both = others.map(([sql]) => sql).join(' AND ');
  return [`(${one[0]} OR (${both}))`, ...[one, ...others].flatMap(([, ...cells]) => cells)];
}

function valueTerm(field: string | undefined, value: string | undefined): Term {
  const parts: Term[] = [["status IN ('heard', 'confirmed')"]];
  if (field !== undefined) parts.push(['field = ?', field]);
  if (value !== undefined) parts.push(['value = ?', value]);
  const sql = parts.map(([part]) => part).join(' AND ');
  return [`id IN (SELECT job FROM job_values WHERE ${sql})`, ...parts.flatMap(([, ...cells]) => cells)];
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
  readonly vin: string | null;
  readonly odometer: string | null;
  readonly axleCount?: string | null;
  readonly done?: string;
}

function toSummary(found: JobRow): JobSummary {
  const { id, title, kind, status, opened_at, updated_at, open_points, invented, vin, odometer, axleCount, done } = found;
  const times = { openedAt: opened_at, updatedAt: updated_at };
  const trailer = { ...(vin === null ? {} : { vin }), ...(odometer === null ? {} : { odometer }) };
  const work = { ...(axleCount ? { axleCount } : {}), ...(done === undefined ? {} : { done: JSON.parse(done) as StepDone[] }) };
  return {
    id: String(id),
    title,
    kind,
    status,
    ...times,
    openPoints: open_points,
    invented: invented === 1,
    ...trailer,
    ...work,
  };
}
