// The unit that follows a number: longest name first.
import Fraction from 'fraction.js';
import type { UnitId } from '#data';
import { lexicon } from '../lexicon.ts';
import type { Token } from '../tokens.ts';
import { wordList } from '../wordbook.ts';
import { unitWords } from '../words/units.ts';

export interface UnitReading {
  readonly end: number;
  readonly unit: UnitId;
  readonly times: Fraction;
  /** The name as said, to tell "mil" and "foot" apart later. */
  readonly said: string;
}

/** A recogniser may write the prefix by itself: "milli volts". */
const apart = (name: string): string[] => {
  const [, prefix, rest] = /^(milli|centi|kilo|mega|micro)([a-z].*)$/.exec(name) ?? [];
  return prefix && rest && rest !== 's' ? [name, `${prefix} ${rest}`] : [name];
};

const names = lexicon(
  unitWords
    .flatMap(({ unit, said, times }) =>
      said.flatMap(apart).map((name) => [{ unit, times: new Fraction(times ?? '1'), said: name }, [name]] as const),
    )
    .reverse(),
);

/** Every word of a unit's name. */
export const unitVocabulary: ReadonlySet<string> = new Set(
  unitWords.flatMap(({ said }) => said.flatMap((name) => name.split(' '))),
);

/** Letters that are words too: units only when glued to the number, or typed after digits at the end of what was said. */
const shy = wordList(['a', 'in', 'm', 'c', 'f', 'v', 'g', '#', 'um', 'pa', 'ma', 'mo']);

/** The unit at `at`, when the number before it ends there. */
export function readUnit(tokens: readonly Token[], at: number): UnitReading | undefined {
  const found = names.longest(tokens, at);
  if (!found || (found.end === at + 1 && isShy(tokens, at))) return undefined;
  const { unit, times, said } = found.meaning;
  return { end: found.end, unit, times, said };
}

/** Between two amounts: "2.0 g and 7.0 g", "12 v to 14 v". */
const joints = wordList(['and', 'to', 'through', 'or']);

function isShy(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at];
  if (!token || !shy(token) || token.glued) return false;
  const before = tokens[at - 1];
  if (before?.kind !== 'number' && before?.kind !== 'fraction') return true;
  const next = tokens[at + 1];
  if (next?.word === 'of') return token.word === 'in' || token.word === 'a';
  if (token.word === 'in') return names.begins(next);
  return next?.kind === 'word' && !joints(next);
}
