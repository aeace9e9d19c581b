// A slip of the thumb in a long number word, beside another word of a number: "two thousant", "tree millyon sefen hunderd".
import { mishearings } from '#data';
import { isNumberWord, numberVocabulary } from './numbers/classes.ts';
import { isKnown } from './sound.ts';
import { reworded, type Token } from './tokens.ts';
import { wordList } from './wordbook.ts';

const words = [...numberVocabulary].filter((word) => word.length > 4 && !word.endsWith('s'));
const isMisheard = wordList(mishearings.map(({ heard }) => heard));
const isHomophone = wordList(mishearings.filter(({ where }) => where === 'digit').map(({ heard }) => heard));

/** Long words of numbers, mended where they are one slip away from only one of them. A word with another meaning is left alone. */
export function bySpelling(tokens: readonly Token[]): readonly Token[] {
  let mended: Token[] | undefined;
  for (const [at, token] of tokens.entries()) {
    if (token.kind !== 'word' || token.word.length < 5 || token.word.length > 9 || isKnown(token) || isMisheard(token)) continue;
    if (!isBeside(mended ?? tokens, at)) continue;
    const near = words.filter((word) => isOneSlip(token.word, word));
    if (near.length !== 1 || near[0] === undefined) continue;
    mended ??= [...tokens];
    mended[at] = reworded(token, near[0], token.word);
  }
  return mended ?? tokens;
}

const isBeside = (tokens: readonly Token[], at: number) => isNumberLike(tokens[at - 1]) || isNumberLike(tokens[at + 1]);
const isNumberLike = (token: Token | undefined) => isNumberWord(token) || isHomophone(token);

/** One letter wrong, missing, too many, or two neighbours swapped. The first letter is right. */
function isOneSlip(heard: string, word: string): boolean {
  if (heard === `${word}s` || heard[0] !== word[0] || Math.abs(heard.length - word.length) > 1) return false;
  let start = 0;
  while (start < heard.length && heard[start] === word[start]) start += 1;
  const rest = (text: string, from: number) => text.slice(start + from);
  const swapped = heard[start] === word[start + 1] && heard[start + 1] === word[start];
  return (
    rest(heard, 1) === rest(word, 1) ||
    rest(heard, 1) === rest(word, 0) ||
    rest(heard, 0) === rest(word, 1) ||
    (swapped && rest(heard, 2) === rest(word, 2))
  );
}
