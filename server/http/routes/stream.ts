import { Hono } from 'hono';
import { type SSEStreamingApi, streamSSE } from 'hono/streaming';
import type { Log } from '#log';
import type { StreamTurn } from '#wire';
import { callerOf } from '../gate.ts';
import { problem } from '../problem.ts';
import type { Listeners } from '../stream.ts';

const heartbeatMs = 15_000;
const replayPage = 500;
const streamsEach = 8;
const streamsHere = 200;
const messagesWaiting = 1000;

/** Turns as they are committed; after a gap, first the ones missed (Last-Event-ID). */
export function streamRoutes(log: Log, listeners: Listeners): Hono {
  return new Hono().get('/', (c) => {
    const only = c.req.query('job');
    const last = c.req.header('last-event-id') ?? c.req.query('after');
    const device = callerOf(c);
    if (listeners.count(device) >= (c.get('trusted') ? streamsHere : streamsEach)) return problem(c, 'tooMany');
    const from = last === undefined ? log.head() : Number(last) || 0;
    return streamSSE(c, (stream) => listen(stream, { log, listeners, only, from, device }));
  });
}

interface Wish {
  readonly log: Log;
  readonly listeners: Listeners;
  readonly only: string | undefined;
  readonly from: number;
  readonly device: string;
}

async function listen(stream: SSEStreamingApi, { log, listeners, only, from, device }: Wish): Promise<void> {
  const send = async (turn: StreamTurn): Promise<void> => {
    if (only !== undefined && turn.job !== only) return;
    await stream.writeSSE({ event: 'turn', id: String(turn.seq), data: JSON.stringify(turn) });
  };
  let beat: ReturnType<typeof setInterval> | undefined;
  let remove = (): void => {};
  await new Promise<void>((end) => {
    let line = replay(log, from, send);
    let waiting = 0;
    const queue = (work: () => Promise<unknown>): void => {
      // One that does not read is let go; it comes back with Last-Event-ID.
      waiting += 1;
      if (waiting > messagesWaiting) end();
      else
        line = line.then(work).then(() => {
          waiting -= 1;
        }, end);
    };
    beat = setInterval(() => queue(() => stream.write(': here\n\n')), heartbeatMs);
    remove = listeners.add({
      device,
      turn: (turn) => queue(() => send(turn)),
      bye: () => queue(() => stream.writeSSE({ event: 'bye', data: '{}' }).then(end)),
    });
    stream.onAbort(end);
  });
  clearInterval(beat);
  remove();
}

async function replay(log: Log, from: number, send: (turn: StreamTurn) => Promise<void>): Promise<void> {
  for (let seq = from; ; ) {
    const page = log.turnsSince(seq, replayPage);
    for (const turn of page) await send(turn);
    const next = page.at(-1)?.seq;
    if (next === undefined || page.length < replayPage) return;
    seq = next;
  }
}
