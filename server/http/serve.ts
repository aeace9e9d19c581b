// Listening and stopping. A stop lets the turns in hand finish, tells the open streams, then closes what is left.
import { createServer, type IncomingMessage, type Server, type ServerResponse, STATUS_CODES } from 'node:http';
import { createServer as createSecureServer, type Server as SecureServer } from 'node:https';
import type { Duplex } from 'node:stream';
import { setTimeout as wait } from 'node:timers/promises';
import { getRequestListener, RequestError } from '@hono/node-server';
import type { Hono } from 'hono';
import { type ProblemCode, problemBody } from './problem.ts';

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
  // Ours to refuse, in words.
  requireHostHeader: false,
};
const tlsGuards = { minVersion: 'TLSv1.2', handshakeTimeout: 10_000 } as const;
const connectionsMost = 512;
/** Stands in for a missing Host header, which the gate then refuses. */
const nameless = 'nameless';
const patienceMs = 2_000;
/** Requests that the kernel has taken and we have not read yet still get their answer in this time. */
const drainMs = 500;

/** @throws the listen error (EADDRINUSE, EACCES) by rejecting */
export function listen(app: Hono, hostname: string | undefined, port: number, tls?: Tls): Promise<Listening> {
  const respond = getRequestListener(app.fetch, { hostname: nameless, errorHandler: answerUnread });
  let draining = false;
  /** Answered before they had sent all: what goes wrong after that has had its answer. */
  const early = new WeakSet<Duplex>();
  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    if (draining) response.setHeader('Connection', 'close');
    response.once('finish', () => request.complete || early.add(request.socket));
    void respond(request, response);
  };
  const server = tls ? createSecureServer({ ...guards, ...tls, ...tlsGuards }, answer) : createServer(guards, answer);
  server.maxConnections = connectionsMost;
  server.on('clientError', (error, socket) => (early.has(socket) ? socket.destroy() : answerBroken(error, socket)));
  server.on('checkExpectation', answer);
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

/** Does what comes after listening; where that fails, nothing is left listening. @throws what `next` throws */
export async function alongside<T>(before: Listening, next: () => Promise<T>): Promise<T> {
  try {
    return await next();
  } catch (error) {
    await before.stop();
    throw error;
  }
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

const brokenBy: Readonly<Record<string, ProblemCode>> = {
  HPE_HEADER_OVERFLOW: 'headTooLarge',
  ERR_HTTP_REQUEST_TIMEOUT: 'brokenOff',
};

/** What never became a request is answered in the shape of every other error. */
function answerBroken(error: Error & { code?: string }, socket: Duplex): void {
  if (error.code === 'ECONNRESET' || !socket.writable) return void socket.destroy();
  const { status, body } = problemBody(brokenBy[error.code ?? ''] ?? 'notHttp');
  const text = JSON.stringify(body);
  const head = [
    `HTTP/1.1 ${status} ${STATUS_CODES[status]}`,
    'Content-Type: application/json',
    `Content-Length: ${Buffer.byteLength(text)}`,
    'Cache-Control: no-store',
    'Connection: close',
  ];
  socket.end(`${head.join('\r\n')}\r\n\r\n${text}`);
}

/** An address or a Host header that cannot be read; what the app throws it answers itself. */
function answerUnread(error: unknown): Response {
  const { status, body } = problemBody(error instanceof RequestError ? 'notHttp' : 'internal');
  return Response.json(body, { status });
}
