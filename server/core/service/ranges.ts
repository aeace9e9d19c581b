// Published ranges and where a measured value falls among them. Documents that differ are kept apart, never averaged.
import { convert, Fraction, type Quantity, type UnitId } from '../quantity/index.ts';

/** What one document allows. `row` is the id of its row in data/. */
export interface Range {
  readonly low: Fraction;
  readonly high: Fraction;
  readonly unit: UnitId;
  readonly row: string;
  readonly source: string;
}

/** `depends`: some of the documents allow it and some do not. */
export type Standing = 'within' | 'low' | 'high' | 'depends';

/** Where an amount falls; undefined where nothing is published. @throws TypeError when the dimensions differ. */
export function standingOf(amount: Quantity, ranges: readonly Range[]): Standing | undefined {
  const standings = new Set(ranges.map((range) => standingIn(amount, range)));
  const [only] = standings;
  return standings.size > 1 ? 'depends' : only;
}

function standingIn(amount: Quantity, { low, high, unit }: Range): 'within' | 'low' | 'high' {
  const { value } = convert(amount, unit);
  if (value.compare(low) < 0) return 'low';
  return value.compare(high) > 0 ? 'high' : 'within';
}

/** What every document allows, or undefined where they leave no room in common. */
export function commonRange(ranges: readonly Range[]): Range | undefined {
  const [first] = ranges;
  if (!first) return undefined;
  const low = ranges.reduce((most, range) => (range.low.compare(most) > 0 ? range.low : most), first.low);
  const high = ranges.reduce((least, range) => (range.high.compare(least) < 0 ? range.high : least), first.high);
  if (low.compare(high) > 0 || (low.equals(high) && ranges.length > 1)) return undefined;
  const named = ranges.filter((range) => range.low.equals(low) || range.high.equals(high));
  return { ...first, low, high, row: joined(named.map(({ row }) => row)), source: joined(named.map(({ source }) => source)) };
}

/** Exact range from table text. */
export function rangeOf(
  low: string,
  high: string,
  unit: UnitId,
  { id, source }: { readonly id: string; readonly source: string },
): Range {
  return { low: new Fraction(low), high: new Fraction(high), unit, row: id, source };
}

function joined(texts: readonly string[]): string {
  return [...new Set(texts)].join('; ');
}
