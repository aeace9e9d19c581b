// Spells words in the tokens of the speech model.
import tokenizer from 'llama-tokenizer-js';
import type { WordTable } from '../recogniser/engine/spellings.ts';
import soundsLike from '../recogniser/spellings.json' with { type: 'json' };

const others: Readonly<Record<string, readonly string[]>> = soundsLike.words;

/** Tokens of a text that follows a space, or nothing at all. */
function tokens(text: string, afterSpace: boolean): number[] {
  return tokenizer.encode(text, false, afterSpace);
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

function distinct(sequences: readonly number[][]): number[][] {
  return [...new Map(sequences.map((sequence) => [sequence.join(), sequence])).values()];
}

function spell(word: string): [number[][], number[][], number[][]] {
  const writings = [word, ...(others[word] ?? [])];
  const letter = word.length === 1 ? [word.toUpperCase()] : [];
  const mid = [...writings, ...letter];
  return [
    distinct(mid.map((text) => tokens(text, true))),
    distinct(writings.map((text) => tokens(capital(text), true))),
    distinct(mid.map((text) => tokens(text, false))),
  ];
}

function mark(text: string): number {
  const [token] = tokens(text, false);
  if (token === undefined) throw new TypeError(`tokenizer has no token for '${text}'`);
  return token;
}

export function spellWords(words: Iterable<string>): WordTable {
  const table = Object.fromEntries([...new Set(words)].sort().map((word) => [word, spell(word)]));
  return { words: table, comma: mark(','), hyphen: mark('-'), period: mark('.'), question: mark('?') };
}

/** Every token of the table. */
export function tokensOf({ words, ...marks }: WordTable): number[] {
  return [...Object.values(marks), ...Object.values(words).flat(3)];
}

/** The same table with other numbers for the tokens. */
export function renumberedWords({ words, ...marks }: WordTable, number: (token: number) => number): WordTable {
  const all = (sequences: readonly (readonly number[])[]) => sequences.map((sequence) => sequence.map(number));
  return {
    words: Object.fromEntries(
      Object.entries(words).map(([word, [mid, start, joined]]) => [word, [all(mid), all(start), all(joined)]]),
    ),
    comma: number(marks.comma),
    hyphen: number(marks.hyphen),
    period: number(marks.period),
    question: number(marks.question),
  };
}
