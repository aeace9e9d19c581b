// The unit that follows a number: longest name first.
import Fraction from 'fraction.js';
import type { UnitId } from '#data';
import type { Token } from '../tokens.ts';
import { unitWords } from '../words/units.ts';

export interface UnitReading {
  readonly end: number;
  readonly unit: UnitId;
  readonly times: Fraction;
  /** The name as said, to tell "mil" and "foot" apart later. */
  readonly said: string;
}

interface Node {
  readonly next: Map<string, Node>;
  unit?: Omit<UnitReading, 'end'>;
}

/** A recogniser may write the prefix by itself: "milli volts". */
const apart = (name: string): string[] => {
  const [, prefix, rest] = /^(milli|centi|kilo|mega|micro)([a-z].*)$/.exec(name) ?? [];
  return prefix && rest && rest !== 's' ? [name, `${prefix} ${rest}`] : [name];
};

const root: Node = { next: new Map() };
for (const { unit, said, times } of unitWords) {
  for (const name of said.flatMap(apart)) {
    let node = root;
    for (const word of name.split(' ')) {
      const next: Node = node.next.get(word) ?? { next: new Map() };
      node.next.set(word, next);
      node = next;
    }
    node.unit = { unit, times: new Fraction(times ?? '1'), said: name };
  }
}

/** Every word of a unit's name. */
export const unitVocabulary: ReadonlySet<string> = new Set(
  unitWords.flatMap(({ said }) => said.flatMap((name) => name.split(' '))),
);

/** Letters that are words too: units only when glued to the number, or typed after digits at the end of what was said. */
const shy: ReadonlySet<string> = new Set(['a', 'in', 'm', 'c', 'f', 'v', 'g', '#', 'um', 'pa', 'ma', 'mo']);

/** The unit at `at`, when the number before it ends there. */
export function readUnit(tokens: readonly Token[], at: number): UnitReading | undefined {
  let node: Node | undefined = root;
  let best: UnitReading | undefined;
  for (let position = at; position < tokens.length; position += 1) {
    node = node.next.get(tokens[position]?.word ?? '');
    if (!node) break;
    if (node.unit && !(position === at && isShy(tokens, at))) best = { ...node.unit, end: position + 1 };
  }
  return best;
}

/** Between two amounts: "2.0 g and 7.0 g", "12 v to 14 v". */
const joints: ReadonlySet<string> = new Set(['and', 'to', 'through', 'or']);

function isShy(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at];
  if (!token || !shy.has(token.word) || token.glued) return false;
  const before = tokens[at - 1];
  if (before?.kind !== 'number' && before?.kind !== 'fraction') return true;
  const next = tokens[at + 1];
  if (next?.word === 'of') return token.word === 'in' || token.word === 'a';
  if (token.word === 'in') return next !== undefined && root.next.has(next.word);
  return next?.kind === 'word' && !joints.has(next.word);
}
