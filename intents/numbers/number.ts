// A number: whole, with a fraction, with decimals, with a size ("two and a half thousand"), with a sign. Exact.
import Fraction from 'fraction.js';
import { remembered } from '../memo.ts';
import type { Token } from '../tokens.ts';
import type { Span } from '../types.ts';
import { exclamations } from '../words/numbers.ts';
import { classOf } from './classes.ts';
import { type Part, readParts } from './fraction.ts';
import { readWholes, type Whole } from './whole.ts';

export interface NumberReading {
  readonly start: number;
  readonly end: number;
  readonly value: Fraction;
  readonly shape: 'whole' | 'fraction' | 'decimal';
  /** Present where the number is a run of chunks: "two five five eight oh". */
  readonly whole: Whole | undefined;
  /** The part of one, as said. */
  readonly part: Part | undefined;
  /** Said as pounds are said in a shop: "thirty-five hundred", "seven K". */
  readonly shop: boolean;
  readonly kilo: boolean;
  /** Values that sound alike, likeliest first. */
  readonly soundsLike: readonly Fraction[];
  readonly resolution: string | undefined;
}

/** Every way to read a number that begins at `at`, likeliest first: longest, then schoolbook before runs. */
export const readNumbers: (tokens: readonly Token[], at: number) => readonly NumberReading[] = remembered(numbersAt);

function numbersAt(tokens: readonly Token[], at: number): readonly NumberReading[] {
  const sign = signAt(tokens, at);
  const start = at + sign.length;
  const found = unsigned(tokens, start);
  if (found.length === 0) return found;
  if (sign.minus)
    return found.map((reading) => ({
      ...reading,
      start: at,
      value: reading.value.neg(),
      soundsLike: reading.soundsLike.map((like) => like.neg()),
    }));
  return sign.length ? found.map((reading) => ({ ...reading, start: at })) : found;
}

function signAt(tokens: readonly Token[], at: number): { length: number; minus: boolean } {
  const word = tokens[at]?.word;
  if (word === 'minus' || word === 'negative') return { length: 1, minus: true };
  if (word === 'positive') return { length: 1, minus: false };
  const before = tokens[at]?.glued === true && tokens[at - 1]?.kind !== 'mark';
  const next = tokens[at + 1];
  const apart = at === 0 && next?.kind === 'number';
  const mark = (word === '-' || word === '+') && !before && (apart || (next?.glued === true && next.kind !== 'word'));
  return { length: mark ? 1 : 0, minus: mark && word === '-' };
}

const none: readonly NumberReading[] = [];

function unsigned(tokens: readonly Token[], at: number): readonly NumberReading[] {
  const [wholes, parts] = [readWholes(tokens, at), readParts(tokens, at)];
  if (wholes.length === 0 && parts.length === 0 && !mayBeDecimal(tokens[at])) return none;
  const found: NumberReading[] = [];
  for (const part of parts) found.push(fraction(at, part));
  for (const whole of wholes) {
    if (whole.cut) continue;
    if (!isExclamation(tokens, at, whole)) found.push(wholeNumber(at, whole));
    const mixed = withPart(tokens, at, whole, wholes);
    if (mixed) found.push(mixed);
  }
  found.push(...decimals(tokens, at, wholes));
  for (const reading of [...found]) {
    const larger = sized(tokens, reading);
    if (larger) found.push(larger);
  }
  return found.length > 1 ? found.sort(likeliest) : found;
}

const mayBeDecimal = (token: Token | undefined) => token?.kind === 'number' || classOf(token)?.is === 'point';

/** "oh" is nought beside another digit; alone it is no number. */
const isExclamation = (tokens: readonly Token[], at: number, { end }: Whole) =>
  end === at + 1 && exclamations.has(tokens[at]?.word ?? '');

/** "one hundred and five sixteenths" is a mixed number before it is 105 sixteenths; "a hundred and thirty fifths" is 130 of them. */
function rank({ shape, whole, part }: NumberReading): number {
  if (shape === 'whole') return whole?.form === 'run' ? 4 : 3;
  const improper = part !== undefined && part.numerator >= part.denominator;
  return improper ? (whole ? 2 : 1) : 0;
}

const likeliest = (a: NumberReading, b: NumberReading) => b.end - a.end || rank(a) - rank(b);

/** A number of one shape; all are built alike, so that they are read alike. */
export function numberOf(
  [start, end]: Span,
  shape: NumberReading['shape'],
  value: Fraction,
  resolution: string | undefined,
  soundsLike: readonly Fraction[],
  whole?: Whole,
  part?: Part,
): NumberReading {
  return { start, end, value, shape, whole, part, shop: whole?.shop ?? false, kilo: false, soundsLike, resolution };
}

function wholeNumber(start: number, whole: Whole): NumberReading {
  const value = new Fraction(whole.form !== 'run' && whole.value > Number.MAX_SAFE_INTEGER ? whole.digits : whole.value);
  const soundsLike = whole.soundsLike.map((like) => value.add(like));
  return numberOf([start, whole.end], 'whole', value, '1', soundsLike, whole);
}

function fraction(start: number, part: Part): NumberReading {
  const value = new Fraction(part.numerator, part.denominator);
  return numberOf([start, part.end], 'fraction', value, `1/${part.denominator}`, [], undefined, part);
}

/** "and" is optional for typed fractions and after a plain whole; a lone numerator never steals the whole's last digit. */
function withPart(tokens: readonly Token[], start: number, whole: Whole, wholes: readonly Whole[]): NumberReading | undefined {
  const joint = classOf(tokens[whole.end])?.is === 'and' ? whole.end + 1 : hyphenBefore(tokens, whole.end);
  const joined = joint > whole.end;
  const longer = wholes.some(({ end, form }) => end > whole.end && form === 'plain');
  if (!joined && longer) return undefined;
  if (whole.form === 'typed' && whole.value >= 1000 && !joined && tokens[joint]?.glued) return undefined;
  const part = readParts(tokens, joint).at(-1);
  if (!part) return undefined;
  const value = new Fraction(part.numerator, part.denominator).add(whole.value);
  const soundsLike = whole.soundsLike.map((like) => value.add(like));
  // "eight and three quarters" is often heard "eighteen three quarters".
  const clipped = !joined && whole.value > 12 && whole.value < 20 && whole.form === 'plain';
  const likes = clipped ? [value.sub(10), ...soundsLike] : soundsLike;
  return numberOf([start, part.end], 'fraction', value, `1/${part.denominator}`, likes, whole, part);
}

/** "72-3/8", "72 - 3/8": the hyphen joins only when a slash fraction follows. */
function hyphenBefore(tokens: readonly Token[], at: number): number {
  const joins = tokens[at]?.word === '-' && (tokens[at + 2]?.word === '/' || tokens[at + 1]?.kind === 'fraction');
  return joins ? at + 1 : at;
}

/** "one point zero six two", "point oh oh five", "point seventy-five", "72.375". */
function decimals(tokens: readonly Token[], start: number, wholes: readonly Whole[]): NumberReading[] {
  const first = tokens[start];
  if (first?.kind === 'number' && !/^\d+$/.test(first.word)) return [decimal(start, start + 1, first.word, [])];
  const found: NumberReading[] = [];
  if (classOf(first)?.is === 'point') found.push(...afterPoint(tokens, start, start, '0', []));
  for (const whole of wholes) {
    if (classOf(tokens[whole.end])?.is === 'point') {
      found.push(...afterPoint(tokens, start, whole.end, String(whole.value), whole.soundsLike));
    }
  }
  return found;
}

function afterPoint(
  tokens: readonly Token[],
  start: number,
  point: number,
  whole: string,
  likes: readonly number[],
): NumberReading[] {
  const next = tokens[point + 1];
  if (next?.kind === 'number' && /^\d+$/.test(next.word)) return [decimal(start, point + 2, `${whole}.${next.word}`, likes)];
  return readWholes(tokens, point + 1)
    .filter(({ form, digits, end }) => (form === 'run' || digits.length < 4) && !pointGoesOn(tokens, end))
    .map(({ end, digits }) => decimal(start, end, `${whole}.${digits}`, likes));
}

/** "seventeen dot two four dot twelve": the last digits before a second point are its whole. */
const pointGoesOn = (tokens: readonly Token[], at: number) =>
  classOf(tokens[at])?.is === 'point' && readWholes(tokens, at + 1).length > 0;

/** "1.062", "2e3", "2.5^3". Powers beyond thirty are no quantity anyone says: they count as thirty. */
function exactly(text: string): Fraction {
  const [, digits = '0', sign, power = '0'] = /^([\d.]+)(?:([e^])([+-]?\d+))?$/.exec(text) ?? [];
  const size = Math.max(-30, Math.min(30, Number(power)));
  const value = new Fraction(digits);
  const raised = (base: Fraction) => (base.n === 0n ? base : (base.pow(size) ?? base));
  if (sign === undefined) return value;
  return sign === 'e' ? value.mul(raised(new Fraction(10))) : raised(value);
}

function decimal(start: number, end: number, text: string, likes: readonly number[]): NumberReading {
  const value = exactly(text);
  const places = text.split('.')[1]?.length ?? 0;
  const soundsLike = likes.map((like) => value.add(like));
  return numberOf([start, end], 'decimal', value, `1/${10 ** places}`, soundsLike);
}

/** "two and a half thousand", "three point five million", "half a dozen", "seven K". */
function sized(tokens: readonly Token[], reading: NumberReading): NumberReading | undefined {
  const kilo = tokens[reading.end]?.word === 'k' && reading.whole?.form !== 'run' && !tokens[reading.end + 1]?.glued;
  const skip = reading.shape === 'fraction' && tokens[reading.end]?.word === 'a' ? 1 : 0;
  const size = kilo ? 1000 : reading.shape === 'whole' ? 0 : sizeAt(tokens, reading.end + skip);
  if (size === 0) return thousandthsOf(tokens, reading);
  const soundsLike = reading.soundsLike.map((like) => like.mul(size));
  return {
    ...reading,
    end: reading.end + skip + 1,
    value: reading.value.mul(size),
    shape: 'whole',
    kilo,
    shop: kilo,
    soundsLike,
    resolution: '1',
  };
}

/** "one and a half thousandths". */
function thousandthsOf(tokens: readonly Token[], reading: NumberReading): NumberReading | undefined {
  const word = tokens[reading.end]?.word;
  if (reading.shape !== 'fraction' || (word !== 'thousandths' && word !== 'thousandth')) return undefined;
  const value = reading.value.div(1000);
  return { ...reading, part: undefined, end: reading.end + 1, value, shape: 'decimal', soundsLike: [], resolution: '1/1000' };
}

function sizeAt(tokens: readonly Token[], at: number): number {
  const found = classOf(tokens[at]);
  if (found?.is === 'scale') return found.value;
  return found?.is === 'hundred' ? 100 : 0;
}
