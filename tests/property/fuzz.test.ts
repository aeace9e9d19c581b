// Every route under requests that are right, nearly right and wild. Only documented statuses, one shape of error, a whole log.
// AXLEHAND_FUZZ sets how many requests; the seed is printed by fast-check when one fails.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import * as z from 'zod';
import { listen } from '../../server/http/serve.ts';
import { aServer, type Call, spoken } from '../support/server.ts';

const requests = Number(process.env.AXLEHAND_FUZZ ?? 2000);
const documented = [200, 400, 401, 403, 404, 405, 409, 413, 421, 422, 429];

/** The one shape of every answer that is no success: what it is called, what is wrong, what would do. */
const errorBody = z.strictObject({
  error: z.strictObject({ code: z.string().regex(/^[a-z]+$/i), message: z.string().min(1), whatToDo: z.string().min(1) }),
});

const words = fc.constantFrom(
  'hub face',
  'seventy-two',
  '58',
  '5 on 4 1/2',
  'no',
  'yes',
  'strike that',
  'next',
  'what fits',
  'note',
  'open a job',
  'close the job',
  'undo',
  'go back',
  'half of 72',
  '72 3/8',
  'remind me to grease in 50 miles',
  'skip it',
  'left',
  'why',
  'does it fit',
);
const text = fc.oneof(
  { weight: 4, arbitrary: fc.array(words, { minLength: 1, maxLength: 6 }).map((some) => some.join(' ')) },
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({ maxLength: 600 }),
);
const id = fc.oneof(
  { weight: 9, arbitrary: fc.uuid() },
  fc.constantFrom('fuzz-id-1', '__proto__', 'constructor', ''),
  fc.string(),
);
const job = fc.oneof(
  { weight: 9, arbitrary: fc.constantFrom('1', '1', '1', '2', null) },
  fc.constantFrom('0', '-1', '99999999999999999999', '__proto__'),
  fc.string(),
);
const version = fc.oneof({ weight: 9, arbitrary: fc.constant('now') }, fc.nat(20), fc.double(), fc.string());

/** The last one comes seldom. */
const mostly = (...some: string[]) =>
  fc.oneof({ weight: 19, arbitrary: fc.constantFrom(...some.slice(0, -1)) }, fc.constant(some.at(-1)));

/** Bodies by address; each field may be right or not. */
const bodies: Record<string, fc.Arbitrary<unknown>> = {
  '/api/turns': fc.record(
    {
      id,
      job,
      text,
      heardBy: mostly('typed', 'builtIn', 'browser', 'ear'),
      confidence: fc.oneof({ weight: 9, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }) }, fc.double()),
      alternatives: fc.oneof({ weight: 9, arbitrary: fc.array(words, { maxLength: 3 }) }, fc.array(text, { maxLength: 10 })),
      heardAt: mostly('2026-11-25T09:00:00.000Z', 'yesterday', '2026-13-45T00:00:00Z'),
    },
    { requiredKeys: ['id', 'text', 'job', 'heardBy', 'heardAt'] },
  ),
  '/api/jobs/:id/desk': fc.record(
    {
      id,
      version,
      action: mostly('correct', 'confirm', 'strike', 'annotate', 'closePoint', 'burn'),
      target: fc.oneof(fc.constant('fuzz-seed-2.v0'), fc.string()),
      value: text,
      reason: text,
    },
    { requiredKeys: ['id', 'version', 'action', 'target', 'reason'] },
  ),
  '/api/settings': fc.record({
    name: text,
    lengthUnit: fc.constantFrom('in', 'mm', 'ell'),
    spelling: fc.constantFrom('british', 'american'),
    sides: fc.record({ left: text, right: text }),
  }),
  '/api/pair': fc.record({ code: text, name: text }),
  '/api/devices/codes': fc.record({ role: fc.constantFrom('desk', 'bay', 'reader', 'king') }),
  '/api/devices/:id': fc.record({ name: text, role: mostly('desk', 'bay', 'reader', 'king') }, { requiredKeys: [] }),
  '/api/stock': fc.oneof(
    text,
    fc
      .array(
        fc.array(text, { maxLength: 4 }).map((cells) => cells.join(',')),
        { maxLength: 4 },
      )
      .map((lines) => `id,title,hubFace\n${lines.join('\n')}`),
  ),
};

const reads = [
  '/api/health',
  '/api/metrics',
  '/api/settings',
  '/api/stock',
  '/api/due',
  '/api/jobs',
  '/api/jobs/:id',
  '/api/jobs/:id/record',
  '/api/jobs/:id/events',
  '/api/jobs/:id/rack',
  '/api/jobs/:id/sheet.csv',
  '/api/jobs/:id/sheet.json',
  '/api/devices',
  '/api/stream',
  '/api/speech',
  '/',
  '/pair',
  '/devices',
  '/rack',
  '/log',
  '/jobs/:id',
  '/jobs/:id/sheet',
  '/nothing/:id',
];
const writes = [
  ['POST', '/api/turns'],
  ['POST', '/api/turns'],
  ['POST', '/api/turns'],
  ['POST', '/api/jobs/:id/desk'],
  ['PUT', '/api/settings'],
  ['POST', '/api/stock'],
  ['POST', '/api/pair'],
  ['POST', '/api/devices/codes'],
  ['PUT', '/api/devices/:id'],
  ['DELETE', '/api/devices/:id'],
] as const;
const routes = fc.oneof(
  fc.constantFrom(...reads).map((address) => ['GET', address] as const),
  fc.constantFrom(...writes),
);

const query = fc.dictionary(
  fc.constantFrom('q', 'status', 'field', 'value', 'from', 'to', 'open', 'limit', 'after', 'job', 'text', 'x'),
  fc.oneof(fc.constantFrom('open', 'hubFace', '72 3/8', '2026-11-25', '1', '-1', '1e99', 'NaN'), fc.string({ unit: 'binary' })),
  { maxKeys: 3 },
);
/** Headers that turn a request away at the gate, now and then. */
const gate = fc.oneof(
  { weight: 40, arbitrary: fc.constant({}) },
  fc.constantFrom<Record<string, string>>(
    { host: 'evil.test' },
    { origin: 'https://evil.test' },
    { 'sec-fetch-site': 'cross-site' },
    { cookie: '__Host-axlehand=forged' },
  ),
);
const odd = fc.constantFrom('text/plain', 'application/json; charset=utf-16', 'x', 'text/csv', 'application/json');

interface Shot {
  readonly path: string;
  readonly call: Call;
}

const shot: fc.Arbitrary<Shot> = routes.chain(([usual, address]) =>
  fc
    .record({
      id: fc.oneof(
        { weight: 5, arbitrary: fc.constantFrom('1', '2', '3') },
        fc.constantFrom('0', '..', '%2e%2e', '1.5'),
        fc.string().map((given) => encodeURIComponent(wellFormed(given))),
      ),
      method: fc.oneof(
        { weight: 9, arbitrary: fc.constant<string>(usual) },
        fc.constantFrom('GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD'),
      ),
      query,
      gate,
      type: fc.oneof({ weight: 9, arbitrary: fc.constant(address === '/api/stock' ? 'text/csv' : 'application/json') }, odd),
      body: fc.oneof(
        { weight: 6, arbitrary: bodies[address] ?? fc.anything() },
        { weight: 1, arbitrary: fc.json() },
        { weight: 1, arbitrary: fc.string({ unit: 'binary' }) },
        { weight: 1, arbitrary: fc.nat(200_000).map((length) => 'x'.repeat(length)) },
      ),
    })
    .map((given) => {
      const asked = new URLSearchParams(Object.entries(given.query).map(([key, value]) => [key, wellFormed(value)]));
      const path = `${address.replace(':id', given.id || 'x')}?${asked}`;
      const hasBody = !['GET', 'HEAD'].includes(given.method);
      const body = typeof given.body === 'string' ? given.body : (JSON.stringify(given.body) ?? '');
      return {
        path,
        call: {
          method: given.method,
          ...(hasBody ? { body: wellFormed(body) } : {}),
          headers: { ...given.gate, ...(hasBody ? { 'content-type': given.type } : {}) },
        },
      };
    }),
);

function faults(lines: readonly string[]): string {
  return lines.filter((line) => line.includes('"where"')).join(' ');
}

/** What a sender of UTF-8 makes of a lone half of a pair. */
function wellFormed(given: string): string {
  return Buffer.from(given).toString();
}

/** `now` stands for the version the job has at that moment. */
function versioned(call: Call, version = 0): Call {
  return typeof call.body === 'string' ? { ...call, body: call.body.replace('"version":"now"', `"version":${version}`) } : call;
}

it('shoots at every route there is', async () => {
  const { app } = await aServer();
  const there = app.routes.filter(({ method, path }) => method !== 'ALL' && !path.includes('*'));
  const shotAt = new Set([...reads.map((path) => `GET ${path}`), ...writes.map((route) => route.join(' '))]);
  const missed = there.map(({ method, path }) => `${method} ${path.replace(/:file\{.*\}/, 'sheet.csv')}`);
  expect(there.length).toBeGreaterThan(20);
  expect(missed.filter((route) => !shotAt.has(route))).toEqual([]);
});

it(
  `answers ${requests} odd requests by the book`,
  async () => {
    let host = '';
    const server = await aServer({ hosts: () => [host] });
    const { port, stop } = await listen(server.app, '127.0.0.1', 0);
    host = `127.0.0.1:${port}`;
    const overWire = (path: string, { method = 'GET', body, headers }: Call): Promise<Response> =>
      fetch(`http://${host}${path}`, {
        method,
        headers: { origin: `http://${host}`, ...headers },
        ...(body === undefined ? {} : { body: String(body) }),
      });
    const own = () => ({ host, origin: `http://${host}` });
    // Every tenth goes through a socket: slower, but it is the real way in.
    const call = (path: string, given: Call): Promise<Response> =>
      n % 10 === 0 ? overWire(path, given) : server.call(path, { ...given, headers: { ...own(), ...given.headers } });
    let n = 0;
    for (const [i, said] of ['open a job for the fuzz trailer', 'hub face 72', 'spring centre 58'].entries()) {
      const body = JSON.stringify(spoken(said, i === 0 ? null : '1', `fuzz-seed-${i + 1}`));
      await call('/api/turns', { method: 'POST', body, headers: { 'content-type': 'application/json' } });
    }
    const statuses = new Map<number, number>();
    const heap: number[] = [];
    await fc.assert(
      fc.asyncProperty(shot, async ({ path, call: given }) => {
        const response = await call(path, versioned(given, server.log.job('1')?.version));
        statuses.set(response.status, (statuses.get(response.status) ?? 0) + 1);
        expect(documented, `${given.method} ${path} ${faults(server.lines)}`).toContain(response.status);
        if (response.headers.get('content-type')?.startsWith('text/event-stream')) return response.body?.cancel();
        const answer = await response.text();
        if (response.status !== 200 && given.method !== 'HEAD') {
          expect(response.headers.get('content-type'), path).toBe('application/json');
          expect(errorBody.safeParse(JSON.parse(answer)).error, answer).toBeUndefined();
          expect(answer).not.toMatch(/\bat .*\.(ts|js):\d/);
        }
        expect(response.headers.has('allow'), path).toBe(response.status === 405);
        n += 1;
        if (n % Math.ceil(requests / 10) === 0) heap.push(Math.round(process.memoryUsage().heapUsed / 1e6));
      }),
      { numRuns: requests, endOnFailure: true },
    );
    expect(server.log.verify().fault).toBeUndefined();
    expect(server.lines.filter((line) => line.includes('"error"'))).toEqual([]);
    await stop();
    console.info(`statuses ${JSON.stringify([...statuses].sort())}; heap MB ${heap.join(' ')}; events ${server.log.head()}`);
  },
  30_000 + requests * 30,
);
