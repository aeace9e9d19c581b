import { describe, expect, it } from 'vitest';
import type { Engine } from '../../../../web/recogniser/engine/hear.ts';
import { listen } from '../../../../web/recogniser/listen.ts';
import type { Hearing } from '../../../../web/recogniser/types.ts';

const nothing = { fields: [], yesNo: false };
const rate = 16_000;
const well: Hearing = {
  ok: true,
  text: 'hub face seventy two',
  confidence: 0.9,
  alternatives: [],
  band: 'take',
  kind: 'measure',
};

const tone = (seconds: number, loud: number): Float32Array =>
  Float32Array.from({ length: Math.round(rate * seconds) }, (_, index) => loud * Math.sin(index / 4));

/** Ears that count how often they are asked. */
function ears(): Engine & { readonly asked: number[] } {
  const asked: number[] = [];
  return {
    asked,
    prepare: () => undefined,
    hear: async (samples) => {
      asked.push(samples.length / rate);
      return { hearing: well, candidates: [], fit: 0, lead: 0, alternatives: [] };
    },
  };
}

/** One press: the sound in blocks of 20 ms, then let go. */
function press(engine: Engine, sound: Float32Array, released = true): Promise<Hearing> {
  return new Promise((resolve) => {
    const listening = listen(engine, rate, nothing, resolve);
    const put = (samples: Float32Array): void => {
      for (let at = 0; at < samples.length; at += 320) listening.block(samples.slice(at, at + 320));
    };
    put(sound);
    if (released) listening.release();
    put(new Float32Array(rate * 0.3));
    listening.end();
  });
}

const joined = (...parts: readonly Float32Array[]): Float32Array => Float32Array.from(parts.flatMap((part) => [...part]));

describe('one press', () => {
  it.each<[string, Float32Array, string]>([
    ['silence', new Float32Array(rate), 'silence'],
    ['a tap', tone(0.1, 0.3).slice(0, 800), 'tooShort'],
    ['a voice from across the shop', tone(1, 0.0012), 'tooQuiet'],
    ['two minutes', tone(120, 0.3), 'tooLong'],
  ])('refuses %s with a plain word', async (_, sound, why) => {
    const engine = ears();
    const hearing = why === 'tooShort' ? await short(engine, sound) : await press(engine, sound);
    expect(hearing).toMatchObject({ ok: false, why });
    expect(engine.asked.filter((seconds) => seconds > 21)).toEqual([]);
  });

  it('answers from what was worked out in the pause before the bar was let go', async () => {
    const engine = ears();
    expect(await press(engine, joined(tone(1, 0.3), new Float32Array(rate * 0.5)))).toEqual(well);
    expect(engine.asked).toHaveLength(1);
  });

  it('listens again to all of it when more is said after a pause', async () => {
    const engine = ears();
    expect(await press(engine, joined(tone(1, 0.3), new Float32Array(rate * 0.5), tone(1, 0.3)))).toEqual(well);
    expect(engine.asked.at(-1)).toBeGreaterThan(2.4);
  });

  it('says that it failed when the model does, and never rejects', async () => {
    const engine: Engine = { prepare: () => undefined, hear: () => Promise.reject(new Error('out of memory')) };
    expect(await press(engine, tone(1, 0.3))).toMatchObject({ ok: false, why: 'failed' });
  });
});

/** Let go before a quarter of a second was heard, and nothing after. */
function short(engine: Engine, sound: Float32Array): Promise<Hearing> {
  return new Promise((resolve) => {
    const listening = listen(engine, rate, nothing, resolve);
    listening.block(sound);
    listening.end();
  });
}
