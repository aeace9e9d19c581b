// A number on a part that cannot all be read: "L four four something four nine" -> "L44?49".
import type { Token } from '../tokens.ts';
import { wordList } from '../wordbook.ts';
import { type Characters, digitsAt, letterAt } from './characters.ts';

const unread = wordList(['something', 'blank', 'unreadable', 'smudge', 'smudged']);
/** After the last character these tell how the part is, or ask. */
const conditions = wordList(['worn', 'missing', '?']);

/** True where something may be told of what cannot be read; asked once of an utterance. */
export const mayBeWorn = (tokens: readonly Token[]): boolean => tokens.some((token) => unread(token) || conditions(token));

/** No number stamped on a bearing is longer. */
const longest = 12;

/** The characters from `at`, "?" for each that cannot be read; undefined where all can be, or too little is left. */
export function readWorn(tokens: readonly Token[], at: number): Characters | undefined {
  let end = at;
  let text = '';
  for (let more = oneAt(tokens, end); more && text.length <= longest; more = oneAt(tokens, end)) {
    text += more.text;
    end = more.end;
  }
  const known = text.replaceAll('?', '').length;
  return text.includes('?') && text.length >= 4 && text.length <= longest && known >= 3 ? { end, text } : undefined;
}

function oneAt(tokens: readonly Token[], at: number): Characters | undefined {
  if (unread(tokens[at]) || (conditions(tokens[at]) && readable(tokens, at + 1))) return { end: at + 1, text: '?' };
  return readable(tokens, at);
}

const readable = (tokens: readonly Token[], at: number): Characters | undefined => letterAt(tokens, at) ?? digitsAt(tokens, at);
