// Reads what a request carries and holds it against its schema.
import type { Context, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type * as z from 'zod';
import { problem } from './problem.ts';

/** Refuses bodies of more than so many bytes. A length that is told is kept to by the parser before us, and costs no reading. */
export function atMost(bytes: number): MiddlewareHandler {
  const counting = bodyLimit({ maxSize: bytes, onError: (c) => problem(c, 'tooLarge') });
  return async (c, next) => {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    const told = c.req.header('content-length');
    if (told === undefined || c.req.header('transfer-encoding') !== undefined) return counting(c, next);
    return Number(told) <= bytes ? next() : problem(c, 'tooLarge');
  };
}

type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly response: Response };

/** The JSON body, or the reply that says what is wrong with it. */
export async function readBody<S extends z.ZodType>(c: Context, schema: S): Promise<Read<z.output<S>>> {
  const isJson = /^application\/json\s*(;|$)/i.test(c.req.header('content-type') ?? '');
  if (!isJson) return { ok: false, response: problem(c, 'notJson') };
  const text = await c.req.text();
  try {
    return held(c, schema, JSON.parse(text));
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return { ok: false, response: problem(c, 'notJson') };
  }
}

/** The query string, or the reply that says what is wrong with it. */
export function readQuery<S extends z.ZodType>(c: Context, schema: S): Read<z.output<S>> {
  return held(c, schema, c.req.query());
}

function held<S extends z.ZodType>(c: Context, schema: S, given: unknown): Read<z.output<S>> {
  const result = schema.safeParse(given);
  if (result.success) return { ok: true, value: result.data };
  const faults = result.error.issues.slice(0, 3).map(({ path, message }) => `${path.join('.') || 'body'}: ${message}`);
  return { ok: false, response: problem(c, 'badRequest', faults.join('; ')) };
}
