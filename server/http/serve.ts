// Listening and stopping. A stop lets the turns in hand finish, tells the open streams, then closes what is left.
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { createServer as createSecureServer, type Server as SecureServer } from 'node:https';
import { setTimeout as wait } from 'node:timers/promises';
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

const guards = {
  requestTimeout: 15_000,
  headersTimeout: 10_000,
  keepAliveTimeout: 5_000,
  connectionsCheckingInterval: 5_000,
  maxHeaderSize: 16_384,
};
const connectionsMost = 512;
const patienceMs = 2_000;
/** Requests that the kernel has taken and we have not read yet still get their answer in this time. */
const drainMs = 500;

/** @throws the listen error (EADDRINUSE, EACCES) by rejecting */
export function listen(app: Hono, hostname: string | undefined, port: number, tls?: Tls): Promise<Listening> {
  const respond = getRequestListener(app.fetch);
  let draining = false;
  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    if (draining) response.setHeader('Connection', 'close');
    void respond(request, response);
  };
  const server = tls ? createSecureServer({ ...guards, ...tls, minVersion: 'TLSv1.2' }, answer) : createServer(guards, answer);
  server.maxConnections = connectionsMost;
  const renew = (next: Tls): void => (server as SecureServer).setSecureContext?.(next);
  const stop = async (): Promise<void> => {
    draining = true;
    await wait(drainMs);
    await closed(server);
  };
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, hostname, () => {
      server.off('error', reject);
      const bound = server.address();
      resolve({ port: typeof bound === 'object' && bound ? bound.port : port, renew, stop });
    });
  });
}

/** Resolves when the last answer is out; connections that do not end are cut after two seconds. */
function closed(server: Server | SecureServer): Promise<void> {
  return new Promise((resolve) => {
    const cut = setTimeout(() => server.closeAllConnections(), patienceMs);
    server.close(() => {
      clearTimeout(cut);
      resolve();
    });
  });
}
