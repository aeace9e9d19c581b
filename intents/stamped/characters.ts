// Letters and digits as read off a part: "L four four six four nine", "jay em two oh five one four nine", "25580A".
import { readWholes } from '../numbers/whole.ts';
import type { Token } from '../tokens.ts';
import { letters } from '../words/letters.ts';

export interface Characters {
  readonly end: number;
  readonly text: string;
}

/** No number stamped on anything is longer. */
const longest = 24;

/** Digits said as chunks or typed, from `at` on; a stop word ends them. */
export function digitsAt(tokens: readonly Token[], at: number): Characters | undefined {
  let end = at;
  let text = '';
  for (;;) {
    const more = text.length > longest ? undefined : digitGroup(tokens, end);
    if (!more) break;
    text += more.text;
    end = more.end;
  }
  return text ? { end, text } : undefined;
}

function digitGroup(tokens: readonly Token[], at: number): Characters | undefined {
  const token = tokens[at];
  if (token?.kind === 'number') return /^\d+$/.test(token.word) ? { end: at + 1, text: token.word } : undefined;
  if (token && isSuffix(token)) return undefined;
  const whole = readWholes(tokens, at)
    .filter(({ form, digits, cut }) => (form === 'run' && !cut) || /^\d{1,2}$/.test(digits) || digits.endsWith('00'))
    .filter(({ end }) => end > at)
    .at(-1);
  return whole && token?.word !== 'a' && token?.word !== 'an' ? { end: whole.end, text: whole.digits } : undefined;
}

/** "12B" is twelve billion elsewhere. */
const isSuffix = ({ glued, heard }: Token) => glued && heard?.length === 1;

/** One letter, by itself, by its ICAO word or by its name; typed runs ("LM") come whole. */
export function letterAt(tokens: readonly Token[], at: number, longestRun = 3): Characters | undefined {
  const token = tokens[at];
  if (token?.kind !== 'word' || beginsUBolt(tokens, at)) return undefined;
  if (isSuffix(token)) return { end: at + 1, text: token.heard?.toUpperCase() ?? '' };
  const typed = token.word.length > 1 && (token.glued || tokens[at + 1]?.glued === true);
  const named = typed ? undefined : letters.get(token.word);
  if (named) return { end: at + 1, text: named.toUpperCase() };
  const gluedRun = token.word.length <= longestRun && isGlued(tokens, at) && /^[a-z]+$/.test(token.word);
  return gluedRun ? { end: at + 1, text: token.word.toUpperCase() } : undefined;
}

/** Typed in one with a number or a mark; the "is" of "seal's" is glued to a word. */
const isGlued = (tokens: readonly Token[], at: number): boolean =>
  (tokens[at]?.glued === true && tokens[at - 1]?.kind !== 'word') ||
  (tokens[at + 1]?.glued === true && tokens[at + 1]?.kind !== 'word');

const beginsUBolt = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]?.word === 'u' && /^bolts?$/.test(tokens[at + 1]?.word ?? '');

/** Letters and digits in any order, as far as they go. */
export function charactersAt(tokens: readonly Token[], at: number): Characters | undefined {
  let end = at;
  let text = '';
  for (;;) {
    const more =
      text.length > longest ? undefined : (digitGroup(tokens, end) ?? letterAt(tokens, end, 17) ?? joiner(tokens, end, text));
    if (!more) break;
    text += more.text;
    end = more.end;
  }
  return text ? { end, text } : undefined;
}

function joiner(tokens: readonly Token[], at: number, text: string): Characters | undefined {
  const word = tokens[at]?.word;
  const joins = word === 'dash' || word === '-' || word === 'hyphen';
  if (!text || !joins || !(digitGroup(tokens, at + 1) ?? letterAt(tokens, at + 1))) return undefined;
  return { end: at + 1, text: '-' };
}
