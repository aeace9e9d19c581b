// Numbers stamped on bearings and seals, and serial numbers.
import { classOf } from '../numbers/classes.ts';
import type { Token } from '../tokens.ts';
import { charactersAt, digitsAt, letterAt } from './characters.ts';
import type { Stamp } from './types.ts';

/** Prefix letters of tapered roller bearings in use on trailers (bearing number table; the bare letters from memory). */
const prefix = /^(J?(LM|L|M|HM|H|HH)|J)$/;

/** "L four four six four nine", "jay em two oh five one four nine", "25580", "387A". */
export function readBearing(tokens: readonly Token[], at: number, asked: boolean): Stamp | undefined {
  const letters = prefixAt(tokens, at);
  const digits = asked ? dashed(tokens, letters.end) : digitsAt(tokens, letters.end);
  if (!digits || digits.text.length < 3 || digits.text.length > 8) return undefined;
  const suffix = asked ? spelledSuffix(tokens, digits.end) : suffixAt(tokens, digits.end);
  // "Three eighty-seven A", "387A", and nothing else, is a bearing too; "192 A" is a current.
  const lettered =
    at === 0 &&
    (tokens[0]?.kind === 'word' || tokens[digits.end]?.glued === true) &&
    /^[AS]$/.test(suffix.text) &&
    !digits.text.endsWith('00') &&
    tokens[suffix.end] === undefined;
  if (!asked && letters.text === '' && !lettered && !singly(tokens, letters.end, digits)) return undefined;
  return { end: suffix.end, holds: 'bearing', field: 'bearing', value: letters.text + digits.text + suffix.text };
}

/** "ten dash thirty-six" is how many seals are numbered. */
function dashed(tokens: readonly Token[], at: number): { end: number; text: string } | undefined {
  const head = digitsAt(tokens, at);
  const dash = head && /^(dash|hyphen)$/.test(tokens[head.end]?.word ?? '');
  const tail = dash ? digitsAt(tokens, head.end + 1) : undefined;
  return head && tail ? { end: tail.end, text: `${head.text}-${tail.text}` } : head;
}

/** Without a prefix only five or more digits, said one by one, are sure to be no measurement. */
function singly(tokens: readonly Token[], at: number, digits: { end: number; text: string }): boolean {
  const single = (token: Token) => classOf(token)?.is === 'digit' || classOf(token)?.is === 'zero';
  return digits.text.length >= 5 && tokens.slice(at, digits.end).every(single);
}

function prefixAt(tokens: readonly Token[], at: number): { end: number; text: string } {
  let end = at;
  let text = '';
  const word = tokens[at]?.word.toUpperCase() ?? '';
  // "LM one one nine four nine": the letters come as one word.
  if (word.length > 1 && prefix.test(word)) return { end: at + 1, text: word };
  for (let letter = letterAt(tokens, end); letter && prefix.test(text + letter.text); letter = letterAt(tokens, end)) {
    text += letter.text;
    end = letter.end;
  }
  return { end, text };
}

function suffixAt(tokens: readonly Token[], at: number): { end: number; text: string } {
  const letter = letterAt(tokens, at);
  const glued = tokens[at]?.glued && letter?.text.length === 1;
  const spelled = letter && (tokens[at]?.word === 'a' || tokens[at]?.word === 's') && !tokens[letter.end];
  return letter && (glued || spelled) ? letter : { end: at, text: '' };
}

/** "one seventy one two fifty five T B": letters that end the number and what was said. */
function spelledSuffix(tokens: readonly Token[], at: number): { end: number; text: string } {
  const letters = tokens.slice(at, at + 3).filter(({ word }) => /^[a-z]$/.test(word));
  const last =
    letters.length > 0 &&
    letters.length < 3 &&
    (tokens[at + letters.length] === undefined || tokens[at + letters.length]?.kind === 'mark');
  return last ? { end: at + letters.length, text: letters.map(({ word }) => word.toUpperCase()).join('') } : suffixAt(tokens, at);
}

/** Anything stamped, where a serial number is asked for. */
export function readSerial(tokens: readonly Token[], at: number, asked: boolean): Stamp | undefined {
  const read = asked ? charactersAt(tokens, at) : undefined;
  return read && read.text.length > 1 ? { end: read.end, holds: 'serial', field: 'serial', value: read.text } : undefined;
}
