// Tyre designations: metric (ST205/75R15), inch bias (4.80-12), flotation (20.5x8.0-10, 31x10.50R15).
import type Fraction from 'fraction.js';
import { classOf, isNumberWord } from '../numbers/classes.ts';
import { readNumbers } from '../numbers/number.ts';
import { readWholes } from '../numbers/whole.ts';
import type { Token } from '../tokens.ts';
import { wordList, wordTable } from '../wordbook.ts';
import { letterAt } from './characters.ts';
import type { Stamp } from './types.ts';

const makes = wordTable(
  Object.entries({
    r: 'R',
    d: 'D',
    b: 'B',
    zr: 'ZR',
    radial: 'R',
    are: 'R',
    ar: 'R',
    bias: '-',
    dash: '-',
    '-': '-',
    by: '-',
    x: '-',
    '/': '-',
    slash: '-',
  }),
);

export function readTyre(tokens: readonly Token[], at: number, asked: boolean): Stamp | undefined {
  const prefix = prefixAt(tokens, at);
  return (
    metric(tokens, prefix.end, prefix.text) ??
    flotation(tokens, prefix.end) ??
    bias(tokens, prefix.end, asked || prefix.text !== '' || saysBias(tokens, prefix.end))
  );
}

function prefixAt(tokens: readonly Token[], at: number): { end: number; text: string } {
  if (isNumberWord(tokens[at])) return { end: at, text: '' };
  for (const name of ['ST', 'LT', 'P']) {
    if (tokens[at]?.word === name.toLowerCase() && name.length > 1) return { end: at + 1, text: name };
    let end = at;
    let text = '';
    while (text.length < name.length) {
      const letter = letterAt(tokens, end);
      if (!letter || !name.startsWith(text + letter.text)) break;
      text += letter.text;
      end = letter.end;
    }
    if (text === name) return { end, text };
  }
  return { end: at, text: '' };
}

/** Exactly `count` digits, said in chunks or typed. */
function digits(tokens: readonly Token[], at: number, count: number): { end: number; text: string } | undefined {
  const whole = readWholes(tokens, at).find(({ digits: text }) => text.length === count);
  return whole && { end: whole.end, text: whole.digits };
}

function metric(tokens: readonly Token[], at: number, prefix: string): Stamp | undefined {
  const width = digits(tokens, at, 3);
  if (!width || Number(width.text) < 125 || Number(width.text) > 455 || Number(width.text) % 5 !== 0) return undefined;
  const ratio = digits(tokens, afterSlash(tokens, width.end), 2);
  if (!ratio || Number(ratio.text) < 25 || Number(ratio.text) > 95 || Number(ratio.text) % 5 !== 0) return undefined;
  const make = makes(tokens[ratio.end]);
  const rim = rimAt(tokens, make || tokens[ratio.end]?.word === ',' ? ratio.end + 1 : ratio.end);
  return rim && stamp(rim.end, `${prefix}${width.text}/${ratio.text}${make ?? '-'}${rim.text}`);
}

const afterSlash = (tokens: readonly Token[], at: number) => (joints(tokens[at]) ? at + 1 : at);
const joints = wordList(['/', 'slash', 'by', '-', 'series', ',']);

/** Rims from 8 to 24.5 inches. */
function rimAt(tokens: readonly Token[], at: number): { end: number; text: string } | undefined {
  const rim = readNumbers(tokens, at).find(
    ({ value, shape }) => shape !== 'fraction' && value.compare(8) >= 0 && value.compare(26) <= 0,
  );
  return halfRimAt(tokens, at) ?? (rim && { end: rim.end, text: rim.value.toString() });
}

/** "fourteen five", "sixteen and a half": rims come in halves, and the point is often left unsaid. */
function halfRimAt(tokens: readonly Token[], at: number): { end: number; text: string } | undefined {
  const half = readNumbers(tokens, at).find(
    ({ value, part }) => part?.denominator === 2 && value.compare(8) > 0 && value.compare(26) < 0,
  );
  if (half) return { end: half.end, text: half.value.toString() };
  const run = readWholes(tokens, at).find(
    ({ form, chunks, digits: text }) => form === 'run' && chunks === 2 && /^(14|16|17|19|22)5$/.test(text),
  );
  return run && { end: run.end, text: String(run.value / 10) };
}

/** Numbers, and what they are with the point unsaid: "eighteen five" is also 18.5. */
function halved(tokens: readonly Token[], at: number): { end: number; value: Fraction }[] {
  const found = readNumbers(tokens, at);
  const runs = found.filter(({ whole, shape }) => shape === 'whole' && whole?.chunks === 2 && whole.digits.endsWith('5'));
  return [...found, ...runs.map(({ end, value }) => ({ end, value: value.div(10) }))];
}

function flotation(tokens: readonly Token[], at: number): Stamp | undefined {
  const isBy = (end: number) => tokens[end]?.word === 'by' || tokens[end]?.word === 'x';
  const tall = halved(tokens, at).find(({ end, value }) => isBy(end) && value.compare(15) >= 0 && value.compare(60) <= 0);
  const wide =
    tall &&
    halved(tokens, tall.end + 1).find(({ end, value }) => makes(tokens[end]) && value.compare(4) >= 0 && value.compare(20) <= 0);
  const make = wide && makes(tokens[wide.end]);
  const rim = wide && rimAt(tokens, wide.end + 1);
  if (!tall || !wide || !make || !rim) return undefined;
  const width = Number(wide.value.valueOf()).toFixed(make === 'R' ? 2 : 1);
  return stamp(rim.end, `${tall.value.toString()}x${width}${make}${rim.text}`);
}

const crosses = wordList(['-', 'by', 'x']);

/** What follows the numbers may say that they are a tyre: "seven fifty sixteen bias", "eight fourteen five low pro". */
function saysBias(tokens: readonly Token[], at: number): boolean {
  let end = at;
  while (end < at + 8 && (tokens[end]?.kind === 'number' || classOf(tokens[end]) !== undefined || crosses(tokens[end]))) end += 1;
  return end > at && (tokens[end]?.word === 'bias' || (tokens[end]?.word === 'low' && /^pro/.test(tokens[end + 1]?.word ?? '')));
}

/** "four eighty by twelve", "5.30-12", "seven fifty sixteen" where a tyre is asked for. */
function bias(tokens: readonly Token[], at: number, asked: boolean): Stamp | undefined {
  for (const width of readNumbers(tokens, at)) {
    const single = width.whole?.digits.length === 1;
    const sized = width.whole?.digits.length === 3 || width.shape === 'decimal' || asked;
    const inches = width.shape === 'decimal' || (asked && single) ? width.value : width.value.div(100);
    const make = makes(tokens[width.end]);
    if (!sized || !(make || asked) || inches.compare(4) < 0 || inches.compare(14) > 0) continue;
    const rim = rimAt(tokens, make ? width.end + 1 : width.end);
    if (!rim) continue;
    const text = single ? inches.toString() : Number(inches.valueOf()).toFixed(2);
    return stamp(rim.end, `${text}${make ?? '-'}${rim.text}`);
  }
  return undefined;
}

/** What stands behind a size on the sidewall: its load range, or its load index with the speed symbol. */
export interface Sidewall {
  readonly end: number;
  readonly field: 'loadRange' | 'loadIndex';
  readonly choice: string;
}

/** "ST205/75R15 C", "... LRD", "... 97S", "... 120/116S": of two indices the single tyre's; the speed symbol is heard and not kept. */
export function sidewallAt(tokens: readonly Token[], at: number): Sidewall | undefined {
  return serviceAt(tokens, at) ?? rangeAt(tokens, at);
}

function serviceAt(tokens: readonly Token[], at: number): Sidewall | undefined {
  const isIndex = (token: Token | undefined) => token?.kind === 'number' && /^(\d\d|1\d\d)$/.test(token.word);
  if (!isIndex(tokens[at])) return undefined;
  const dual = tokens[at + 1]?.word === '/' && isIndex(tokens[at + 2]);
  const symbol = dual ? at + 3 : at + 1;
  const glued = tokens[symbol]?.glued === true && speedSymbol.test(tokens[symbol]?.word ?? '') && !goesOn(tokens, symbol + 1);
  if (!glued || !(dual || endsTyre(tokens, at) || rangeAt(tokens, at - 1)?.end === at)) return undefined;
  return { end: symbol + 1, field: 'loadIndex', choice: tokens[at]?.word ?? '' };
}

/** A load range by itself, or after "LR". */
const ranges = wordTable(
  [...'bcdefgh'].flatMap((letter) => [letter, `lr${letter}`].map((word) => [word, letter.toUpperCase()] as const)),
);

function rangeAt(tokens: readonly Token[], at: number): Sidewall | undefined {
  const short = tokens[at]?.word === 'lr' ? at + 1 : at;
  const letter = ranges(tokens[short]);
  if (letter === undefined || goesOn(tokens, short + 1) || !endsTyre(tokens, at)) return undefined;
  return { end: short + 1, field: 'loadRange', choice: letter };
}

/** "107M" was read as millions before it was known to stand behind a tyre. */
const speedSymbol = /^(?:[a-z]|million|billion)$/;

const goesOn = (tokens: readonly Token[], at: number) => tokens[at]?.glued === true && tokens[at]?.kind !== 'mark';

/** The most tokens that a size is written in. */
const longest = 12;

function endsTyre(tokens: readonly Token[], at: number): boolean {
  for (let from = at - 1; from >= Math.max(0, at - longest); from -= 1) {
    if (readTyre(tokens, from, false)?.end === at) return true;
  }
  return false;
}

const stamp = (end: number, value: string): Stamp => ({ end, holds: 'tyre', field: 'tyreSize', value });
