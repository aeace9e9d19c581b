// The server is killed at random moments under load. Every acknowledged turn is there once, the chain holds, no turn is half there.
// AXLEHAND_KILLS sets the rounds. This proves nothing about a power cut, where the disk itself must keep its word (synchronous=FULL).
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { openLog } from '#log';
import type { TurnResponse } from '#wire';
import { somewhere } from '../support/log.ts';
import { ended, post, startServer } from '../support/process.ts';
import { spoken } from '../support/server.ts';

const rounds = Number(process.env.AXLEHAND_KILLS ?? 5);
const bays = 4;
const sayings = [
  'hub face 72 3/8',
  'no, 72 1/2',
  'spring centre 58',
  'note left spring cracked',
  'what fits',
  'strike that',
  'next',
  'yes',
  'done',
  'open a job for the next trailer',
];

/** Repeatable: the same seed kills at the same moments. */
function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

it(
  `loses nothing in ${rounds} kills`,
  async () => {
    const db = somewhere();
    const random = dice(7);
    const acknowledged = new Map<string, number>();
    const unanswered = new Map<number, ReturnType<typeof spoken>>();
    const jobs: (string | null)[] = Array.from({ length: bays }, () => null);
    const refused: string[] = [];
    let sent = 0;

    async function bay(address: string, number: number, killed: () => boolean): Promise<void> {
      while (!killed()) {
        const text = sayings[Math.floor(random() * sayings.length)] ?? '';
        const turn =
          unanswered.get(number) ??
          spoken(jobs[number] === null ? 'open a job for a trailer' : text, jobs[number] ?? null, `kill-${number}-${++sent}`);
        unanswered.set(number, turn);
        const answer = await post(address, turn).catch(() => null);
        if (!answer) return;
        if (answer.status !== 200) return void refused.push(JSON.stringify([turn, answer]));
        const { seq, job } = answer.body as TurnResponse;
        acknowledged.set(turn.id, seq);
        unanswered.delete(number);
        jobs[number] = job;
      }
    }

    for (let round = 0; round < rounds; round++) {
      const server = await startServer(db);
      let killed = false;
      const load = Array.from({ length: bays }, (_, number) => bay(server.address, number, () => killed));
      await wait(20 + random() * 400);
      killed = true;
      server.child.kill('SIGKILL');
      await Promise.all([...load, ended(server)]);
    }

    expect(refused).toEqual([]);
    const log = openLog(db);
    const { fault, events } = log.verify();
    expect(fault).toBeUndefined();
    for (const [id, seq] of acknowledged) expect(log.receipt(id)?.seq, id).toBe(seq);
    const all = log.eventsSince(0, events);
    const starts = all.filter(({ body }) => body.kind === 'heard').map(({ turn }) => turn);
    const ends = all.filter(({ body }) => body.kind === 'replied').map(({ turn }) => turn);
    expect(new Set(starts).size).toBe(starts.length);
    expect(ends).toEqual(starts);
    expect(acknowledged.size).toBeGreaterThan(rounds * 2);
    log.close();
    console.info(`${rounds} kills, ${acknowledged.size} acknowledged turns, ${starts.length} in the log, ${events} events`);
  },
  60_000 + rounds * 20_000,
);
