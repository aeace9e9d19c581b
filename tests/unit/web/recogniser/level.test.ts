import { describe, expect, it } from 'vitest';
import { aboveNoise } from '../../../../web/recogniser/sound/level.ts';

/** A tone from 0.3 to 0.7 s of one second, over noise `db` decibels below it. */
function toneOver(db: number): Float32Array {
  const noise = 10 ** (-db / 20);
  return Float32Array.from({ length: 16_000 }, (_, index) => {
    const speaks = index > 4800 && index < 11_200;
    return 0.1 * ((speaks ? Math.sin(index / 3) : 0) + noise * Math.sin(index ** 2));
  });
}

describe('how far speech stands above the noise', () => {
  it.each([5, 10, 20, 30])('is found to a few decibels at %i', (db) => {
    expect(Math.abs(aboveNoise(toneOver(db)) - db)).toBeLessThan(3);
  });

  it('is nothing in silence, and in no sound at all', () => {
    expect(aboveNoise(new Float32Array(16_000))).toBe(0);
    expect(aboveNoise(new Float32Array(0))).toBe(0);
  });
});
