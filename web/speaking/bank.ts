// The phrase bank: clips by their words, and a text cut into the longest clips that speak it.
import { openParts } from '../shared/parts.ts';
import { decode } from './adpcm.ts';

export const bankRate = 16_000;

/** A clip, or a rest in seconds. */
export type Piece = string | number;

export interface Bank {
  /** What to play, or undefined where a word is not in the bank. */
  plan(text: string): Piece[] | undefined;
  /** What of it can be played. */
  known(text: string): Piece[];
  samples(clip: string): Float32Array;
}

const rests: Readonly<Record<string, number>> = { ',': 0.12, ';': 0.2, ':': 0.18, '.': 0.3, '!': 0.3, '?': 0.3, '\n': 0.3 };
const sameSound: readonly (readonly [RegExp, string])[] = [
  [/\bcenter/g, 'centre'],
  [/\btire/g, 'tyre'],
  [/\b(milli|centi|kilo)?meter(s?)\b/g, '$1metre$2'],
];

/** The one way in which the bank writes words. */
export function bankWords(text: string): string {
  const plain = text.toLowerCase().replace(/’/g, "'").replace(/[-–—]/g, ' ');
  return sameSound.reduce((left, [from, to]) => left.replace(from, to), plain);
}

/** @param file clips joined by `joinParts`, named by their words */
export function openBank(file: ArrayBuffer): Bank {
  const clips = openParts(new Uint8Array(file));
  const longest = Math.max(0, ...[...clips.keys()].map((words) => words.split(' ').length));

  function cut(text: string): { pieces: Piece[]; missing: number } {
    const parts = bankWords(text).match(/[\p{L}\d'/]+|[.,;:!?\n]/gu) ?? [];
    const pieces: Piece[] = [];
    let missing = 0;
    for (let from = 0; from < parts.length; ) {
      const part = parts[from] ?? '';
      const rest = rests[part];
      const size = rest === undefined ? clipAt(parts, from) : 1;
      if (rest !== undefined) pieces.push(rest);
      else if (size > 0) pieces.push(parts.slice(from, from + size).join(' '));
      else missing += 1;
      from += Math.max(1, size);
    }
    return { pieces, missing };
  }

  function clipAt(parts: readonly string[], from: number): number {
    for (let size = Math.min(longest, parts.length - from); size > 0; size -= 1) {
      if (clips.has(parts.slice(from, from + size).join(' '))) return size;
    }
    return 0;
  }

  return {
    plan: (text) => {
      const { pieces, missing } = cut(text);
      return missing === 0 ? pieces : undefined;
    },
    known: (text) => cut(text).pieces,
    samples: (clip) => decode(clips.get(clip) ?? new Uint8Array(0)),
  };
}
