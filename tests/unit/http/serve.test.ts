// What comes in over a bare socket, where a client library would tidy it up first.
import { writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import type { ErrorBody } from '#wire';
import { listen } from '../../../server/http/serve.ts';
import { somewhere } from '../../support/log.ts';
import { aServer, type Server } from '../../support/server.ts';

/** Sends `text` as it is. @returns all that came back, '' where the line was cut */
function raw(port: number, text: string): Promise<string> {
  return new Promise((resolve) => {
    let answer = '';
    const socket = connect(port, '127.0.0.1', () => socket.end(text));
    socket.on('data', (data) => {
      answer += data;
    });
    socket.on('close', () => resolve(answer));
    socket.on('error', () => resolve(''));
  });
}

const posted = (host: string): string =>
  `POST /api/turns HTTP/1.1\r\nHost: ${host}\r\nOrigin: http://${host}\r\nContent-Type: application/json\r\n`;

const odd: readonly (readonly [name: string, text: (host: string) => string, status: RegExp])[] = [
  ['a plain request', (host: string) => `GET /api/health HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`, /200/],
  ['an absolute address of ours', (host: string) => `GET http://${host}/api/health HTTP/1.1\r\nHost: ${host}\r\n\r\n`, /421/],
  ['another absolute address', (host: string) => `GET http://evil.test/api/health HTTP/1.1\r\nHost: ${host}\r\n\r\n`, /421/],
  ['two hosts', (host: string) => `GET /api/jobs HTTP/1.1\r\nHost: ${host}\r\nHost: evil.test\r\n\r\n`, /400|421/],
  ['two hosts, ours last', (host: string) => `GET /api/health HTTP/1.1\r\nHost: evil.test\r\nHost: ${host}\r\n\r\n`, /400|421/],
  ['no host', () => 'GET /api/health HTTP/1.1\r\n\r\n', /421/],
  ['a host that is none', () => 'GET /api/health HTTP/1.1\r\nHost: a b/c\r\n\r\n', /400/],
  ['an address that is none', (host: string) => `GET /a\\b HTTP/1.1\r\nHost: ${host}\r\n\r\n`, /400/],
  ['an expectation', (host: string) => `POST /api/turns HTTP/1.1\r\nHost: ${host}\r\nExpect: tea\r\n\r\n`, /403/],
  ['a part that is not there', (host: string) => `GET /bay.html HTTP/1.1\r\nHost: ${host}\r\nRange: bytes=99-9\r\n\r\n`, /416/],
  [
    'two lengths',
    (host: string) => `POST /api/turns HTTP/1.1\r\nHost: ${host}\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\nxx`,
    /400/,
  ],
  ['a body that is told to be too long', (host: string) => `${posted(host)}Content-Length: 999999\r\n\r\n{`, /413/],
  [
    'a body that turns out too long',
    (host: string) => `${posted(host)}Transfer-Encoding: chunked\r\n\r\n11170\r\n${'x'.repeat(70_000)}\r\n0\r\n\r\n`,
    /413/,
  ],
  ['a head too large', (host: string) => `GET /api/health HTTP/1.1\r\nHost: ${host}\r\nX: ${'x'.repeat(20_000)}\r\n\r\n`, /431/],
  ['noise', () => '\u0000\u0001\u0002\r\n\r\n', /400/],
];

/** The body of an answer with its chunks joined. */
function bodyOf(answer: string): string {
  const [head = '', ...rest] = answer.split('\r\n\r\n');
  const body = rest.join('\r\n\r\n');
  return /transfer-encoding: chunked/i.test(head) ? body.replace(/(^|\r\n)[\da-f]+\r\n/gi, '').trim() : body;
}

async function onSocket(use: (port: number, host: string, server: Server) => Promise<void>): Promise<void> {
  let host = '';
  const pages = dirname(somewhere());
  writeFileSync(join(pages, 'bay.html'), 'the bay');
  const server = await aServer({ hosts: () => [host] }, undefined, undefined, pages);
  const { port, stop } = await listen(server.app, '127.0.0.1', 0);
  host = `127.0.0.1:${port}`;
  await use(port, host, server);
  await stop();
}

it('answers odd requests as it should, errors in their one shape', () =>
  onSocket(async (port, host) => {
    for (const [name, text, status] of odd) {
      const answer = await raw(port, text(host));
      expect(answer.split('\r\n')[0], name).toMatch(status);
      if (/ 200 /.test(answer)) continue;
      const { error } = JSON.parse(bodyOf(answer)) as ErrorBody;
      expect([error.code, error.message, error.whatToDo].every(Boolean), name).toBe(true);
    }
  }));

it('takes a caller that goes away in the middle of its request for no fault of its own', () =>
  onSocket(async (port, host, server) => {
    const head = `POST /api/turns HTTP/1.1\r\nHost: ${host}\r\nOrigin: http://${host}\r\nContent-Type: application/json\r\nContent-Length: 500`;
    const socket = connect(port, '127.0.0.1', () =>
      socket.write(`${head}\r\n\r\n{"id":`, () => setTimeout(() => socket.destroy(), 50)),
    );
    for (let i = 0; server.lines.length === 0 && i < 100; i++) await wait(20);
    expect(server.lines.map((line) => JSON.parse(line))).toMatchObject([{ level: 'debug', route: '/api/turns', status: 408 }]);
    expect(server.log.head()).toBe(0);
  }));
