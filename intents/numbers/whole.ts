// Whole numbers as spoken: the schoolbook way ("one hundred and two"), and the shop's ("one oh two", "twenty-nine ninety", "seven two").

import { remembered } from '../memo.ts';
import type { Token } from '../tokens.ts';
import { wordTable } from '../wordbook.ts';
import { classOf } from './classes.ts';

/** `run`: chunks said one after the other and written side by side, without "hundred" or "thousand". */
export interface Whole {
  readonly end: number;
  readonly value: number;
  readonly form: 'plain' | 'run' | 'typed';
  /** Digits as said, for runs and typed numbers: "0123". */
  readonly digits: string;
  /** How many chunks a run has, and how many digits its first; none where a size is said. */
  readonly chunks: number;
  readonly head: number;
  /** "thirty-five hundred", "twelve thousand two fifty": how pounds are said in a shop. */
  readonly shop: boolean;
  /** What follows belongs to the last chunk alone: "two thirty-five hundred", "zero five on four and a half". As a number it ends before; as digits behind a point it goes on. */
  readonly cut: boolean;
  /** What to add for the look-alike in sound: fifteen/fifty. */
  readonly soundsLike: readonly number[];
}

interface Chunk {
  readonly end: number;
  readonly text: string;
  readonly soundsLike: number;
}

const longestRun = 24;
/** Beyond these it is a part number, and nothing is weighed against what sounds alike. */
const longestLike = 8;

/** Every way to read a whole number that begins at `at`, shortest first. */
export const readWholes: (tokens: readonly Token[], at: number) => readonly Whole[] = remembered(wholesAt);

const none: readonly Whole[] = [];

function wholesAt(tokens: readonly Token[], at: number): readonly Whole[] {
  const first = tokens[at];
  if (!first) return none;
  if (first.kind === 'number') return typed(tokens, at);
  const found = classOf(first);
  if (repeats(first)) return runs(tokens, at);
  if (!found || found.is === 'and' || found.is === 'point') return none;
  const readings = [...plain(tokens, at), ...runs(tokens, at)];
  return readings.sort((a, b) => a.end - b.end);
}

function typed(tokens: readonly Token[], at: number): Whole[] {
  const text = tokens[at]?.word ?? '';
  if (!/^\d+$/.test(text)) return [];
  const [value, digits] = [Number(text), text];
  const one: Whole = { end: at + 1, value, form: 'typed', digits, chunks: 1, head: 0, shop: false, cut: false, soundsLike: [] };
  const next = classOf(tokens[one.end])?.is;
  if (next !== 'hundred' && next !== 'scale') return [one];
  const sized = plain(tokens, at).filter(({ end }) => end > one.end);
  return [one, ...sized.map((whole): Whole => ({ ...whole, form: 'typed', shop: false }))];
}

/** One spoken chunk of one or two digits: "seven", "oh", "fifteen", "seventy-two". */
function chunkAt(tokens: readonly Token[], at: number): Chunk | undefined {
  const repeat = repeats(tokens[at]);
  if (repeat) return repeated(chunkAt(tokens, at + 1), repeat);
  const found = classOf(tokens[at]);
  if (found?.is === 'zero') return { end: at + 1, text: '0', soundsLike: 0 };
  if (found?.is === 'digit') return { end: at + 1, text: String(found.value), soundsLike: 0 };
  if (found?.is === 'teen') return { end: at + 1, text: String(found.value), soundsLike: likeTeen(found.value) };
  if (found?.is !== 'tens') return undefined;
  const end = at + 1;
  const unit = classOf(tokens[end]);
  if (unit?.is === 'digit') return { end: end + 1, text: String(found.value + unit.value), soundsLike: 0 };
  return { end: at + 1, text: String(found.value), soundsLike: likeTens(found.value) };
}

/** "double oh seven", "triple four": one digit said once. */
const repeats = wordTable([
  ['double', 2],
  ['triple', 3],
]);

function repeated(chunk: Chunk | undefined, times: number): Chunk | undefined {
  return chunk?.text.length === 1 ? { ...chunk, text: chunk.text.repeat(times) } : undefined;
}

const likeTeen = (value: number) => (value > 12 ? (value - 10) * 10 - value : 0);
const likeTens = (value: number) => (value > 20 ? value / 10 + 10 - value : 0);

/** "one twenty" 120, "two oh five" 205, "twenty-nine ninety" 2990, "seven two" 72: chunks side by side. */
function runs(tokens: readonly Token[], at: number): Whole[] {
  const found: Whole[] = [];
  const chunks: Chunk[] = [];
  let digits = '';
  for (let chunk = chunkAt(tokens, at); chunk && chunks.length < longestRun; chunk = chunkAt(tokens, chunk.end)) {
    chunks.push(chunk);
    digits += chunk.text;
    if (chunks.length === 1) continue;
    const larger = hundredsAfter(tokens, chunk, chunks, digits) ?? thousandsAfter(tokens, chunk, chunks, digits);
    if (larger) found.push(larger);
    found.push({
      end: chunk.end,
      value: Number(digits),
      form: 'run',
      digits,
      chunks: chunks.length,
      head: chunks[0]?.text.length ?? 0,
      shop: false,
      soundsLike: digits.length > longestLike ? [] : likes(chunks, digits.length),
      cut: isSized(tokens, chunk.end) || beginsPattern(tokens, chunk),
    });
  }
  return found;
}

function isSized(tokens: readonly Token[], at: number): boolean {
  const next = classOf(tokens[at]);
  return next?.is === 'hundred' || (next?.is === 'scale' && next.value >= 1000);
}

/** "... five on four and a half": studs on a circle. */
const beginsPattern = (tokens: readonly Token[], { text, end }: Chunk): boolean =>
  tokens[end]?.word === 'on' && /^([3-9]|1[0-2])$/.test(text) && classOf(tokens[end + 1])?.is === 'digit';

/** "five two hundred" 5200, "twelve six hundred" 12600: the thousand unsaid. */
function hundredsAfter(tokens: readonly Token[], last: Chunk, chunks: readonly Chunk[], digits: string): Whole | undefined {
  if (chunks.length !== 2 || last.text.length !== 1 || last.text === '0' || classOf(tokens[last.end])?.is !== 'hundred')
    return undefined;
  const all = `${digits}00`;
  return {
    end: last.end + 1,
    value: Number(all),
    form: 'run',
    digits: all,
    chunks: 2,
    head: 0,
    shop: true,
    cut: false,
    soundsLike: [],
  };
}

/** "fifty sixty-three thousand": tens side by side are of the size said after them; "two three thousand" is a count and a size. */
function thousandsAfter(tokens: readonly Token[], last: Chunk, chunks: readonly Chunk[], digits: string): Whole | undefined {
  const scale = classOf(tokens[last.end]);
  if (scale?.is !== 'scale' || scale.value < 1000 || chunks.some(({ text }) => text.length !== 2)) return undefined;
  const value = Number(digits) * scale.value;
  return {
    end: last.end + 1,
    value,
    form: 'run',
    digits: String(value),
    chunks: chunks.length,
    head: 0,
    shop: false,
    cut: false,
    soundsLike: [],
  };
}

function likes(chunks: readonly Chunk[], length: number): number[] {
  let left = length;
  const found: number[] = [];
  for (const { text, soundsLike } of chunks) {
    left -= text.length;
    if (soundsLike !== 0) found.push(soundsLike * 10 ** left);
  }
  return found;
}

/** Schoolbook numbers: every prefix that is a number by itself. */
function plain(tokens: readonly Token[], at: number): Whole[] {
  const found: Whole[] = [];
  let total = 0;
  let exact = 0n;
  let shop = false;
  let position = at;
  let ceiling = Number.POSITIVE_INFINITY;
  const add = (end: number, rest: number, soundsLike: readonly number[]) => {
    const value = total + rest;
    const digits = value > Number.MAX_SAFE_INTEGER ? String(exact + BigInt(rest)) : String(value);
    found.push({ end, value, form: 'plain', digits, chunks: 1, head: 0, shop, cut: false, soundsLike });
  };
  for (;;) {
    const groups = belowThousand(tokens, position, total > 0);
    if (groups.length === 0) return found;
    for (const group of groups) {
      if (group.value < ceiling) add(group.end, group.value, group.soundsLike);
      shop ||= group.shop && total + group.value > 1000;
    }
    const group = groups.at(-1);
    const scale = group && classOf(tokens[group.end]);
    if (!group || scale?.is !== 'scale' || scale.value >= ceiling) return markShop(found, shop);
    const over = classOf(tokens[group.end + 1]);
    // "three thousand million", "a hundred thousand billion": the sizes multiply.
    const size = over?.is === 'scale' && over.value > scale.value ? scale.value * over.value : scale.value;
    const end = size > scale.value ? group.end + 2 : group.end + 1;
    if (size >= ceiling) return markShop(found, shop);
    total += group.value * size;
    exact += BigInt(group.value) * BigInt(size);
    ceiling = size;
    add(
      end,
      0,
      group.soundsLike.map((like) => like * size),
    );
    position = skipAnd(tokens, skipComma(tokens, end));
  }
}

/** "twenty thousand, five hundred and sixty-nine" is one number; where nothing follows its hundreds a comma may begin the next. */
function skipComma(tokens: readonly Token[], at: number): number {
  const joins =
    tokens[at]?.word === ',' &&
    classOf(tokens[at + 1])?.is === 'digit' &&
    classOf(tokens[at + 2])?.is === 'hundred' &&
    chunkAt(tokens, skipAnd(tokens, at + 3)) !== undefined;
  return joins ? at + 1 : at;
}

const markShop = (found: Whole[], shop: boolean) => (shop ? found.map((whole) => ({ ...whole, shop })) : found);

interface Group {
  readonly end: number;
  readonly value: number;
  readonly soundsLike: readonly number[];
  readonly shop: boolean;
}

/** Up to 9,900 in hundreds: "seventy-two", "a hundred and two", "thirty-five hundred"; after a thousand also "two fifty". */
function belowThousand(tokens: readonly Token[], at: number, afterScale: boolean): Group[] {
  const opener = classOf(tokens[at]);
  const next = classOf(tokens[at + 1]);
  const bare = opener?.is === 'article' && (next?.is === 'hundred' || next?.is === 'scale');
  if (opener?.is === 'hundred') return hundreds(tokens, at, 1, [], false);
  if (opener?.is === 'scale' && !afterScale) return [{ end: at, value: 1, soundsLike: [], shop: false }];
  if (bare && next.is === 'scale') return [{ end: at + 1, value: 1, soundsLike: [], shop: false }];
  if (bare) return hundreds(tokens, at + 1, 1, [], false);
  const chunk = chunkAt(tokens, at) ?? typedGroup(tokens, at, afterScale);
  if (!chunk) return [];
  const value = Number(chunk.text);
  const soundsLike = chunk.soundsLike ? [chunk.soundsLike] : [];
  const alone: Group = { end: chunk.end, value, soundsLike, shop: false };
  if (classOf(tokens[chunk.end])?.is === 'hundred') {
    return [
      alone,
      ...hundreds(
        tokens,
        chunk.end,
        value,
        soundsLike.map((like) => like * 100),
        value > 10,
      ),
    ];
  }
  const second = value < 10 ? chunkAt(tokens, chunk.end) : undefined;
  if (second && second.text.length === 2 && (afterScale || classOf(tokens[second.end])?.is === 'scale')) {
    return [
      alone,
      { end: second.end, value: value * 100 + Number(second.text), soundsLike: [second.soundsLike].filter(Boolean), shop: true },
    ];
  }
  return [alone];
}

/** "2 thousand 500", "3 thousand 5 hundred", "4 thousand and 60": digits that a number of words goes on in; other digits begin the next. */
function typedGroup(tokens: readonly Token[], at: number, afterScale: boolean): Chunk | undefined {
  const text = tokens[at]?.kind === 'number' ? (tokens[at]?.word ?? '') : '';
  const joined = classOf(tokens[at - 1])?.is === 'and';
  const goesOn = !afterScale || classOf(tokens[at + 1])?.is === 'hundred' || (joined ? text.length < 4 : text.length === 3);
  return /^\d+$/.test(text) && goesOn ? { end: at + 1, text, soundsLike: 0 } : undefined;
}

/** "9 hundred and 2". */
function typedTens(tokens: readonly Token[], at: number): Chunk | undefined {
  const text = classOf(tokens[at])?.is === 'and' ? (tokens[at + 1]?.word ?? '') : '';
  return /^\d{1,2}$/.test(text) ? { end: at + 2, text, soundsLike: 0 } : undefined;
}

function hundreds(tokens: readonly Token[], at: number, count: number, soundsLike: readonly number[], shop: boolean): Group[] {
  const whole: Group = { end: at + 1, value: count * 100, soundsLike, shop };
  const rest = chunkAt(tokens, skipAnd(tokens, at + 1)) ?? typedTens(tokens, at + 1);
  if (!rest || rest.text === '0') return [whole];
  const both = rest.soundsLike ? [...soundsLike, rest.soundsLike] : soundsLike;
  return [whole, { end: rest.end, value: count * 100 + Number(rest.text), soundsLike: both, shop }];
}

const skipAnd = (tokens: readonly Token[], at: number) => (classOf(tokens[at])?.is === 'and' ? at + 1 : at);
