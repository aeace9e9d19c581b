// Text -> tokens with their place in the text as it was given. Nothing is lost: whatever is no word or number is a mark.
import type { Span } from './types.ts';
import { type Told, toldOf } from './wordbook.ts';

export interface Token {
  /** Lower case; digits as typed, without thousands commas. */
  readonly word: string;
  readonly kind: 'word' | 'number' | 'fraction' | 'mark';
  readonly span: Span;
  /** No blank between this token and the one before it. */
  readonly glued: boolean;
  /** What was heard, where a mishearing was mended. */
  readonly heard: string | undefined;
  /** What the tables tell of its word. */
  readonly told: Told;
}

export const tokenOf = (word: string, kind: Token['kind'], span: Span, glued: boolean, heard?: string): Token => ({
  word,
  kind,
  span,
  glued,
  heard,
  told: toldOf(word),
});

/** The same place in the text, read as another word. */
export const reworded = ({ kind, span, glued }: Token, word: string, heard: string | undefined): Token =>
  tokenOf(word, kind, span, glued, heard);

const vulgar: ReadonlyMap<string, string> = new Map(
  Object.entries({
    '½': '1/2',
    '⅓': '1/3',
    '⅔': '2/3',
    '¼': '1/4',
    '¾': '3/4',
    '⅕': '1/5',
    '⅖': '2/5',
    '⅗': '3/5',
    '⅘': '4/5',
    '⅙': '1/6',
    '⅚': '5/6',
    '⅐': '1/7',
    '⅛': '1/8',
    '⅜': '3/8',
    '⅝': '5/8',
    '⅞': '7/8',
    '⅑': '1/9',
    '⅒': '1/10',
    '⅟': '1/',
  }),
);

const sameMark: ReadonlyMap<string, string> = new Map(
  Object.entries({
    '″': '"',
    '”': '"',
    '“': '"',
    '′': "'",
    '’': "'",
    '–': '-',
    '—': '-',
    '−': '-',
    '⁄': '/',
    '×': 'x',
    '✕': 'x',
    º: '°',
  }),
);

/** "3M" is three million; "3m" is three metres; "1M8GD" and "25580B" are neither. */
const bigSizes: ReadonlyMap<string, string> = new Map([
  ['M', 'million'],
  ['G', 'billion'],
  ['B', 'billion'],
  ['b', 'billion'],
  ['T', 'trillion'],
]);

// number, its thousands marked by commas or (three noughts) by blanks, or to a power | letters (with inner apostrophe) | one vulgar fraction | any other single character
const pattern =
  /(\d{1,3}(?:,\d{3})+(?:\.\d+)?(?![\d,])|\d{1,3}(?: 000)+(?!\d)|\d+(?:\.\d+)?(?:[e^][+-]?\d+(?![\p{L}\d]))?|(?<![\p{L}\d.])\.\d+)|(\p{L}+(?:['’](?:s|t|re|m|ve|ll|d)\b)?)|([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒⅟])|([^\s])/gu;

/** Splits a text; cost is linear in its length. */
export function tokenise(text: string): Token[] {
  const tokens: Token[] = [];
  let last = -1;
  pattern.lastIndex = 0;
  for (let match = pattern.exec(text); match; match = pattern.exec(text)) {
    const start = match.index;
    const end = pattern.lastIndex;
    const glued = start === last;
    const token = read(match, [start, end], glued);
    const before = glued ? tokens.at(-1) : undefined;
    const sized = before?.kind === 'number' && bigSizes.get(match[0]);
    const isSize = sized && /\.|^\d{1,3}$/.test(before.word) && !/[\p{L}\d]/u.test(text.charAt(end));
    tokens.push(isSize ? reworded(token, sized, match[0]) : token);
    last = end;
  }
  return tokens;
}

function read([, number, word, fraction, mark = '']: RegExpMatchArray, span: Span, glued: boolean): Token {
  if (word !== undefined) return tokenOf(word.toLowerCase().replace('’', "'"), 'word', span, glued);
  if (number !== undefined) return tokenOf(number.replace(/[, ]/g, ''), 'number', span, glued);
  if (fraction !== undefined) return tokenOf(vulgar.get(fraction) ?? '', 'fraction', span, glued);
  const same = sameMark.get(mark) ?? mark;
  return tokenOf(same, same === 'x' ? 'word' : 'mark', span, glued);
}
