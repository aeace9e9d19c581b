// Listening and stopping. A stop lets the turns in hand finish, tells the open streams, then closes what is left.
import { createServer, type Server } from 'node:http';
import { createServer as createSecureServer, type Server as SecureServer } from 'node:https';
import { getRequestListener } from '@hono/node-server';
import type { Hono } from 'hono';

export interface Listening {
  readonly port: number;
  /** Takes a renewed certificate without dropping anyone. */
  renew(tls: Tls): void;
  stop(): Promise<void>;
}

export interface Tls {
  readonly cert: string;
  readonly key: string;
}

const guards = { requestTimeout: 15_000, headersTimeout: 10_000, keepAliveTimeout: 5_000, maxHeaderSize: 16_384 };
const connectionsMost = 512;
const patienceMs = 2_000;

/** @throws the listen error (EADDRINUSE, EACCES) by rejecting */
export function listen(app: Hono, hostname: string, port: number, tls?: Tls): Promise<Listening> {
  const answer = getRequestListener(app.fetch, { overrideGlobalObjects: false });
  const server = tls ? createSecureServer({ ...guards, ...tls, minVersion: 'TLSv1.2' }, answer) : createServer(guards, answer);
  server.maxConnections = connectionsMost;
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, hostname, () => {
      server.off('error', reject);
      const bound = server.address();
      const renew = (next: Tls): void => (server as SecureServer).setSecureContext?.(next);
      resolve({ port: typeof bound === 'object' && bound ? bound.port : port, renew, stop: () => stop(server) });
    });
  });
}

/** Resolves when the last answer is out; connections that do not end are cut after two seconds. */
function stop(server: Server | SecureServer): Promise<void> {
  return new Promise((resolve) => {
    const cut = setTimeout(() => server.closeAllConnections(), patienceMs);
    server.close(() => {
      clearTimeout(cut);
      resolve();
    });
    server.closeIdleConnections();
  });
}
