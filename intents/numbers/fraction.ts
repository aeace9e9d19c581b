// Parts of one as spoken and typed: "three eighths", "a half", "thirteen thirty-seconds", "5/16".

import { lexicon } from '../lexicon.ts';
import { remembered } from '../memo.ts';
import type { Token } from '../tokens.ts';
import { wordList, wordTable } from '../wordbook.ts';
import { denominators, unitOrdinals } from '../words/fractions.ts';
import { classOf } from './classes.ts';
import { readWholes } from './whole.ts';

export interface Part {
  readonly end: number;
  readonly numerator: number;
  readonly denominator: number;
}

/** Every way to read a fraction that begins at `at`, shortest first. */
export const readParts: (tokens: readonly Token[], at: number) => readonly Part[] = remembered(partsAt);

const none: readonly Part[] = [];

/** Words that stand below the line, or say that the next number does. */
const isBelow = wordList([...denominators.keys(), ...unitOrdinals.keys(), 'over', 'out', '/']);

/** Without one there is no part to look for; asked once of a list. */
const anyBelow = remembered((tokens) => tokens.some(isBelow));

function partsAt(tokens: readonly Token[], at: number): readonly Part[] {
  const first = tokens[at];
  if (!first) return none;
  if (first.kind === 'fraction') return vulgarPart(tokens, at, first.word);
  if (!anyBelow(tokens, 0)) return none;
  const typed = typedSlash(tokens, at);
  if (typed) return [typed];
  const found: Part[] = [];
  for (const { end, numerator, run } of numerators(tokens, at)) {
    for (const { end: last, denominator } of denominatorsAt(tokens, end)) {
      const usual = run ? denominator >= 100 && denominator !== tenThousand : denominator !== tenThousand || numerator < 100;
      if (denominator > 1 && usual) found.push({ end: last, numerator, denominator });
    }
  }
  return found.length > 1 ? found.sort((a, b) => a.end - b.end) : found;
}

/** "five ten thousandths" is half a thou; "one hundred ten thousandths" is a hundred and ten of them. */
const tenThousand = 10_000;

/** "⅜" by itself, "⅟" over the number that follows it. */
function vulgarPart(tokens: readonly Token[], at: number, text: string): Part[] {
  const [numerator = 0, under] = text.split('/').map(Number);
  if (under) return [{ end: at + 1, numerator, denominator: under }];
  const below = tokens[at + 1];
  const denominator = below?.glued && below.kind === 'number' ? Number(below.word) : 0;
  return Number.isInteger(denominator) && denominator > 0 ? [{ end: at + 2, numerator, denominator }] : [];
}

function typedSlash(tokens: readonly Token[], at: number): Part | undefined {
  const [top, slash, bottom] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  if (top?.kind !== 'number') return undefined;
  const over = slash?.word === '/' || slash?.word === 'over';
  if (!over || bottom?.kind !== 'number') return undefined;
  if (!/^\d+$/.test(top.word) || !/^0*[1-9]\d*$/.test(bottom.word)) return undefined;
  // "25580/25520" are a cone and its cup.
  if (top.word.length > 3 && bottom.word.length > 3) return undefined;
  return { end: at + 3, numerator: Number(top.word), denominator: Number(bottom.word) };
}

/** What may stand above the line: a whole number, "a", or nothing before "half" and "quarter". */
function numerators(tokens: readonly Token[], at: number): { end: number; numerator: number; run: boolean }[] {
  const found = readWholes(tokens, at).map(({ end, value, form }) => ({ end, numerator: value, run: form === 'run' }));
  if (classOf(tokens[at])?.is === 'article') found.push({ end: at + 1, numerator: 1, run: false });
  if (tokens[at]?.word === 'half' || tokens[at]?.word === 'quarter') found.push({ end: at, numerator: 1, run: false });
  return found;
}

const inOneWord = wordTable(denominators);
const inTwoWords = wordTable(unitOrdinals);

function denominatorsAt(tokens: readonly Token[], at: number): { end: number; denominator: number }[] {
  const start = at;
  const found: { end: number; denominator: number }[] = [];
  const single = inOneWord(tokens[start]);
  if (single) found.push({ end: start + 1, denominator: single });
  const ten = classOf(tokens[start]);
  const next = start + 1;
  const word = tokens[next]?.word ?? '';
  const ordinal = ten?.is === 'tens' ? inTwoWords(tokens[next]) : undefined;
  if (ten?.is === 'tens' && ordinal) found.push({ end: next + 1, denominator: ten.value + ordinal });
  const tenThousandths = tokens[start]?.word === 'ten' && (word === 'thousandths' || word === 'thousandth');
  if (tenThousandths) found.push({ end: next + 1, denominator: tenThousand });
  const over = overs.longest(tokens, start);
  return over ? overWhole(tokens, over.end) : found;
}

const overs = lexicon([['over' as const, ['over', 'out of', '/']]]);

function overWhole(tokens: readonly Token[], at: number): { end: number; denominator: number }[] {
  return readWholes(tokens, at)
    .filter(({ value }) => value > 0)
    .map(({ end, value }) => ({ end, denominator: value }));
}
