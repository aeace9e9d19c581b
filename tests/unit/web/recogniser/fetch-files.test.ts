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
