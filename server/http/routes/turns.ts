import { Hono } from 'hono';
import type { Log } from '#log';
import { readBody } from '../body.ts';
import { only, whoOf } from '../gate.ts';
import { problem } from '../problem.ts';
import { exact, turnRequest } from '../schemas.ts';
import type { Turns } from '../turns.ts';
import { createTurnstile } from '../turnstile.ts';

/** One utterance in, the reply out; it is on disk by then. */
export function turnRoutes(log: Log, turns: Turns): Hono {
  const inTurn = createTurnstile(log);
  return new Hono().post('/', only('desk', 'bay'), async (c) => {
    const body = await readBody(c, turnRequest);
    if (!body.ok) return body.response;
    const done = await inTurn(() => turns.take(exact(body.value), whoOf(c)));
    return done.ok ? c.json(done.value) : problem(c, done.code, done.detail);
  });
}
