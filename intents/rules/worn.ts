// "Inner bearing L four four something four nine": no number to be kept, so it asks which bearing that may be.
import { spanOf } from '../refine/intents.ts';
import { readWorn } from '../stamped/worn.ts';
import type { QuestionIntent } from '../types.ts';
import type { Hearing } from '../understand.ts';

/** Letters that bearings begin with, or a word that says it is one: no measurement is read so. */
const begins = /^[HJLM]/;
const bearings = /^(bearings?|cones?|cups?|races?|timken)$/;

/** The question that a worn number asks, where one is said in the statement at `at`. */
export function wornIn(hearing: Hearing, at: number): { intent: QuestionIntent; end: number } | undefined {
  if (!hearing.worn) return undefined;
  const { tokens, text, stops } = hearing;
  const stop = stops[at] ?? tokens.length;
  const words = tokens.slice(at, stop).map(({ word }) => word);
  for (let from = at; from < stop; from += 1) {
    const worn = readWorn(tokens, from);
    if (!worn || !(begins.test(worn.text) || words.some((word) => bearings.test(word)))) continue;
    const end = Math.max(stop, worn.end);
    const span = spanOf(tokens, at, end);
    const given = [
      { kind: 'measure' as const, field: 'bearing' as const, value: worn.text, span: spanOf(tokens, from, worn.end) },
    ];
    return {
      intent: { kind: 'question', topic: 'bearing', of: 'bearing', given, words: text.slice(...span).toLowerCase(), span },
      end,
    };
  }
  return undefined;
}
