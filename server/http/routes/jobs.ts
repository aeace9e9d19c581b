import { Hono } from 'hono';
import { rackView } from '#dialogue';
import type { Log } from '#log';
import type { EventList, JobList, JobRack, SheetFile } from '#wire';
import { readBody, readQuery } from '../body.ts';
import { only, whoOf } from '../gate.ts';
import { problem } from '../problem.ts';
import { exactly, readSearch } from '../query.ts';
import { after, deskAction, exact, jobQuery, rackQuery } from '../schemas.ts';
import { sheetCsv, sheetFile } from '../sheet.ts';
import type { Turns } from '../turns.ts';

/** The log book, and one job seen four ways. */
export function jobRoutes(log: Log, turns: Turns): Hono {
  const app = new Hono();

  app.get('/', (c) => {
    const query = readQuery(c, jobQuery);
    if (!query.ok) return query.response;
    const { q = '', field, value, ...rest } = exact(query.value);
    const asked = readSearch(q);
    const named = exact({ field, value: value === undefined ? undefined : exactly(value) });
    const values = field || value ? [...asked.values, named] : asked.values;
    return c.json<JobList>(log.search({ ...rest, ...asked, values }));
  });
  app.get('/:id', (c) => {
    const job = log.job(c.req.param('id'));
    return job ? c.json(turns.view(job)) : problem(c, 'noSuchJob');
  });
  app.get('/:id/record', (c) => {
    const job = log.job(c.req.param('id'));
    return job ? c.json(job) : problem(c, 'noSuchJob');
  });
  app.get('/:id/:file{sheet\\.(csv|json)}', (c) => {
    const job = log.job(c.req.param('id'));
    if (!job) return problem(c, 'noSuchJob');
    const isCsv = c.req.param('file').endsWith('csv');
    c.header('Content-Disposition', `attachment; filename="job-${job.id}.${isCsv ? 'csv' : 'json'}"`);
    if (!isCsv) return c.json<SheetFile>(sheetFile(job, turns.know()));
    return c.body(sheetCsv(job, turns.know()), 200, { 'Content-Type': 'text/csv; charset=utf-8' });
  });
  app.get('/:id/rack', (c) => {
    const query = readQuery(c, rackQuery);
    if (!query.ok) return query.response;
    const job = log.job(c.req.param('id'));
    return job ? c.json<JobRack>(rackView(job, turns.know(), query.value.most)) : problem(c, 'noSuchJob');
  });
  app.get('/:id/events', (c) => {
    const query = readQuery(c, after);
    if (!query.ok) return query.response;
    const job = log.job(c.req.param('id'));
    return job ? c.json<EventList>({ events: log.events(job.id, query.value.after) }) : problem(c, 'noSuchJob');
  });
  app.post('/:id/desk', only('desk'), async (c) => {
    const body = await readBody(c, deskAction);
    if (!body.ok) return body.response;
    const done = turns.desk(c.req.param('id'), exact(body.value), whoOf(c));
    return done.ok ? c.json(done.value) : problem(c, done.code, done.detail);
  });
  return app;
}
