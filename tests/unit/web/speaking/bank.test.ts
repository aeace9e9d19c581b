// The phrase bank: clips packed to a quarter and unpacked again, and texts cut into them.
import { describe, expect, it } from 'vitest';
import { joinParts } from '../../../../web/shared/parts.ts';
import { decode, encode } from '../../../../web/speaking/adpcm.ts';
import { type Bank, openBank } from '../../../../web/speaking/bank.ts';

const chirp = (length: number): Int16Array =>
  Int16Array.from({ length }, (_, index) => 12_000 * Math.sin(index * (0.02 + index / 60_000)) * Math.min(1, index / 400));

/** Decibels of signal over what packing added. */
function fidelity(before: Int16Array, after: Float32Array): number {
  let signal = 0;
  let error = 0;
  before.forEach((sample, index) => {
    signal += sample ** 2;
    error += (sample - (after[index] ?? 0) * 32_768) ** 2;
  });
  return 10 * Math.log10(signal / error);
}

describe('packed sound', () => {
  it('is a quarter of the size and sounds the same', () => {
    const sound = chirp(8000);
    const packed = encode(sound);
    expect(packed.length).toBe(4000);
    expect(fidelity(sound, decode(packed))).toBeGreaterThan(20);
  });

  it('survives full scale, odd lengths and nothing', () => {
    const square = Int16Array.from({ length: 801 }, (_, index) => (index % 100 < 50 ? 32_767 : -32_768));
    for (const sample of decode(encode(square))) expect(Math.abs(sample)).toBeLessThanOrEqual(1);
    expect(encode(square).length).toBe(401);
    expect(decode(encode(new Int16Array(0))).length).toBe(0);
  });
});

function bankOf(...words: readonly string[]): Bank {
  const clips = words.map((text, index) => [text, encode(chirp(100 + 2 * index))] as const);
  return openBank(joinParts(clips).buffer as ArrayBuffer);
}

const bank = bankOf('hub', 'hub face', 'seventy', 'two', 'and three eighths', 'spring centre', 'three', 'and');

describe('a text in clips', () => {
  it('takes the longest clips, and rests at the marks', () => {
    expect(bank.plan('Hub face, seventy-two and three eighths.')).toEqual([
      'hub face',
      0.12,
      'seventy',
      'two',
      'and three eighths',
      0.3,
    ]);
  });

  it('takes the other spelling for the same sound', () => {
    expect(bank.plan('spring center two')).toEqual(['spring centre', 'two']);
  });

  it('has no plan where a word is missing, but knows the rest', () => {
    expect(bank.plan('hub face axolotl two')).toBeUndefined();
    expect(bank.known('hub face axolotl two')).toEqual(['hub face', 'two']);
  });

  it('gives each clip its own samples', () => {
    expect(bank.samples('hub').length).toBe(100);
    expect(bank.samples('hub face').length).toBe(102);
    expect(bank.samples('and').length).toBe(114);
    expect(bank.samples('no such clip').length).toBe(0);
  });
});
