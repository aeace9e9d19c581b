// A number on a part that cannot all be read: "L four four something four nine" -> "L44?49".
import type { Token } from '../tokens.ts';
import { type Characters, digitsAt, letterAt } from './characters.ts';

const unread: ReadonlySet<string> = new Set(['something', 'blank', 'unreadable', 'smudge', 'smudged']);
/** After the last character these tell how the part is, or ask. */
const conditions: ReadonlySet<string> = new Set(['worn', 'missing', '?']);

/** The characters from `at`, "?" for each that cannot be read; undefined where all can be, or too little is left. */
export function readWorn(tokens: readonly Token[], at: number): Characters | undefined {
  let end = at;
  let text = '';
  for (let more = oneAt(tokens, end); more; more = oneAt(tokens, end)) {
    text += more.text;
    end = more.end;
  }
  const known = text.replaceAll('?', '').length;
  return text.includes('?') && text.length >= 4 && text.length <= 12 && known >= 3 ? { end, text } : undefined;
}

function oneAt(tokens: readonly Token[], at: number): Characters | undefined {
  const word = tokens[at]?.word ?? '';
  if (unread.has(word) || (conditions.has(word) && readable(tokens, at + 1))) return { end: at + 1, text: '?' };
  return readable(tokens, at);
}

const readable = (tokens: readonly Token[], at: number): Characters | undefined => letterAt(tokens, at) ?? digitsAt(tokens, at);
