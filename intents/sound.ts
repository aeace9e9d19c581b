// The last resort: a word nobody knows, beside a word of a field's name, is taken for the name's other word when it sounds like it.
import { fields } from '#data';
import { fieldNames } from './fields.ts';
import { itemWords } from './items.ts';
import { isNumberWord, numberVocabulary } from './numbers/classes.ts';
import { unitVocabulary } from './numbers/unit.ts';
import { reworded, type Token } from './tokens.ts';
import { wordList, wordTable } from './wordbook.ts';
import { fillers } from './words/fillers.ts';
import { denominators, unitOrdinals } from './words/fractions.ts';

/** The other word of a two-word name by its sound, behind its first word and before its second: "hub _ f s" -> face. */
const [behind, ahead] = [new Map<string, Map<string, string>>(), new Map<string, Map<string, string>>()];
const enter = (beside: Map<string, Map<string, string>>, word: string, meant: string) =>
  beside.set(word, (beside.get(word) ?? new Map<string, string>()).set(soundKey(meant), meant));
for (const name of fields.flatMap(({ said }) => said)) {
  const [first = '', second = '', ...more] = name.split(' ');
  if (more.length > 0 || first.length < 3 || second.length < 3) continue;
  enter(behind, first, second);
  enter(ahead, second, first);
}
const meantBehind = wordTable(behind);
const meantAhead = wordTable(ahead);

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

export const isKnown = wordList(known);

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
export function bySound(tokens: readonly Token[]): readonly Token[] {
  let mended: Token[] | undefined;
  for (let at = 0; at < tokens.length; at += 1) {
    const [before, token, next] = [(mended ?? tokens)[at - 1], tokens[at], tokens[at + 1]];
    const [after, ahead] = [meantBehind(before), meantAhead(next)];
    if (!token || !(after || ahead) || !isStranger(token)) continue;
    const key = soundKey(token.word);
    const meant = key.length < 2 ? undefined : (after?.get(key) ?? ahead?.get(key));
    if (meant === undefined) continue;
    mended ??= [...tokens];
    mended[at] = reworded(token, meant, token.word);
  }
  return mended ?? tokens;
}

const isStranger = (token: Token) =>
  token.kind === 'word' && token.word.length > 2 && token.word.length < 20 && !isKnown(token) && !isNumberWord(token);
