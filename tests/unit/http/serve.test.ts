// What comes in over a bare socket, where a client library would tidy it up first.
import { connect } from 'node:net';
import { expect, it } from 'vitest';
import { listen } from '../../../server/http/serve.ts';
import { aServer } from '../../support/server.ts';

/** Sends `text` as it is. @returns the status line, or '' where the line was cut */
function raw(port: number, text: string): Promise<string> {
  return new Promise((resolve) => {
    let answer = '';
    const socket = connect(port, '127.0.0.1', () => socket.end(text));
    socket.on('data', (data) => {
      answer += data;
    });
    socket.on('close', () => resolve(answer.split('\r\n')[0] ?? ''));
    socket.on('error', () => resolve(''));
  });
}

const odd: readonly (readonly [name: string, text: (host: string) => string, status: RegExp])[] = [
  ['a plain request', (host: string) => `GET /api/health HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`, /200/],
  ['an absolute address of ours', (host: string) => `GET http://${host}/api/health HTTP/1.1\r\nHost: ${host}\r\n\r\n`, /421/],
  ['another absolute address', (host: string) => `GET http://evil.test/api/health HTTP/1.1\r\nHost: ${host}\r\n\r\n`, /421/],
  ['two hosts', (host: string) => `GET /api/health HTTP/1.1\r\nHost: ${host}\r\nHost: evil.test\r\n\r\n`, /400|421/],
  ['two hosts, ours last', (host: string) => `GET /api/health HTTP/1.1\r\nHost: evil.test\r\nHost: ${host}\r\n\r\n`, /400|421/],
  ['no host', () => 'GET /api/health HTTP/1.1\r\n\r\n', /400|421/],
  [
    'two lengths',
    (host: string) => `POST /api/turns HTTP/1.1\r\nHost: ${host}\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\nxx`,
    /400/,
  ],
  ['a head too large', (host: string) => `GET /api/health HTTP/1.1\r\nHost: ${host}\r\nX: ${'x'.repeat(20_000)}\r\n\r\n`, /431/],
  ['noise', () => '\u0000\u0001\u0002\r\n\r\n', /400/],
];

it('answers odd requests as it should', async () => {
  let host = '';
  const server = await aServer({ hosts: () => [host] });
  const { port, stop } = await listen(server.app, '127.0.0.1', 0);
  host = `127.0.0.1:${port}`;
  for (const [name, text, status] of odd) expect(await raw(port, text(host)), name).toMatch(status);
  await stop();
});
