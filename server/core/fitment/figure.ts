// A number read quickly and compared exactly: its size in floating point decides where two lie clearly apart, the fraction
// where they lie close. A rack of thousands is judged without a fraction made for each value.
import type { Fraction } from '../quantity/index.ts';
import { numberOf } from './number.ts';

export interface Figure {
  readonly near: number;
  /** What it is exactly: known, or still to be read from its text when two lie close. */
  readonly exact?: Fraction;
  readonly text?: string;
}

export const figure = (exact: Fraction): Figure => ({ near: exact.valueOf(), exact });

const quotient = /^(-?\d+)\/([1-9]\d*)$/;

/** Undefined where the text is no exact number. */
export function figureOf(text: string): Figure | undefined {
  const parts = quotient.exec(text);
  const near = parts ? Number(parts[1]) / Number(parts[2]) : Number(text);
  if (!parts && !/^-?\d+(?:\.\d+)?$/.test(text)) return undefined;
  return { near, text };
}

/** Share of a number's size: far more than floating point can be off, far less than any tape can tell. */
const close = 1e-9;

const exactOf = ({ exact, text }: Figure): Fraction | undefined => exact ?? numberOf(text ?? '');

/** Below 0, 0 or above 0, exactly. */
export function compare(a: Figure, b: Figure): number {
  const apart = a.near - b.near;
  if (Math.abs(apart) > close * (1 + Math.abs(a.near))) return apart;
  const exact = exactOf(b);
  return exact ? (exactOf(a)?.compare(exact) ?? apart) : apart;
}
