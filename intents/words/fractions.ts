// Parts of one: how a denominator is heard and spoken.
import { cardinal } from './numbers.ts';

/** Denominators in one word. */
const oneWord: readonly (readonly [number, string])[] = [
  [2, 'half'],
  [3, 'third'],
  [4, 'quarter'],
  [4, 'fourth'],
  [5, 'fifth'],
  [6, 'sixth'],
  [7, 'seventh'],
  [8, 'eighth'],
  [9, 'ninth'],
  [10, 'tenth'],
  [11, 'eleventh'],
  [12, 'twelfth'],
  [13, 'thirteenth'],
  [14, 'fourteenth'],
  [15, 'fifteenth'],
  [16, 'sixteenth'],
  [17, 'seventeenth'],
  [18, 'eighteenth'],
  [19, 'nineteenth'],
  [20, 'twentieth'],
  [30, 'thirtieth'],
  [40, 'fortieth'],
  [50, 'fiftieth'],
  [60, 'sixtieth'],
  [70, 'seventieth'],
  [80, 'eightieth'],
  [90, 'ninetieth'],
  [100, 'hundredth'],
  [1000, 'thousandth'],
  [1_000_000, 'millionth'],
  [1_000_000_000, 'billionth'],
  [1_000_000_000_000, 'trillionth'],
];

const plural = (word: string) => (word === 'half' ? 'halves' : `${word}s`);

/** One-word denominators, singular and plural, and the way a recogniser may clip them. */
export const denominators: ReadonlyMap<string, number> = new Map([
  ...oneWord.flatMap(([size, word]) => [[word, size] as const, [plural(word), size] as const]),
  ['halfs', 2],
  ['eigth', 8],
  ['eigths', 8],
]);

/** Two-word denominators by their tens: "thirty second(s)", "sixty fourth(s)". */
export const unitOrdinals: ReadonlyMap<string, number> = new Map(
  oneWord
    .filter(([size]) => size < 10)
    .filter(([, word]) => word !== 'half' && word !== 'quarter')
    .flatMap(([size, word]) => [[word, size] as const, [plural(word), size] as const])
    .concat([
      ['second', 2],
      ['seconds', 2],
      ['secondth', 2],
      ['secondths', 2],
      ['first', 1],
      ['firsts', 1],
    ]),
);

/** "three eighths", "a half" is "one half"; "thirteen thirty-seconds". */
export function spokenFraction(numerator: bigint, denominator: bigint): string | undefined {
  const name = denominatorName(Number(denominator));
  if (!name) return undefined;
  return numerator === 1n ? `one ${name}` : `${cardinal(numerator)} ${plural(name)}`;
}

function denominatorName(size: number): string | undefined {
  const single = oneWord.find(([value]) => value === size);
  if (single) return single[1];
  const ordinal = [...unitOrdinals].find(([word, value]) => value === size % 10 && word !== 'quarter')?.[0];
  return size > 20 && size < 100 && ordinal ? `${cardinal(size - (size % 10))}-${ordinal}` : undefined;
}
