// The words of sums asked mid-job.
import type { Sum } from '../types.ts';

export type Op = Extract<Sum, { readonly b: unknown }>['op'];

/** What may come before a sum. */
export const leadWords =
  "[okay|so|and] [(what|how much|what's|whats) [is|are|was|would be|does|do] [the]|calculate|work out|figure [out]|compute|tell me [what]|give me|convert|turn|change|find|add|subtract|take|divide|multiply|split|how many|sum] [is|the|a]";

/** Between two amounts. */
export const infixWords: readonly (readonly [Op, readonly string[]])[] = [
  ['add', ['plus', '+', 'add']],
  ['subtract', ['minus', 'less', 'take away', '-']],
  ['multiply', ['times', 'multiplied by', '*', '×']],
  ['divide', ['divided by', 'over', '/', '÷']],
];

/** Marks that join a range, a pattern or a fraction as well: they reckon only where something else says that it is a sum. */
export const shySigns: ReadonlySet<string> = new Set(['-', '*', '/']);

/** Before the first amount; `joint` stands before each next one, `swap` when the second is what is taken from, `mean` shares by how many there are. */
export interface Prefix {
  readonly op: Op;
  readonly joint: readonly string[];
  readonly swap?: boolean;
  readonly mean?: boolean;
}

export const prefixWords: readonly (readonly [Prefix, readonly string[]])[] = [
  [{ op: 'subtract', joint: ['and', 'to'] }, ['[the] difference (between|of|from)']],
  [{ op: 'add', joint: ['and', 'plus'] }, ['[the] (sum|total) of']],
  [{ op: 'add', joint: ['and'], mean: true }, ['[the] (average|mean) of']],
  [{ op: 'multiply', joint: ['and'] }, ['[the] product of']],
  [{ op: 'add', joint: ['and', 'to', 'plus'] }, ['add']],
  [{ op: 'subtract', joint: ['from', 'off'], swap: true }, ['(subtract|take)']],
  [{ op: 'divide', joint: ['by', 'into', 'in'] }, ['(divide|split)']],
  [{ op: 'multiply', joint: ['by', 'times'] }, ['multiply']],
];

/** A multiple of what follows. */
export const multipleWords: readonly (readonly [readonly [number, number], readonly string[]])[] = [
  [
    [1, 2],
    ['[a|one] half [of] the', 'half of', 'half my'],
  ],
  [[1, 3], ['(a|one) third of']],
  [[1, 4], ['(a|one) quarter of']],
  [[2, 1], ['(twice|double)']],
];

const tapeParts: readonly (readonly [parts: number, one: string, many: string])[] = [
  [2, 'half', 'halves'],
  [4, 'quarter', 'quarters'],
  [8, 'eighth', 'eighths'],
  [16, 'sixteenth', 'sixteenths'],
  [32, '(thirty second|thirty-second)', '(thirty seconds|thirty-seconds)'],
  [64, '(sixty fourth|sixty-fourth)', '(sixty fourths|sixty-fourths)'],
];

/** What a result is rounded to: "the nearest sixteenth". One part alone is a measure: "change tread to quarter". */
export const nearestWords = tapeParts.map(([parts, one]) => [{ as: 'fraction' as const, parts }, [one]] as const);

/** How a result is to be told, where it is no unit. */
export const mannerWords: readonly (readonly [
  { readonly as: 'decimal' | 'fraction' | 'thousandths'; readonly parts?: number },
  readonly string[],
])[] = [
  [{ as: 'decimal' }, ['[a] decimal', 'decimals']],
  [{ as: 'fraction' }, ['[a] fraction', 'fractions']],
  [{ as: 'thousandths' }, ['thou', 'thous', 'thousandths', 'thousands', 'mils']],
  ...tapeParts.map(([parts, , many]) => [{ as: 'fraction' as const, parts }, [many]] as const),
];

/** Without one of these nothing is computed. */
export const signs: ReadonlySet<string> = new Set(
  'plus + minus less times multiplied divided over difference sum total product average mean add subtract take divide split multiply of half twice double in into to as nearest many much convert turn'.split(
    ' ',
  ),
);
