import { expect, it } from 'vitest';
import { mend } from '../../../intents/mend.ts';
import { tokenise } from '../../../intents/tokens.ts';
import { toldOf, wordList, wordTable } from '../../../intents/wordbook.ts';

const tokenOf = (word: string) => ({ told: toldOf(word) });

it('tells what each table holds of a word, and nothing of a stranger', () => {
  const sizes = wordTable([
    ['vast', 3],
    ['minute', 1],
  ]);
  const lists = wordList(['minute']);
  expect([sizes(tokenOf('vast')), lists(tokenOf('vast'))]).toEqual([3, false]);
  expect([sizes(tokenOf('minute')), lists(tokenOf('minute'))]).toEqual([1, true]);
  expect([sizes(tokenOf('unheard-of')), sizes(undefined)]).toEqual([undefined, undefined]);
});

it.each(['hub phase 3M, two thousant and a half', "the drop's four left at one, right at too", 'spring sinner won hundred ½'])(
  'knows the mended words of "%s" by what they were mended to',
  (text) => {
    const tokens = mend(tokenise(text));
    expect(tokens.some(({ heard }) => heard !== undefined) || text.includes("'s")).toBe(true);
    for (const { word, told } of tokens) expect(told).toBe(toldOf(word));
  },
);
