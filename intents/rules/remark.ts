// A statement about the state of a part is a note, though nobody said "note": "the outer is too far gone".
import { fieldNames } from '../fields.ts';
import { lexicon } from '../lexicon.ts';
import type { Token } from '../tokens.ts';
import { conditionWords, partWords, standIns } from '../words/conditions.ts';

const conditions = lexicon(conditionWords.map((row) => [row, row.said] as const));
const parts = lexicon([...partWords, ['it', standIns]]);

/** A part and its condition, or a plain condition of a few words. */
export function isRemark(tokens: readonly Token[], at: number, end: number): boolean {
  const has = (of: { longest(tokens: readonly Token[], at: number): unknown }) => {
    for (let from = at; from < end; from += 1) if (of.longest(tokens, from)) return true;
    return false;
  };
  return has(conditions) && (has(parts) || has(fieldNames));
}
