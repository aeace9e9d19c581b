// The app: one set of services, and routes behind a gate for each listener. Nothing here listens; see serve.ts.
import type { IncomingMessage } from 'node:http';
import { Hono } from 'hono';
import type { Log } from '#log';
import type { DueList } from '#wire';
import { nothingFor } from './allowed.ts';
import { atMost } from './body.ts';
import { dueIn } from './due.ts';
import { dressed, type Gate, incomingOf, knownDevice, notTooMuch, rightHost, rightOrigin } from './gate.ts';
import { type LogLine, traced } from './lines.ts';
import { createMetrics, type Metrics } from './metrics.ts';
import { createPairing, type Pairing } from './pairing.ts';
import { problem, problemOf } from './problem.ts';
import { deviceRoutes, joinRoutes } from './routes/devices.ts';
import { jobRoutes } from './routes/jobs.ts';
import { healthRoutes, metricsRoutes } from './routes/operations.ts';
import { settingsRoutes, stockRoutes } from './routes/shop.ts';
import { speechRoutes } from './routes/speech.ts';
import { streamRoutes } from './routes/stream.ts';
import { turnRoutes } from './routes/turns.ts';
import type { Speech } from './speech.ts';
import { servePages } from './static.ts';
import { createListeners, type Listeners } from './stream.ts';
import { createTurns, type Turns } from './turns.ts';

export interface House {
  readonly log: Log;
  readonly speech: Speech;
  /** Absolute path of the built page. */
  readonly pages: string;
  readonly clock: () => string;
  readonly line: LogLine;
}

export interface Services extends House {
  readonly turns: Turns;
  readonly listeners: Listeners;
  readonly pairing: Pairing;
  readonly metrics: Metrics;
}

const jsonMost = 64 * 1024;
const stockMost = 4 * 1024 * 1024;

export function createServices(house: House): Services {
  const { log, speech, clock } = house;
  const listeners = createListeners();
  return {
    ...house,
    listeners,
    turns: createTurns(log, speech, clock, listeners.tell),
    pairing: createPairing(log, clock),
    metrics: createMetrics(),
  };
}

/** Routes behind one gate. The order of the guards is the order of the questions: whose name, whose page, which device, how much. */
export function createApp(services: Services, gate: Gate): Hono {
  const { log, turns, listeners, pairing, metrics, clock, line, pages } = services;
  const app = new Hono();
  app.onError((error, c) => {
    if (isBrokenOff(incomingOf(c))) return problem(c, 'brokenOff');
    line('error', error.name, { request: c.get('requestId'), where: placesOf(error) });
    return problemOf(c, error);
  });
  app.notFound(nothingFor(app));
  app.use(
    dressed,
    traced(line),
    metrics.counted,
    rightHost(gate),
    rightOrigin(gate),
    knownDevice(gate, pairing),
    notTooMuch(gate),
  );
  app.use('/api/stock', atMost(stockMost));
  app.use('/api/:path{(?!stock$).*}', atMost(jsonMost));

  app.route('/api/health', healthRoutes(services));
  app.route('/api/metrics', metricsRoutes(services));
  app.route('/api/settings', settingsRoutes(log, turns));
  app.route('/api/stock', stockRoutes(log));
  app.route('/api/turns', turnRoutes(log, turns));
  app.route('/api/jobs', jobRoutes(log, turns));
  app.get('/api/due', (c) => {
    const at = clock();
    return c.json<DueList>({ at, items: dueIn(log, at) });
  });
  app.route('/api/speech', speechRoutes());
  app.route('/api/stream', streamRoutes(log, listeners));
  app.route('/api/pair', joinRoutes(pairing));
  app.route('/api/devices', deviceRoutes(log, pairing, listeners, clock));
  app.all('/api/*', nothingFor(app));
  servePages(app, pages);
  return app;
}

/** The caller went away in the middle of its request: nobody's fault here. */
function isBrokenOff(incoming: IncomingMessage | undefined): boolean {
  return incoming?.complete === false && incoming.destroyed;
}

/** Where it was thrown, without the message: that may hold what was said. */
function placesOf({ stack = '' }: Error): string {
  const places = [...stack.matchAll(/\/(?:server|intents|data)\/[\w/.-]+:\d+/g)].map(([place]) => place.slice(1));
  return places.slice(0, 5).join(' < ');
}
