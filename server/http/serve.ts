// Listening and stopping. A stop lets the turns in hand finish, tells the open streams, then closes what is left.
import type { Server } from 'node:http';
import { type ServerType, serve } from '@hono/node-server';
import type { App } from './app.ts';

export interface Listening {
  readonly port: number;
  stop(): Promise<void>;
}

/** @throws the listen error (EADDRINUSE, EACCES) by rejecting */
export function listen({ app, listeners }: App, hostname: string, port: number): Promise<Listening> {
  return new Promise((resolve, reject) => {
    const server: ServerType = serve({ fetch: app.fetch, hostname, port }, (info) => {
      server.off('error', reject);
      resolve({ port: info.port, stop: () => stop(server as Server, listeners.bye) });
    });
    server.once('error', reject);
  });
}

function stop(server: Server, bye: () => void): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    bye();
    server.closeIdleConnections();
    setTimeout(() => server.closeAllConnections(), 2000).unref();
  });
}
