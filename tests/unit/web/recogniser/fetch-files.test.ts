import { createHash } from 'node:crypto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { fetchChecked } from '../../../../web/recogniser/fetch-files.ts';

const whole = 'the whole model';
const url = `/voice/encoder-${createHash('sha256').update(whole).digest('hex').slice(0, 10)}.onnx`;
const ignore = (): void => undefined;

/** Answers each fetch with the next of these. */
function served(...answers: readonly (string | Response)[]): RequestInit[] {
  const asked: RequestInit[] = [];
  vi.stubGlobal('fetch', async (_: string, how: RequestInit) => {
    const answer = answers[asked.length];
    asked.push(how);
    if (answer === undefined) throw new TypeError('network');
    return typeof answer === 'string' ? new Response(answer) : answer;
  });
  return asked;
}

/** What the device holds. */
function kept(copy: string | undefined): string[] {
  const thrownAway: string[] = [];
  const cache = { delete: async (path: string) => thrownAway.push(path) };
  const match = async () => (copy === undefined ? undefined : new Response(copy));
  vi.stubGlobal('caches', { match, keys: async () => ['voice'], open: async () => cache });
  return thrownAway;
}

afterEach(() => vi.unstubAllGlobals());

describe('the voice files', () => {
  it('come whole and are counted', async () => {
    served(whole);
    let bytes = 0;
    const got = await fetchChecked(url, (more) => {
      bytes += more;
    });
    expect(new TextDecoder().decode(got)).toBe(whole);
    expect(bytes).toBe(whole.length);
  });

  it('are taken from what the device holds, and counted', async () => {
    kept(whole);
    const asked = served();
    let bytes = 0;
    const got = await fetchChecked(url, (more) => {
      bytes += more;
    });
    expect(new TextDecoder().decode(got)).toBe(whole);
    expect([bytes, asked]).toEqual([whole.length, []]);
  });

  it.each([undefined, 'half of it'])('are fetched where the device holds %s', async (copy) => {
    kept(copy);
    served(whole);
    expect(new TextDecoder().decode(await fetchChecked(url, ignore))).toBe(whole);
  });

  it('are thrown away where the device holds them damaged and gives them again', async () => {
    const thrownAway = kept('half of it');
    const asked = served('half of it', whole);
    expect(new TextDecoder().decode(await fetchChecked(url, ignore))).toBe(whole);
    expect([thrownAway, asked[1]]).toEqual([[url], { cache: 'reload' }]);
  });

  it('are fetched past every cache when a copy is damaged', async () => {
    const asked = served('half of it', whole);
    expect(new TextDecoder().decode(await fetchChecked(url, ignore))).toBe(whole);
    expect(asked[1]).toEqual({ cache: 'reload' });
  });

  it.each<[string, readonly (string | Response)[], RegExp]>([
    ['damaged twice', ['half', 'half'], /damaged/],
    ['not there', [new Response('', { status: 404 })], /404/],
    ['without a network', [], /no connection/],
    ['broken off', [new Response(new ReadableStream({ pull: (out) => out.error(new Error('gone')) }))], /broke off/],
  ])('say so in a plain word when %s', async (_, answers, message) => {
    served(...answers);
    await expect(fetchChecked(url, ignore)).rejects.toThrow(message);
  });
});
