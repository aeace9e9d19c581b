// A quantity as said: hedge, sign, number, unit, feet-and-inches, range, tolerance. The value stays exact and in the unit said.
import Fraction from 'fraction.js';
import type { UnitId } from '#data';
import { lexicon } from '../lexicon.ts';
import { remembered } from '../memo.ts';
import type { Token } from '../tokens.ts';
import type { Hedge } from '../types.ts';
import { denominators } from '../words/fractions.ts';
import { hedgesAfter, hedgesBefore, rangeWords, toleranceWords } from '../words/hedges.ts';
import { classOf, isNumberWord, numberVocabulary } from './classes.ts';
import { readParts } from './fraction.ts';
import { type NumberReading, readNumbers } from './number.ts';
import { readUnit, type UnitReading, unitVocabulary } from './unit.ts';

export interface QuantityReading {
  readonly start: number;
  readonly end: number;
  readonly value: Fraction;
  readonly unit?: UnitId;
  /** The unit's name as said: "mil" may mean two things. */
  readonly unitWord?: string;
  readonly hedge?: Hedge;
  readonly to?: Fraction;
  readonly plusMinus?: Fraction;
  readonly resolution?: string;
  readonly soundsLike: readonly Fraction[];
  /** How the number itself was said. */
  readonly number: NumberReading;
  /** Where the number begins, after any hedge. */
  readonly numberAt: number;
  /** Its number was typed in digits, not spoken. */
  readonly typed: boolean;
}

const before = lexicon(hedgesBefore);
const after = lexicon(hedgesAfter);
const tolerances = lexicon([[true as const, toleranceWords]]);
const ranges = new Set(rangeWords);

/** Words that may begin a quantity: numbers, hedges, units ("inch and a half"), "between". */
export const quantityStarts: ReadonlySet<string> = new Set([
  ...numberVocabulary,
  ...unitVocabulary,
  ...before.vocabulary,
  ...['between', 'from', 'half', 'quarter', 'minus', 'negative', 'positive'],
]);

/** Whether a number can be what is being measured; settles "seventy-two fifty-eight" and its like. */
export interface Plausible {
  (value: Fraction, unit: UnitId | undefined): boolean;
  /** Read off a gauge in decimals, whose point is often left unsaid. */
  readonly decimal?: boolean;
}

/** The likeliest quantity that begins at `at` (its hedge included), or none. */
export function readQuantity(tokens: readonly Token[], at: number, plausible?: Plausible): QuantityReading | undefined {
  if (tokens[at]?.word === 'between' || tokens[at]?.word === 'from') {
    const range = readRange(tokens, at + 1, 'and');
    if (range) return { ...range, start: at };
  }
  const hedge = before.longest(tokens, at);
  const numberAt = hedge ? skipArticle(tokens, hedge.end) : at;
  const simple =
    readRange(tokens, numberAt) ??
    squared(tokens, readAmount(tokens, numberAt, plausible)) ??
    (hedge && partBehindHedge(tokens, at, hedge.end));
  if (!simple) return undefined;
  return readTail(tokens, { ...simple, start: at, ...(hedge && hedge.meaning !== 'none' ? { hedge: hedge.meaning } : {}) });
}

/** "seventy-two and a strong eighth". */
function hedgedPart(tokens: readonly Token[], whole: QuantityReading): QuantityReading | undefined {
  const hedge = before.longest(tokens, whole.end + 1);
  const part = hedge && whole.number.shape === 'whole' ? partBehindHedge(tokens, whole.end + 1, hedge.end) : undefined;
  if (!hedge || !part || hedge.meaning === 'none') return undefined;
  const { value, end, resolution } = part;
  return { ...whole, end, value: whole.value.add(value), hedge: hedge.meaning, ...(resolution ? { resolution } : {}) };
}

/** "a strong eighth": the article belongs to the part. */
function partBehindHedge(tokens: readonly Token[], at: number, end: number): QuantityReading | undefined {
  const first = tokens[at];
  if (!first || classOf(first)?.is !== 'article' || !denominators.has(tokens[end]?.word ?? '')) return undefined;
  const found = readAmount([first, ...tokens.slice(end, end + 8)], 0);
  return found && { ...found, end: found.end + end - 1 };
}

/** "forty by forty millimetres": a square is given by its one side. */
function squared(tokens: readonly Token[], side: QuantityReading | undefined): QuantityReading | undefined {
  const by = side && tokens[side.end]?.word;
  if (!side || (by !== 'by' && by !== 'x')) return side;
  const other = readAmount(tokens, side.end + 1);
  const same = other?.number.value.equals(side.number.value) === true && (side.unit === undefined || side.unit === other.unit);
  return same ? other : side;
}

const skipArticle = (tokens: readonly Token[], at: number) =>
  tokens[at]?.word === 'of' || tokens[at]?.word === 'the' ? at + 1 : at;

/** Number with its unit; feet take the inches that follow. */
export function readAmount(tokens: readonly Token[], at: number, plausible?: Plausible): QuantityReading | undefined {
  const [likeliest] = likeliestAmount(tokens, at);
  if (!plausible || !likeliest || plausible(likeliest.value, likeliest.unit)) return likeliest;
  const small = thousandsForThousandths(tokens, likeliest.number);
  if (small && plausible(small.value, small.unit)) return small;
  // Only a run of chunks may be cut short; a fraction or a schoolbook number was said whole.
  if (likeliest.number.whole?.form !== 'run' || likeliest.number.shape !== 'whole') return likeliest;
  const thousandths = withoutPoint(tokens, likeliest.number);
  if (thousandths && plausible(thousandths.value, thousandths.unit)) return thousandths;
  const pointed = plausible.decimal ? pointUnsaid(tokens, likeliest.number, plausible) : undefined;
  if (pointed) return pointed;
  const shorter = readNumbers(tokens, at)
    .slice(1)
    .map((number) => withUnit(tokens, number));
  return shorter.find(({ value, unit }) => plausible(value, unit)) ?? likeliest;
}

/** "two thousands" of an end play were thousandths, misheard. */
function thousandsForThousandths(tokens: readonly Token[], number: NumberReading): QuantityReading | undefined {
  if (!/^thousands?$/.test(tokens[number.end - 1]?.word ?? '')) return undefined;
  const value = number.value.div(1_000_000);
  return withUnit(tokens, { ...number, value, soundsLike: [number.value], shape: 'decimal', resolution: '1/1000' });
}

/** "oh oh five" off a dial is .005: digits that lead with nought, the point unsaid. */
function withoutPoint(tokens: readonly Token[], number: NumberReading): QuantityReading | undefined {
  const digits = number.whole?.digits ?? '';
  if (!/^0\d\d/.test(digits)) return undefined;
  const value = new Fraction(`0.${digits}`);
  return withUnit(tokens, { ...number, value, soundsLike: [], shape: 'decimal', resolution: `1/${10 ** digits.length}` });
}

/** "one three seven four" of a journal is 1.374, "eleven nine" of a battery 11.9: the point stands after the first words. */
function pointUnsaid(tokens: readonly Token[], number: NumberReading, plausible: Plausible): QuantityReading | undefined {
  const { digits = '', head = 0 } = number.whole ?? {};
  if (head === 0) return undefined;
  const value = new Fraction(`${digits.slice(0, head)}.${digits.slice(head)}`);
  const resolution = `1/${10 ** (digits.length - head)}`;
  const found = withUnit(tokens, { ...number, value, soundsLike: [], shape: 'decimal', resolution });
  return plausible(found.value, found.unit) ? found : undefined;
}

const likeliestAmount = remembered((tokens: readonly Token[], at: number): readonly QuantityReading[] => {
  const bare = unitAndPart(tokens, at);
  if (bare) return [bare];
  const [number] = readNumbers(tokens, at);
  return number ? [withUnit(tokens, number)] : [];
});

function withUnit(tokens: readonly Token[], number: NumberReading): QuantityReading {
  const unit = readUnit(tokens, unitAt(tokens, number));
  const plain = amount(tokens, number, number.end, number.value, unit);
  if (!unit) return plain;
  return feetAndInches(tokens, plain, unit) ?? withSmaller(tokens, plain, unit) ?? partAfterUnit(tokens, plain, unit) ?? plain;
}

/** Lengths and weights said in two units, in millimetres and pounds: "two metres and five centimetres", "two yards seven feet". */
const sizes: Readonly<Partial<Record<UnitId, { readonly of: 'metric' | 'inches' | 'pounds'; readonly size: number }>>> = {
  km: { of: 'metric', size: 1_000_000 },
  m: { of: 'metric', size: 1000 },
  cm: { of: 'metric', size: 10 },
  mm: { of: 'metric', size: 1 },
  in: { of: 'inches', size: 1 },
  lb: { of: 'pounds', size: 1 },
};

/** The same amount goes on in a smaller unit of its kind; the sum is in the smaller one. */
function withSmaller(tokens: readonly Token[], larger: QuantityReading, unit: UnitReading): QuantityReading | undefined {
  const joint = classOf(tokens[larger.end])?.is === 'and' || tokens[larger.end]?.word === ',' ? 1 : 0;
  const number = readNumbers(tokens, larger.end + joint)[0];
  const next = number && number.whole?.form !== 'run' ? readUnit(tokens, unitAt(tokens, number)) : undefined;
  const [from, to] = [sizes[unit.unit], next && sizes[next.unit]];
  if (!number || !next || !from || !to || from.of !== to.of) return undefined;
  if (unit.times.mul(from.size).compare(next.times.mul(to.size)) <= 0) return undefined;
  const rest = withUnit(tokens, number);
  const last = sizes[rest.unit ?? next.unit] ?? to;
  return {
    ...rest,
    start: larger.start,
    numberAt: larger.numberAt,
    number: larger.number,
    value: larger.value.mul(from.size).div(last.size).add(rest.value),
  };
}

/** "half an inch", "three quarters of an inch", "a 3-inch tube". */
function unitAt(tokens: readonly Token[], number: NumberReading): number {
  let at = number.end;
  if (number.part) {
    if (tokens[at]?.word === 'of') at += 1;
    const article = classOf(tokens[at])?.is === 'article';
    return article && readUnit(tokens, at + 1) ? at + 1 : at;
  }
  const counted = tokens[at]?.word === 'of' && counts.has(tokens[at - 1]?.word ?? '');
  const hyphen = tokens[at]?.word === '-' && tokens[at]?.glued && tokens[at + 1]?.kind === 'word';
  return counted || hyphen ? at + 1 : at;
}

/** "a couple of thou", "two dozen of". */
const counts = new Set(['couple', 'pair', 'dozen', 'dozens']);

function amount(
  tokens: readonly Token[],
  number: NumberReading,
  end: number,
  value: Fraction,
  unit: UnitReading | undefined,
): QuantityReading {
  const times = unit?.times;
  return {
    start: number.start,
    numberAt: number.start,
    end: unit?.end ?? end,
    value: times ? value.mul(times) : value,
    soundsLike: times ? number.soundsLike.map((like) => like.mul(times)) : number.soundsLike,
    number,
    typed: tokens[number.start]?.kind !== 'word',
    ...(unit ? { unit: unit.unit, unitWord: unit.said } : {}),
    ...(number.resolution ? { resolution: number.resolution } : {}),
  };
}

/** "six foot two and a quarter", `7'-4 3/8"`, "4ft 11in", "six feet and two inches". Bare inches only below twelve. */
function feetAndInches(tokens: readonly Token[], feet: QuantityReading, unit: UnitReading): QuantityReading | undefined {
  if (unit.times.compare(12) !== 0) return undefined;
  const joint = tokens[feet.end];
  // "8 ft. 6 in."
  const stop = joint?.word === '.' && joint.glued && tokens[feet.end + 1]?.kind === 'number';
  const joined = classOf(joint)?.is === 'and' || joint?.word === ',' || stop;
  const dash = tokens[feet.end]?.word === '-' && isNumberWord(tokens[feet.end + 1]);
  const number = readNumbers(tokens, joined || dash ? feet.end + 1 : feet.end).find(
    ({ value }) => value.compare(12) < 0 && value.s >= 0n,
  );
  if (!number || number.whole?.form === 'run') return undefined;
  const inches = readUnit(tokens, unitAt(tokens, number));
  const said = inches?.unit === 'in' && inches.times.compare(1) === 0;
  if (inches ? !said : joined && !number.part) return undefined;
  return {
    ...feet,
    end: inches?.end ?? number.end,
    value: feet.value.add(number.value),
    soundsLike: [],
    ...(number.resolution ? { resolution: number.resolution } : {}),
  };
}

/** "two inches and three eighths", "a foot and a half", "a ton and three quarters": the part is of the unit just said. */
function partAfterUnit(tokens: readonly Token[], whole: QuantityReading, unit: UnitReading): QuantityReading | undefined {
  if (classOf(tokens[whole.end])?.is !== 'and') return undefined;
  const part = readParts(tokens, whole.end + 1).at(-1);
  if (!part || whole.number.shape === 'fraction') return undefined;
  const again = readUnit(tokens, part.end);
  const value = new Fraction(part.numerator, part.denominator).mul(unit.times);
  return {
    ...whole,
    end: again?.unit === unit.unit ? again.end : part.end,
    value: whole.value.add(value),
    resolution: `1/${part.denominator}`,
  };
}

/** "inch and three quarters", "an inch", "a foot and a half", "ton and a half": one of the unit. */
export function unitAndPart(tokens: readonly Token[], at: number): QuantityReading | undefined {
  const article = classOf(tokens[at])?.is === 'article' ? 1 : 0;
  const unit = readUnit(tokens, at + article);
  // "a mi", "a g": letters are no unit by themselves.
  if (!unit || !/^.{3}|^[^aeiou]{2}$/.test(unit.said) || tokens[at + article]?.kind === 'mark') return undefined;
  const one: NumberReading = {
    start: at,
    end: at + article,
    value: new Fraction(1),
    shape: 'whole',
    shop: false,
    soundsLike: [],
  };
  const whole = amount(tokens, one, one.end, one.value, unit);
  const found = partAfterUnit(tokens, whole, unit) ?? (article ? (feetAndInches(tokens, whole, unit) ?? whole) : undefined);
  return found && (article || found !== whole) ? found : undefined;
}

/** "ten to twelve foot pounds", "0.001-0.005", "between ninety and one twenty". The unit may be said once, at the end. */
function readRange(tokens: readonly Token[], at: number, joint?: 'and'): QuantityReading | undefined {
  const lows = joint ? lowEnds(tokens, at, joint) : [readAmount(tokens, at)];
  for (const low of lows) {
    if (!low || !(joint ? tokens[low.end]?.word === joint || ranges.has(tokens[low.end]?.word ?? '') : isRange(tokens, low)))
      continue;
    const high = readAmount(tokens, afterHedge(tokens, low.end + 1));
    const joined = high && joinRange(low, high);
    if (joined && joined.to.compare(joined.value) > 0) return joined;
  }
  return undefined;
}

/** "between two and about five thou". */
const afterHedge = (tokens: readonly Token[], at: number) => before.longest(tokens, at)?.end ?? at;

/** Before "and" the shorter reading may be the right one: "between two and five thou". */
function lowEnds(tokens: readonly Token[], at: number, joint: string): QuantityReading[] {
  return readNumbers(tokens, at)
    .map((number) => withUnit(tokens, number))
    .filter(({ end }) => tokens[end]?.word === joint || ranges.has(tokens[end]?.word ?? ''));
}

function isRange(tokens: readonly Token[], low: QuantityReading): boolean {
  const mark = tokens[low.end];
  if (!mark || !ranges.has(mark.word)) return false;
  if (mark.word !== '-') return true;
  const next = tokens[afterHedge(tokens, low.end + 1)];
  return next?.kind === 'number' && low.number.shape !== 'fraction';
}

/** "one to five thousandths": the low end shares what the high end is a part of. */
function lowValue(low: QuantityReading, high: QuantityReading): Fraction {
  const part = high.number.whole ? undefined : high.number.part;
  const shares = part && low.number.shape === 'whole' && low.unit === undefined && low.value.compare(high.value) >= 0;
  return shares ? low.value.div(part.denominator) : low.value;
}

function joinRange(low: QuantityReading, high: QuantityReading): QuantityReading & { to: Fraction } {
  const shared = low.unit === undefined && high.unit !== undefined;
  const times = shared ? high.value.div(high.number.value) : undefined;
  return {
    ...low,
    ...(shared && high.unit ? { unit: high.unit, unitWord: high.unitWord ?? '' } : {}),
    value: times && high.number.value.n !== 0n ? lowValue(low, high).mul(times) : lowValue(low, high),
    to: high.value,
    end: high.end,
    soundsLike: [],
  };
}

/** What may follow: "strong", "or better", "plus or minus a sixteenth". */
function readTail(tokens: readonly Token[], quantity: QuantityReading): QuantityReading {
  const part = classOf(tokens[quantity.end])?.is === 'and' ? hedgedPart(tokens, quantity) : undefined;
  if (part) return part;
  if (tokens[quantity.end]?.word === 'below' && tokens[quantity.end + 1]?.word === 'zero')
    return { ...quantity, end: quantity.end + 2, value: quantity.value.neg() };
  const comma = tokens[quantity.end]?.word === ',' ? 1 : 0;
  const tolerance = tolerances.longest(tokens, quantity.end + comma);
  const within = tolerance && readAmount(tokens, tolerance.end);
  if (tolerance && within) {
    return { ...quantity, end: within.end, plusMinus: within.value };
  }
  const hedge = after.longest(tokens, quantity.end);
  if (!hedge || isNumberWord(tokens[hedge.end])) return quantity;
  return { ...quantity, end: hedge.end, ...(hedge.meaning !== 'none' ? { hedge: hedge.meaning } : {}) };
}
