// The server's own log lines: JSON, one a line, ids and codes only. What was said never stands in them.
import type { Context, MiddlewareHandler } from 'hono';
import { matchedRoutes } from 'hono/route';

const levels = ['debug', 'info', 'error'] as const;
type Level = (typeof levels)[number];

export type LogLine = (level: Level, code: string, facts?: Readonly<Record<string, string | number | boolean>>) => void;

/** Lines at or above `least` go to `write`. */
export function createLogLine(least: string, clock: () => string, write: (line: string) => void): LogLine {
  const floor = Math.max(0, levels.indexOf(least as Level));
  return (level, code, facts = {}) => {
    if (levels.indexOf(level) >= floor) write(JSON.stringify({ at: clock(), level, code, ...facts }));
  };
}

/** The pattern that answered: what was asked for by name does not stand in it. */
function routeOf(c: Context): string {
  return matchedRoutes(c).find(({ path }) => !path.includes('*'))?.path ?? '*';
}

/** One line a request, with the route's pattern in the place of its address. */
export function traced(line: LogLine): MiddlewareHandler {
  return async (c, next) => {
    const from = performance.now();
    await next();
    const { status } = c.res;
    const ms = Math.round((performance.now() - from) * 100) / 100;
    const device = c.get('device')?.id;
    const facts = { request: c.get('requestId'), method: c.req.method, route: routeOf(c), status, ms };
    line(status >= 500 ? 'error' : 'debug', 'request', device === undefined ? facts : { ...facts, device });
  };
}
