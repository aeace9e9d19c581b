// The app: routes on top of the log and the turn line. Nothing here listens; see serve.ts.
import { Hono } from 'hono';
import type { Log } from '#log';
import { problem, problemOf } from './problem.ts';
import { jobRoutes } from './routes/jobs.ts';
import { streamRoutes } from './routes/stream.ts';
import { turnRoutes } from './routes/turns.ts';
import type { Speech } from './speech.ts';
import { servePages } from './static.ts';
import { createListeners, type Listeners } from './stream.ts';
import { createTurns, plainShop, type Turns } from './turns.ts';

export interface House {
  readonly log: Log;
  readonly speech: Speech;
  /** Absolute path of the built page. */
  readonly pages: string;
  readonly clock: () => string;
}

export interface App {
  readonly app: Hono;
  readonly turns: Turns;
  readonly listeners: Listeners;
}

export function createApp({ log, speech, pages, clock }: House): App {
  const app = new Hono();
  const listeners = createListeners();
  const turns = createTurns(log, speech, clock, listeners.tell);
  app.onError((error, c) => problemOf(c, error));
  app.notFound((c) => problem(c, 'notFound'));
  app.get('/api/health', (c) => c.json({ ok: log.refusal() === null, events: log.head() }));
  app.get('/api/settings', (c) => c.json(log.setting('shop') ?? plainShop));
  app.route('/api/turns', turnRoutes(turns));
  app.route('/api/jobs', jobRoutes(log, turns, speech));
  app.route('/api/stream', streamRoutes(log, listeners));
  app.all('/api/*', (c) => problem(c, 'notFound'));
  servePages(app, pages);
  return { app, turns, listeners };
}
