// Axles of the rack that a question names by where they lie: "rack four", "the upper one on rack two", "bay three".
import type { StockAxle } from '#data';
import type { QuestionIntent } from '#intents';

const numbers: Readonly<Record<string, string>> = Object.fromEntries(
  'one two three four five six seven eight nine ten eleven twelve'.split(' ').map((word, at) => [word, String(at + 1)]),
);
const plain = (word: string) => numbers[word] ?? word;
const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .match(/[a-z0-9]+/g)
    ?.map(plain) ?? [];

/** Rows whose numbered place ("rack 4") is said, of several those whose other words of place are said too. */
export function namedByPlace({ words = '' }: QuestionIntent, stock: readonly StockAxle[]): readonly StockAxle[] {
  const said = wordsOf(words);
  const there = stock.filter(({ place = '' }) => isSaid(numbered(place), said));
  const closer = there.filter(({ place = '' }) => wordsOf(place).every((word) => said.includes(word)));
  return closer.length > 0 ? closer : there;
}

/** "rack 4, upper" -> rack, 4. */
const numbered = (place: string): readonly string[] =>
  /[a-z]+ ?\d+/i
    .exec(place)?.[0]
    .toLowerCase()
    .match(/[a-z]+|\d+/g) ?? [];

/** One after the other, as said. */
function isSaid(wanted: readonly string[], said: readonly string[]): boolean {
  if (wanted.length === 0) return false;
  return said.some((_word, at) => wanted.every((word, on) => said[at + on] === word));
}
