// What part a word can play in a number. One lookup per token.
import type { Token } from '../tokens.ts';
import { wordList, wordTable } from '../wordbook.ts';
import { batches, digits, scales, teens, tens, zeros } from '../words/numbers.ts';

export type NumberClass =
  | { readonly is: 'zero' | 'digit' | 'teen' | 'tens'; readonly value: number }
  | { readonly is: 'scale'; readonly value: number }
  | { readonly is: 'hundred' | 'and' | 'point' | 'article' };

const classes: ReadonlyMap<string, NumberClass> = new Map<string, NumberClass>([
  ...[...zeros].map((word) => [word, { is: 'zero', value: 0 }] as const),
  ...[...digits].map(([word, value]) => [word, { is: 'digit', value }] as const),
  ...[...teens].map(([word, value]) => [word, { is: 'teen', value }] as const),
  ...[...tens].map(([word, value]) => [word, { is: 'tens', value }] as const),
  ...[...scales].map(([word, value]) => [word, { is: 'scale', value: Number(value) }] as const),
  ...[...batches].map(([word, value]) => [word, { is: 'scale', value }] as const),
  ['hundred', { is: 'hundred' }],
  ['hundreds', { is: 'hundred' }],
  ['and', { is: 'and' }],
  ["'n", { is: 'and' }],
  ['&', { is: 'and' }],
  ['point', { is: 'point' }],
  ['dot', { is: 'point' }],
  ['decimal', { is: 'point' }],
  ['a', { is: 'article' }],
  ['an', { is: 'article' }],
]);

/** Every word that plays a part in numbers. */
export const numberVocabulary: ReadonlySet<string> = new Set(classes.keys());

/** What a number may begin with besides. */
export const numberOpeners: readonly string[] = ['half', 'quarter', 'minus', 'negative', 'positive'];

export const classOf: (token: Token | undefined) => NumberClass | undefined = wordTable(classes);

/** True for words that can only be numbers, so that a sentence without one holds no measurement. */
export function isNumberWord(token: Token | undefined): boolean {
  if (!token) return false;
  if (token.kind === 'number' || token.kind === 'fraction') return true;
  return onlyNumber(token);
}

const onlyNumber = wordList(
  [...classes].flatMap(([word, { is }]) => (is === 'and' || is === 'article' || is === 'point' || word === 'o' ? [] : [word])),
);
