// Callers that never finish their request do not hold a place for ever, and nobody waits for them.
import { connect } from 'node:net';
import { expect, it } from 'vitest';
import { listen } from '../../server/http/serve.ts';
import { aServer } from '../support/server.ts';

/** Sends a head line by line without end. @returns when the server hangs up, what it said */
function dripping(port: number, host: string): Promise<string> {
  return new Promise((resolve) => {
    let answer = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(`GET / HTTP/1.1\r\nHost: ${host}\r\n`));
    const drip = setInterval(() => socket.write('X: y\r\n'), 1000);
    socket.on('data', (data) => {
      answer += data;
    });
    socket.on('error', () => {});
    socket.on('close', () => {
      clearInterval(drip);
      resolve(answer);
    });
  });
}

it('hangs up on twenty slow heads and answers others meanwhile', async () => {
  let host = '';
  const server = await aServer({ hosts: () => [host] });
  const { port, stop } = await listen(server.app, '127.0.0.1', 0);
  host = `127.0.0.1:${port}`;
  const slow = Array.from({ length: 20 }, () => dripping(port, host));
  expect((await fetch(`http://${host}/api/health`)).status).toBe(200);
  for (const answer of await Promise.all(slow)) expect(answer).toMatch(/^(HTTP\/1\.1 408 |$)/);
  await stop();
}, 60_000);
