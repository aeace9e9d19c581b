// An address that is there, asked in a way that it does not take: 405 with the ways it takes, not 404.
import type { Context, Hono } from 'hono';
import { problem } from './problem.ts';

const methods = ['GET', 'POST', 'PUT', 'DELETE'];

/** Routes of `app` under this address by name; guards and catch-alls do not count. */
function allowedAt(app: Hono, path: string): readonly string[] {
  return methods.filter((method) =>
    app.router.match(method, path)[0].some(([[, route]]) => route.method === method && !route.path.includes('*')),
  );
}

/** There is nothing here, or nothing for this method. */
export function nothingFor(app: Hono): (c: Context) => Response {
  return (c) => {
    const allowed = allowedAt(app, c.req.path);
    if (allowed.length === 0 || allowed.includes(c.req.method)) return problem(c, 'notFound');
    c.header('Allow', allowed.flatMap((method) => (method === 'GET' ? ['GET', 'HEAD'] : [method])).join(', '));
    return problem(c, 'wrongMethod');
  };
}
