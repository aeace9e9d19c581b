// A number that is known only to lie between two ends. An open end is null. fraction.js does the arithmetic.
import type { Fraction } from '../quantity/index.ts';

export interface Span {
  readonly low: Fraction | null;
  readonly high: Fraction | null;
}

export const exactly = (value: Fraction): Span => ({ low: value, high: value });

export function add(a: Span, b: Span): Span {
  return through(a, b, (x, y) => x.add(y));
}

export function subtract(a: Span, b: Span): Span {
  const { low, high } = each(b, (end) => end.neg());
  return add(a, { low: high, high: low });
}

/** Times a number above zero. */
export function scale(span: Span, by: Fraction | number): Span {
  return each(span, (end) => end.mul(by));
}

/** One sum where the two ends are one. */
function each({ low, high }: Span, op: (end: Fraction) => Fraction): Span {
  const first = low && op(low);
  return { low: first, high: high === low ? first : high && op(high) };
}

/** The larger of the two, wherever each may lie. */
export function larger(a: Span, b: Span): Span {
  const low = a.low && b.low ? (a.low.gt(b.low) ? a.low : b.low) : (a.low ?? b.low);
  const high = a.high && b.high ? (a.high.gt(b.high) ? a.high : b.high) : null;
  return { low, high };
}

function through(a: Span, b: Span, op: (x: Fraction, y: Fraction) => Fraction): Span {
  const low = a.low && b.low ? op(a.low, b.low) : null;
  if (a.low === a.high && b.low === b.high) return { low, high: low };
  return { low, high: a.high && b.high ? op(a.high, b.high) : null };
}
