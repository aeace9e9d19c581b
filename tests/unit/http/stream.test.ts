import { describe, expect, it } from 'vitest';
import type { StreamTurn } from '#wire';
import { listen } from '../../../server/http/serve.ts';
import { aTurn, opens } from '../../support/log.ts';
import { aServer, type Server, spoken } from '../../support/server.ts';

/** Turns read from a stream until `enough` of them came; then the line is cut. */
async function read(response: Response, enough: number): Promise<{ turns: StreamTurn[]; last: string }> {
  const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader();
  let text = '';
  const found = () => [...text.matchAll(/event: turn\ndata: (.*)\nid: (\d+)\n\n/g)];
  while (reader && found().length < enough) {
    const { value, done } = await reader.read();
    if (done) break;
    text += value;
  }
  await reader?.cancel();
  const turns = found().slice(0, enough);
  return { turns: turns.map(([, data]) => JSON.parse(data ?? '')), last: turns.at(-1)?.[2] ?? '' };
}

const say = (server: Server, text: string, job: string | null) =>
  server.call('/api/turns', { method: 'POST', body: spoken(text, job) });

describe('the stream', () => {
  it('tells of each turn after it is on disk', async () => {
    const server = await aServer();
    const stream = await server.call('/api/stream');
    expect(stream.headers.get('content-type')).toContain('text/event-stream');
    await say(server, 'open a job for the blue trailer', null);
    await say(server, 'note it is blue', '1');
    const { turns } = await read(stream, 2);
    expect(turns.map(({ job, seq }) => [job, seq])).toEqual([
      ['1', server.log.eventsSince(0, 99).findLast(({ turn }) => turn === turns[0]?.turn)?.seq],
      ['1', server.log.head()],
    ]);
  });

  it('misses nothing and tells nothing twice through 30 cuts', async () => {
    const server = await aServer();
    await say(server, 'open a job for the blue trailer', null);
    const told: number[] = [];
    let last = String(server.log.head());
    for (let i = 0; i < 30; i++) {
      await say(server, `note number ${i}`, '1');
      if (i % 3 === 0) continue;
      const stream = await server.call('/api/stream', { headers: { 'last-event-id': last } });
      const part = await read(stream, i % 3 === 1 && i > 0 ? 2 : 1);
      told.push(...part.turns.map(({ seq }) => seq));
      last = part.last;
    }
    const ends = server.log.events('1').filter((event, i, all) => all[i + 1]?.turn !== event.turn);
    expect(told).toEqual(ends.map(({ seq }) => seq).slice(1, told.length + 1));
    expect(told.length).toBe(30);
  });

  it('tells a long past whole', async () => {
    const server = await aServer();
    server.log.append(aTurn(null, [opens('blue trailer')]));
    server.log.together((each) => {
      for (let i = 0; i < 600; i++) each(() => server.log.append(aTurn('1')));
    });
    const { turns } = await read(await server.call('/api/stream?after=0'), 601);
    expect(turns.map(({ seq }) => seq)).toEqual([3, ...Array.from({ length: 600 }, (_, i) => 5 + 2 * i)]);
  }, 20_000);

  it('keeps to one job when asked to', async () => {
    const server = await aServer();
    await say(server, 'open a job for the blue trailer', null);
    await say(server, 'open a job for the red trailer', null);
    const stream = await server.call('/api/stream?job=2&after=0');
    const { turns } = await read(stream, 1);
    expect(turns[0]?.job).toBe('2');
  });

  it('allows a device only so many, and forgets those that went', async () => {
    let host = '';
    const server = await aServer({ trusted: false, hosts: () => [host] });
    const { port, stop } = await listen(server.app, '127.0.0.1', 0);
    host = `127.0.0.1:${port}`;
    const { token } = server.pairing.invite('bay');
    const joined = server.pairing.join(token, 'bay 1');
    if (typeof joined === 'string') throw new TypeError(joined);
    const cookie = `__Host-axlehand=${joined.token}`;
    const open = () => {
      const cut = new AbortController();
      return fetch(`http://${host}/api/stream`, { headers: { cookie }, signal: cut.signal }).then((response) => ({
        response,
        cut,
      }));
    };
    const streams = await Promise.all(Array.from({ length: 8 }, open));
    expect((await open()).response.status).toBe(429);
    for (const { cut } of streams) cut.abort();
    for (let i = 0; server.listeners.count() > 0 && i < 100; i++) await new Promise((next) => setTimeout(next, 20));
    expect(server.listeners.count()).toBe(0);
    server.listeners.bye();
    await stop();
  });
});
