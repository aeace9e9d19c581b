// Which bearing it is: by what is still to be read on it, or by what was measured.
import { type BearingRow, bearings } from '#data';
import type { Fraction } from '../../quantity/index.ts';

export type BearingPart = 'cone' | 'cup';

export interface BearingMatch {
  readonly row: BearingRow;
  readonly part: BearingPart;
  /** Characters that differ from what was heard, where a digit may have been misread. */
  readonly off: number;
}

/** Letters and digits alone, capitals; "?" stands for a character that cannot be read. */
export const asStamped = (text: string): string => text.toUpperCase().replace(/[^A-Z0-9?]/g, '');

/** Rows whose cone or cup reads so. Exact readings alone where there is one; else those with one character wrong. */
export function identifyByNumber(text: string): readonly BearingMatch[] {
  const read = asStamped(text);
  if (read.length < 3) return [];
  const all = bearings
    .flatMap((row) => [match(row, 'cone', read), match(row, 'cup', read)])
    .filter((found) => found !== undefined);
  const exact = all.filter(({ off }) => off === 0);
  return exact.length > 0 ? exact : all;
}

function match(row: BearingRow, part: BearingPart, read: string): BearingMatch | undefined {
  const stamped = row[part];
  if (stamped.length !== read.length) return undefined;
  const off = [...stamped].filter((character, at) => read[at] !== '?' && read[at] !== character).length;
  return off <= 1 ? { row, part, off } : undefined;
}

/** The different numbers among matches, best first. */
export const numbersOf = (matches: readonly BearingMatch[]): readonly string[] => [
  ...new Set(matches.map(({ row, part }) => row[part])),
];

export interface BearingSize {
  /** Inches: the journal (cone's bore), the hub's bore (cup's outside), the width of the pair. */
  readonly bore?: Fraction;
  readonly od?: Fraction;
  readonly width?: Fraction;
}

/** Rows whose sizes are all within the tolerance, in, nearest first. A journal runs a shade under its cone's bore. */
export function identifyBySize(size: BearingSize, tolerance: Fraction): readonly BearingRow[] {
  const wanted = Object.entries(size) as [keyof BearingSize, Fraction][];
  if (wanted.length === 0) return [];
  const distance = (row: BearingRow) => wanted.reduce((sum, [key, value]) => sum + value.sub(row[key]).abs().valueOf(), 0);
  return bearings
    .filter((row) => wanted.every(([key, value]) => value.sub(row[key]).abs().lte(tolerance)))
    .sort((a, b) => distance(a) - distance(b));
}
