// A quantity as said: hedge, sign, number, unit, feet-and-inches, range, tolerance. The value stays exact and in the unit said.
import type Fraction from 'fraction.js';
import { lexicon } from '../lexicon.ts';
import type { Token } from '../tokens.ts';
import type { Hedge } from '../types.ts';
import { denominators } from '../words/fractions.ts';
import { hedgesAfter, hedgesBefore, rangeWords, toleranceWords } from '../words/hedges.ts';
import { type Amount, withUnit } from './amount.ts';
import { classOf, isNumberWord, numberOpeners, numberVocabulary } from './classes.ts';
import { type Plausible, readAmount } from './likeliest.ts';
import { readNumbers } from './number.ts';
import { unitVocabulary } from './unit.ts';

export interface QuantityReading extends Amount {
  readonly hedge?: Hedge | undefined;
  readonly to?: Fraction;
  readonly plusMinus?: Fraction;
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
  ...numberOpeners,
  'between',
  'from',
]);

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
  return readTail(tokens, hedge ? { ...simple, start: at, hedge: hedgeOf(hedge) ?? simple.hedge } : simple);
}

const hedgeOf = ({ meaning }: { readonly meaning: Hedge | 'none' }): Hedge | undefined =>
  meaning === 'none' ? undefined : meaning;

/** "seventy-two and a strong eighth". */
function hedgedPart(tokens: readonly Token[], whole: QuantityReading): QuantityReading | undefined {
  const hedge = before.longest(tokens, whole.end + 1);
  const part = hedge && whole.number.shape === 'whole' ? partBehindHedge(tokens, whole.end + 1, hedge.end) : undefined;
  if (!hedge || !part || hedge.meaning === 'none') return undefined;
  const { value, end, resolution } = part;
  return { ...whole, end, value: whole.value.add(value), hedge: hedge.meaning, resolution: resolution ?? whole.resolution };
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
  if (mark.kind !== 'mark') return true;
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
    ...(shared ? { unit: high.unit, unitWord: high.unitWord } : {}),
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
  return { ...quantity, end: hedge.end, hedge: hedgeOf(hedge) ?? quantity.hedge };
}
