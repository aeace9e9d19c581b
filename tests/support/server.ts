// The app over a temporary log, called without a network, as a page of its own would call it.

import type { Hono } from 'hono';
import type { Log } from '#log';
import { createApp, createServices } from '../../server/http/app.ts';
import { cookieName, type Gate } from '../../server/http/gate.ts';
import { loadSpeech } from '../../server/http/load-speech.ts';
import { aLog } from './log.ts';

export const ownHost = 'shop.test:8090';
export const ownOrigin = `http://${ownHost}`;
const generous = { perSecond: 1e6, burst: 1e6 };

export interface Call {
  readonly method?: string;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

/** `lines` collects what the server wrote to its own log. */
export async function aServer(
  gate: Partial<Gate> = {},
  log: Log = aLog(),
  clock: () => string = () => new Date().toISOString(),
  pages = new URL('../../var/web', import.meta.url).pathname,
) {
  const lines: string[] = [];
  const line = (level: string, code: string, facts: object = {}) => void lines.push(JSON.stringify({ level, code, ...facts }));
  const services = createServices({
    log,
    speech: await loadSpeech(),
    pages,
    clock,
    line,
  });
  const app = createApp(services, { hosts: () => [ownHost], scheme: 'http', trusted: true, limit: generous, ...gate });
  return { ...services, app, lines, call: (path: string, call: Call = {}) => send(app, path, call) };
}

export type Server = Awaited<ReturnType<typeof aServer>>;

async function send(app: Hono, path: string, { method = 'GET', body, headers = {} }: Call): Promise<Response> {
  const text = body === undefined || typeof body === 'string' ? body : JSON.stringify(body);
  const json = text === undefined ? {} : { 'content-type': 'application/json' };
  return app.request(`http://${ownHost}${path}`, {
    method,
    headers: { host: ownHost, ...(method === 'GET' ? {} : { origin: ownOrigin }), ...json, ...headers },
    ...(text === undefined ? {} : { body: text }),
  });
}

let turns = 0;

/** A turn as the page would send it. */
export function spoken(text: string, job: string | null = null, id = `spoken-${++turns}-${process.pid}`) {
  return { id, job, text, heardBy: 'typed', heardAt: '2026-11-25T09:00:00.000Z' } as const;
}

/** The cookie of a device that joins with this role. */
export async function paired(server: Server, role: 'desk' | 'bay' | 'reader', name = `a ${role}`): Promise<string> {
  const { code } = server.pairing.invite(role);
  const response = await server.call('/api/pair', { method: 'POST', body: { code, name } });
  const cookie = response.headers.get('set-cookie') ?? '';
  return `${cookieName}=${/=([^;]+)/.exec(cookie)?.[1]}`;
}
