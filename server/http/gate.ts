// What every request passes before any route: headers, right host, right origin, a known device, not too much of it.
import { randomUUID } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import type { Context, MiddlewareHandler } from 'hono';
import { getCookie } from 'hono/cookie';
import type { Device, Role } from '#log';
import { createLimiter, type Limit } from './limits.ts';
import type { Pairing } from './pairing.ts';
import { problem } from './problem.ts';

/** One listener's rules. */
export interface Gate {
  /** Host headers it answers to, with port. Asked at each request: the port may be known only after listening. */
  readonly hosts: () => readonly string[];
  readonly scheme: 'http' | 'https';
  /** True on the shop computer's own loopback: no pairing asked. */
  readonly trusted: boolean;
  readonly limit: Limit;
}

export const cookieName = '__Host-axlehand';

const policy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "media-src 'self' blob:",
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types axlehand',
].join('; ');

const headers: Readonly<Record<string, string>> = {
  'Content-Security-Policy': policy,
  'Permissions-Policy': 'microphone=(self), screen-wake-lock=(self), camera=(), geolocation=()',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};

/** Request id and security headers, on every reply whatever comes after. */
export const dressed: MiddlewareHandler = async (c, next) => {
  c.set('requestId', randomUUID());
  await next();
  for (const [name, value] of Object.entries(headers)) c.res.headers.set(name, value);
  c.res.headers.set('X-Request-Id', c.get('requestId'));
  if (c.req.path.startsWith('/api/')) c.res.headers.set('Cache-Control', 'no-store');
};

/** Refuses names that are not ours: a page elsewhere that points its own name at this address gets nothing. */
export function rightHost({ hosts }: Gate): MiddlewareHandler {
  return async (c, next) => {
    const target = incomingOf(c)?.url;
    const isOurs = hosts().includes((c.req.header('host') ?? '').toLowerCase());
    return isOurs && (target === undefined || target.startsWith('/')) ? next() : problem(c, 'wrongHost');
  };
}

/** A change must come from our own page: Origin must be there and ours. */
export function rightOrigin({ hosts, scheme }: Gate): MiddlewareHandler {
  return async (c, next) => {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    const origin = c.req.header('origin') ?? '';
    const site = c.req.header('sec-fetch-site');
    const isOurs = hosts().some((host) => origin === `${scheme}://${host}`);
    return isOurs && (site === undefined || site === 'same-origin') ? next() : problem(c, 'wrongOrigin');
  };
}

/** Finds the device behind the cookie; the API asks for one except where a device comes to join. */
export function knownDevice({ trusted }: Gate, pairing: Pairing): MiddlewareHandler {
  return async (c, next) => {
    const token = getCookie(c, cookieName);
    const device = token === undefined ? null : pairing.known(token);
    if (device) c.set('device', device);
    c.set('trusted', trusted);
    const isFree = !c.req.path.startsWith('/api/') || c.req.path === '/api/pair' || c.req.path === '/api/health';
    return trusted || device || isFree ? next() : problem(c, 'unpaired');
  };
}

/** Keeps one caller from crowding out the others. */
export function notTooMuch({ limit }: Gate): MiddlewareHandler {
  const wait = createLimiter(limit);
  return async (c, next) => {
    if (!c.req.path.startsWith('/api/')) return next();
    const seconds = wait(callerOf(c));
    if (seconds === 0) return next();
    c.header('Retry-After', String(seconds));
    return problem(c, 'tooMany');
  };
}

/** The device's id, or the address it calls from. */
export function callerOf(c: Context): string {
  return c.get('device')?.id ?? incomingOf(c)?.socket.remoteAddress ?? 'here';
}

/** The request as it came over a socket; tests may call without one. */
export function incomingOf(c: Context): IncomingMessage | undefined {
  return (c.env as { incoming?: IncomingMessage } | undefined)?.incoming;
}

/** Lets only these roles through; the shop computer's own screen counts as a desk. */
export function only(...roles: readonly Role[]): MiddlewareHandler {
  return async (c, next) => {
    const role = c.get('device')?.role ?? (c.get('trusted') ? 'desk' : 'reader');
    return roles.includes(role) ? next() : problem(c, 'notAllowed');
  };
}

/** Name that goes into the log beside what was said. */
export function whoOf(c: Context): string {
  return c.get('device')?.name ?? 'shop computer';
}

declare module 'hono' {
  interface ContextVariableMap {
    device?: Device;
    trusted: boolean;
    requestId: string;
  }
}
