// How the server carries many bays, beside bare SQLite doing the same writes, and how it grows with its log.
// npm run -s bench:server -- [--bays 50] [--seconds 15] [--paced SECONDS] [--growth 2000,100000,1000000] [--only bays|growth]
// In parts: --only bays --seconds 60 --paced 600 (the ten minutes of memory), then --only growth --growth 2000,100000,1000000.
// Seconds are for each of two loads: paced (each bay says something every second) and flat out (each as soon as it was answered).
import { closeSync, fsyncSync, mkdtempSync, openSync, readFileSync, rmSync, statSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import Database from 'better-sqlite3';
import { noJob, openLog, openToRead } from '#log';
import { emptyJob, fold, type JobEvent, type JobRecord } from '#log/events';
import type { TurnResponse } from '#wire';
import { knowOf } from '../../server/http/know.ts';
import { loadSpeech } from '../../server/http/load-speech.ts';
import { sheetCsv } from '../../server/http/sheet.ts';
import { createTurns } from '../../server/http/turns.ts';
import { genesis, link } from '../../server/log/chain.ts';
import type { Cell, Db, Statement } from '../../server/log/db.ts';
import { pragmas } from '../../server/log/open.ts';
import { openProjections } from '../../server/log/projections.ts';
import { migrations } from '../../server/log/schema.ts';
import { ended, type Running, startServer } from '../support/process.ts';

const { values: flags } = parseArgs({
  options: {
    bays: { type: 'string' },
    seconds: { type: 'string' },
    paced: { type: 'string' },
    growth: { type: 'string' },
    only: { type: 'string' },
  },
});
const bays = Number(flags.bays ?? 50);
const seconds = Number(flags.seconds ?? 15);
const paces = Number(flags.paced ?? seconds);
const sizes = (flags.growth ?? '2000,100000').split(',').map(Number);
const folder = mkdtempSync(join(tmpdir(), 'axlehand-bench-'));
const sayings = [
  'hub face seventy-two and three eighths',
  'no, seventy-two and a half',
  'spring centre fifty-eight',
  'note left spring cracked at the eye',
  'what fits',
  'strike that',
  'next',
  'what torque for the wheel nuts',
  'yes',
  'done',
];

function spread(times: number[]): string {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) => (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0).toFixed(1);
  return `p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, longest ${at(1)} ms`;
}

function megabytes(pid: number | undefined): number {
  return Math.round(Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024);
}

/** Processor time it has used, in ms; says more than the clock where other programs run beside. */
function processorMs(pid: number | undefined): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  return 10 * (Number(fields[11]) + Number(fields[12]));
}

/** One turn over a bay's own connection, as a telephone would hold it. */
function post(agent: Agent, address: string, turn: object): Promise<{ status: number; body: string }> {
  const text = JSON.stringify(turn);
  const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(text), origin: address };
  return new Promise((resolve, reject) => {
    const sent = request(`${address}/api/turns`, { agent, method: 'POST', headers }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (part) => {
        body += part;
      });
      response.on('end', () => resolve({ status: response.statusCode ?? 0, body }));
    });
    sent.once('error', reject).end(text);
  });
}

interface Load {
  readonly times: number[];
  readonly errors: number;
  readonly took: number;
  /** Resident megabytes of the server, ten times over the load. */
  readonly memory: number[];
}

/** One load on a running server. `pauseMs` between an answer and the next saying of a bay. */
async function load({ address, child }: Running, name: string, pauseMs: number, lasts: number): Promise<Load> {
  const times: number[] = [];
  let errors = 0;
  const started = performance.now();
  const until = started + lasts * 1000;
  const memory: number[] = [];
  const looking = setInterval(() => memory.push(megabytes(child.pid)), lasts * 100);
  await Promise.all(
    Array.from({ length: bays }, async (_, bay) => {
      let job: string | null = null;
      const agent = new Agent({ keepAlive: true, maxSockets: 1 });
      if (pauseMs > 0) await wait((bay * pauseMs) / bays);
      for (let n = 0; performance.now() < until; n++) {
        const text = n % 40 === 0 ? `open a job for trailer ${bay} ${n}` : (sayings[(n + bay) % sayings.length] ?? '');
        const turn = {
          id: `${name}-${bay}-${n}-x`,
          job: n % 40 === 0 ? null : job,
          text,
          heardBy: 'typed',
          heardAt: new Date().toISOString(),
        } as const;
        const from = performance.now();
        const { status, body } = await post(agent, address, turn);
        times.push(performance.now() - from);
        if (status === 200) job = (JSON.parse(body) as TurnResponse).job;
        else errors += 1;
        if (pauseMs > 0) await wait(Math.max(0, pauseMs - (performance.now() - from)));
      }
      agent.destroy();
    }),
  );
  clearInterval(looking);
  return { times, errors, took: (performance.now() - started) / 1000, memory };
}

interface Write {
  readonly sql: string;
  readonly cells: readonly Cell[];
}

/** What the first turns of a log wrote, turn by turn: events, log book, values, words, reminders. */
function writesOf(path: string, most: number): Write[][] {
  const log = openToRead(path);
  const all = log.eventsSince(0, log.head());
  log.close();
  const from = new Database(path, { readonly: true });
  const rows = from.prepare('SELECT * FROM events ORDER BY seq').all() as Record<string, Cell>[];
  from.close();
  const jobs = new Map<string, JobRecord>();
  let now: Write[] = [];
  const projections = openProjections(listing((sql, cells) => void now.push({ sql, cells })));
  const turns = byTurn(all).map((events) => {
    const first = (events[0]?.seq ?? 1) - 1;
    now = rows.slice(first, first + events.length).map((row) => ({ sql: insertEvent, cells: Object.values(row) }));
    const job = events[0]?.job ?? noJob;
    const record = events.reduce(fold, jobs.get(job) ?? emptyJob(job));
    jobs.set(job, record);
    if (job !== noJob) projections.add(record, events);
    return now;
  });
  return turns.slice(0, most);
}

const insertEvent = 'INSERT INTO events VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)';

/** A database that only tells what it is asked to write. */
function listing(tell: (sql: string, cells: readonly Cell[]) => void): Db {
  const nothing = (): never => {
    throw new TypeError('the projections are only written to here');
  };
  const prepare = (sql: string): Statement => ({
    run: (...cells) => {
      tell(sql, cells);
      return { changes: 1 };
    },
    get: nothing,
    all: nothing,
    iterate: nothing,
  });
  return { inTransaction: true, prepare, exec: nothing, pragma: nothing, transaction: nothing };
}

/** The same rows in the same tables, the same pragmas, a transaction a turn, and nothing else. @returns turns a second */
function bare(turns: readonly (readonly Write[])[]): number {
  const path = join(folder, 'bare.db');
  for (const end of ['', '-wal', '-shm']) rmSync(path + end, { force: true });
  const db = new Database(path);
  for (const [name, value] of pragmas) db.pragma(`${name} = ${value}`);
  for (const step of migrations) db.exec(step);
  const statements = new Map(turns.flat().map(({ sql }) => [sql, db.prepare(sql)]));
  const commit = db.transaction((writes: readonly Write[]) => {
    for (const { sql, cells } of writes) statements.get(sql)?.run(...cells);
  });
  const started = performance.now();
  for (const writes of turns) commit.immediate(writes);
  const rate = turns.length / ((performance.now() - started) / 1000);
  db.close();
  return rate;
}

function byTurn(events: readonly JobEvent[]): JobEvent[][] {
  const turns: JobEvent[][] = [];
  for (const event of events) {
    if (turns.at(-1)?.[0]?.turn === event.turn) turns.at(-1)?.push(event);
    else turns.push([event]);
  }
  return turns;
}

async function manyBays(): Promise<void> {
  const db = join(folder, 'bays.db');
  const server = await startServer(db);
  const { pid } = server.child;
  const paced = await load(server, 'paced', 1000, paces);
  console.log(
    `${bays} bays, each a turn a second, ${paces} s: ${paced.times.length} turns, ${spread(paced.times)}, errors ${paced.errors}`,
  );
  const used = processorMs(pid);
  const flat = await load(server, 'flat', 0, seconds);
  const each = (processorMs(pid) - used) / flat.times.length;
  const rate = flat.times.length / flat.took;
  console.log(
    `${bays} bays flat out, ${seconds} s: ${flat.times.length} turns, ${rate.toFixed(0)} turns/s, ${spread(flat.times)}, ${each.toFixed(1)} ms of processor each, errors ${flat.errors}`,
  );
  console.log(`memory of the server, MB: paced ${paced.memory.join(' ')}; flat out ${flat.memory.join(' ')}`);
  server.child.kill('SIGTERM');
  console.log(`stopped with ${await ended(server)}`);
  const turns = writesOf(db, 3000);
  const [slower = 1, faster = 1] = [bare(turns), bare(turns)].sort((a, b) => a - b);
  console.log(
    `bare better-sqlite3, same rows, tables and pragmas, a transaction a turn, twice: ${slower.toFixed(0)} and ${faster.toFixed(0)} turns/s; ` +
      `the server does ${((100 * rate) / faster).toFixed(0)}% of the faster`,
  );
  const log = openToRead(db);
  const { fault, events } = log.verify();
  console.log(`the log: ${events} events, ${fault ? JSON.stringify(fault) : 'good'}, ${(statSync(db).size / 1e6).toFixed(1)} MB`);
  log.close();
}

/** The first jobs of a filled log, in events; those after them have 200 each. */
const lengths = [800, 400, 200] as const;

/** The job that event `seq` belongs to, and how many of it came before. */
function placeOf(seq: number): { readonly job: number; readonly inJob: number } {
  let before = 0;
  for (const [i, length] of lengths.entries()) {
    if (seq <= before + length) return { job: i + 1, inJob: seq - before - 1 };
    before += length;
  }
  const rest = seq - before - 1;
  return { job: lengths.length + 1 + Math.floor(rest / 200), inJob: rest % 200 };
}

/** A log of `size` events, written in bulk. */
function fill(path: string, size: number): void {
  openLog(path).close();
  const db = new Database(path);
  db.pragma('synchronous = OFF');
  const insert = db.prepare('INSERT INTO events VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)');
  let prev = genesis;
  db.transaction(() => {
    for (let seq = 1; seq <= size; seq++) {
      const { job, inJob } = placeOf(seq);
      const at = new Date(Date.UTC(2026, 0, 1) + seq * 1000).toISOString();
      const body = inJob === 0 ? { kind: 'jobOpened', jobKind: 'axleReplacement', title: `trailer ${job}` } : filler(inJob, job);
      const receipt = seq % 3 === 0 ? JSON.stringify({ digest: 'x', first: seq - 2 }) : null;
      const event = {
        seq,
        job,
        turn: `fill-${Math.ceil(seq / 3)}`,
        at,
        who: 'bay 1',
        kind: body.kind,
        body: JSON.stringify(body),
        receipt,
      };
      prev = link(prev, event);
      insert.run(seq, job, event.turn, at, event.who, event.kind, event.body, receipt, prev);
    }
  })();
  db.close();
}

/** What filling left with the operating system would otherwise be written out by the first turns. */
function flush(path: string): void {
  const file = openSync(path, 'r');
  fsyncSync(file);
  closeSync(file);
}

function filler(inJob: number, job: number): { kind: string } & Record<string, unknown> {
  if (inJob % 3 === 1)
    return {
      kind: 'heard',
      text: `hub face seventy-two and ${inJob} of ${job}`,
      heardBy: 'typed',
      intents: [],
      unclaimed: [],
      heardAt: '',
    };
  if (inJob % 3 === 2) return { kind: 'replied', code: 'taken', speak: 'Hub face seventy-two.', show: 'Hub face: 72 in' };
  const value = {
    id: `v${inJob}`,
    field: 'hubFace',
    stage: 'found',
    value: `${60 + (inJob % 30)}`,
    unit: 'in',
    raw: 'hub face',
    heardBy: 'typed',
  };
  return { kind: 'valueHeard', value };
}

async function growth(size: number): Promise<void> {
  const path = join(folder, `grown-${size}.db`);
  fill(path, size);
  const log = openLog(path);
  const rebuilt = timed(() => log.rebuild());
  log.close();
  const opening = timed(() => openLog(path).close());
  flush(path);
  const grown = openLog(path);
  const speech = await loadSpeech();
  const turns = createTurns(grown, speech, () => new Date().toISOString());
  let job: string | null = null;
  const times = Array.from({ length: 200 }, (_, n) => {
    const text = n === 0 ? 'open a job for the last trailer' : (sayings[n % sayings.length] ?? '');
    return timed(() => {
      const done = turns.take({ id: `grown-${n}-xxxx`, job, text, heardBy: 'typed', heardAt: new Date().toISOString() }, 'bay 1');
      if (done.ok) job = done.value.job;
    });
  });
  const sheetOf = (id: string): number =>
    timed(() => {
      const record = grown.job(id);
      if (record) sheetCsv(record, knowOf(grown, speech));
    });
  // A first one apart: it pays for what is made once, not for its job.
  const firstSheet = sheetOf(String(lengths.length + 1));
  const sheets = lengths.map((length, i) => `${length}: ${sheetOf(String(i + 1)).toFixed(1)}`);
  const searches = [
    { words: ['trailer', '1'] },
    { words: ['seventy', 'hub'] },
    { values: [{ field: 'hubFace', value: '72' }] },
    { status: 'open' as const },
  ];
  const search = Math.max(...searches.map((query) => timed(() => grown.search(query))));
  const verify = timed(() => grown.verify());
  grown.close();
  const { job: jobs } = placeOf(size);
  const megabytesOnDisk = (statSync(path).size / 1e6).toFixed(0);
  console.log(
    `${size} events (${jobs} jobs, ${megabytesOnDisk} MB): turn ${spread(times)}; first sheet ${firstSheet.toFixed(0)} ms, then by events of its job ${sheets.join(', ')} ms; ` +
      `slowest search ${search.toFixed(0)} ms; open ${opening.toFixed(0)} ms; verify ${verify.toFixed(0)} ms; rebuild ${rebuilt.toFixed(0)} ms`,
  );
}

function timed(work: () => unknown): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

try {
  if (flags.only !== 'growth') await manyBays();
  if (flags.only !== 'bays') for (const size of sizes) await growth(size);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
