// Any microphone's rate to 16 kHz: a tone stays the tone, what 16 kHz cannot hold is gone, and blocks leave no seams.
import { describe, expect, it } from 'vitest';
import { resampler } from '../../../../web/recogniser/sound/resample.ts';
import { utterance } from '../../../../web/recogniser/sound/utterance.ts';

const rates = [8000, 11_025, 16_000, 22_050, 44_100, 48_000, 96_000, 192_000];
const tone = (hertz: number, rate: number, seconds: number): Float32Array =>
  Float32Array.from({ length: Math.round(rate * seconds) }, (_, index) => 0.5 * Math.sin((2 * Math.PI * hertz * index) / rate));

function through(rate: number, sound: Float32Array, block: number): Float32Array {
  const { push, flush } = resampler(rate);
  const parts: Float32Array[] = [];
  for (let at = 0; at < sound.length; at += block) parts.push(push(sound.subarray(at, at + block)));
  return Float32Array.from([...parts, flush()].flatMap((part) => [...part]));
}

/** The largest difference, away from both ends. */
function apart(a: Float32Array, b: Float32Array): number {
  let most = 0;
  for (let index = 400; index < Math.min(a.length, b.length) - 400; index += 1)
    most = Math.max(most, Math.abs((a[index] ?? 0) - (b[index] ?? 0)));
  return most;
}

describe('resampling', () => {
  it.each(rates)('keeps a tone of 1 kHz from %i Hz', (rate) => {
    const out = through(rate, tone(1000, rate, 0.5), 128);
    expect(Math.abs(out.length - 8000)).toBeLessThan(40);
    expect(apart(out, tone(1000, 16_000, 0.5))).toBeLessThan(0.01);
  });

  it.each(rates)('gives the same whatever the blocks, from %i Hz', (rate) => {
    const sound = tone(700, rate, 0.2);
    expect(apart(through(rate, sound, 37), through(rate, sound, sound.length))).toBeLessThan(1e-6);
  });

  it.each(rates.filter((rate) => rate > 24_000))('lets nothing above 8 kHz fold down, from %i Hz', (rate) => {
    const out = through(rate, tone(10_500, rate, 0.3), 128);
    expect(apart(out, new Float32Array(out.length))).toBeLessThan(0.02);
  });

  it.each([7999, 192_001, Number.NaN, 0])('refuses %d Hz', (rate) => {
    expect(() => resampler(rate)).toThrow(/8000..192000/);
  });
});

describe('an utterance', () => {
  const rate = 48_000;
  const heard = (...sounds: readonly Float32Array[]) => {
    const one = utterance(rate, 20);
    for (const sound of sounds) one.push(sound);
    one.end();
    return one;
  };

  it('is cut to its speech and a little around it', () => {
    const speech = heard(new Float32Array(rate), tone(300, rate, 1), new Float32Array(2 * rate)).speech();
    if (speech === 'silence') throw new Error('expected speech');
    expect(speech.seconds).toBeGreaterThan(1.3);
    expect(speech.seconds).toBeLessThan(1.7);
  });

  it('of nothing, or of hiss too faint for speech, is silence', () => {
    expect(heard(new Float32Array(rate)).speech()).toBe('silence');
    expect(heard(tone(300, rate, 1).map((sample) => sample / 2000)).speech()).toBe('silence');
    expect(heard().speech()).toBe('silence');
  });

  it('keeps no more than it was given room for', () => {
    const one = utterance(16_000, 1);
    one.push(tone(300, 16_000, 3));
    expect(one.seconds).toBe(1);
  });
});
