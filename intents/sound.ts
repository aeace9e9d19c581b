// The last resort: a word nobody knows, beside a word of a field's name, is taken for the name's other word when it sounds like it.
import { fields } from '#data';
import { fieldNames } from './fields.ts';
import { itemWords } from './items.ts';
import { isNumberWord, numberVocabulary } from './numbers/classes.ts';
import { unitVocabulary } from './numbers/unit.ts';
import { reworded, type Token } from './tokens.ts';
import { fillers } from './words/fillers.ts';
import { denominators, unitOrdinals } from './words/fractions.ts';

/** Beside which known word, and sounding how, a word of a two-word name is meant: "hub _ f s" -> face. */
const meant = new Map<string, string>();
for (const name of fields.flatMap(({ said }) => said)) {
  const [first = '', second = '', ...more] = name.split(' ');
  if (more.length > 0 || first.length < 3 || second.length < 3) continue;
  meant.set(`${first} ${soundKey(second)}`, second);
  meant.set(`${soundKey(first)} ${second}`, first);
}

/** Every word that some rule knows. */
export const known: ReadonlySet<string> = new Set([
  ...fieldNames.vocabulary,
  ...fillers,
  ...itemWords,
  ...unitVocabulary,
  ...numberVocabulary,
  ...denominators.keys(),
  ...unitOrdinals.keys(),
]);

/** Consonant skeleton: voiced and voiceless stops apart in writing fall together, vowels count only at the start. */
function soundKey(word: string): string {
  const plain = word
    .replace(/ph/g, 'f')
    .replace(/c(?=[eiy])/g, 's')
    .replace(/[ckq]+/g, 'k')
    .replace(/[dt]+/g, 't')
    .replace(/[bp]+/g, 'p')
    .replace(/[gj]+/g, 'j')
    .replace(/[zs]+|x/g, 's')
    .replace(/[vf]+/g, 'f')
    .replace(/gh|h|w|y/g, '');
  return plain.slice(0, 1).replace(/[aeiou]/, 'a') + plain.slice(1).replace(/[aeiou]/g, '');
}

/** Replaces a stranger beside one word of a two-word name; a known word is never replaced. */
export function bySound(tokens: readonly Token[]): Token[] {
  const mended = [...tokens];
  for (const [at, token] of tokens.entries()) {
    const key = isStranger(token) ? soundKey(token.word) : '';
    if (key.length < 2) continue;
    const meant = meantBeside(mended, at, key);
    if (meant) mended[at] = reworded(token, meant, token.word);
  }
  return mended;
}

const isStranger = (token: Token) =>
  token.kind === 'word' && token.word.length > 2 && token.word.length < 20 && !known.has(token.word) && !isNumberWord(token);

const meantBeside = (tokens: readonly Token[], at: number, key: string) =>
  meant.get(`${tokens[at - 1]?.word ?? ''} ${key}`) ?? meant.get(`${key} ${tokens[at + 1]?.word ?? ''}`);
