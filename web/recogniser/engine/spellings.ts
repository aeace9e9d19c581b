// Word -> token sequences, from the table that the build makes with the model's own tokenizer.
import type { Spelling, Spellings } from './lexicon.ts';

/** Per word the token sequences [after a space, at the start of a sentence, joined to the word before]. */
export interface WordTable {
  readonly words: Readonly<Record<string, readonly [mid: Sequences, start: Sequences, joined: Sequences]>>;
  readonly comma: number;
  readonly hyphen: number;
  readonly period: number;
  readonly question: number;
}

type Sequences = readonly (readonly number[])[];
const unspelt: Spelling = { mid: [], start: [], joined: [] };

/** A word that the table lacks cannot be heard; the build's test sees to it that there is none. */
export function spellingsFrom({ words, ...marks }: WordTable): Spellings {
  const known = new Map(Object.entries(words).map(([word, [mid, start, joined]]) => [word, { mid, start, joined }]));
  return { ...marks, of: (word) => known.get(word) ?? unspelt };
}
