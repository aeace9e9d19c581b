// What a reading cannot tell: half of what the tape or dial resolves, carried into the result.
import { Fraction } from '../quantity/index.ts';

/** Standard uncertainty of one reading at a resolution: half of it, rectangular (NIST TN 1297). */
export function readingUncertainty(resolution: Fraction): number {
  return resolution.valueOf() / 2 / Math.sqrt(3);
}

/** Expanded (k = 2) uncertainty of a sum or difference of readings, to the ten-thousandth, in their unit. */
export function expanded(...standard: readonly number[]): Fraction {
  const combined = Math.sqrt(standard.reduce((sum, one) => sum + one * one, 0));
  return new Fraction(Math.round(2 * combined * 1e4), 1e4);
}

/** `unsure`: the limit lies within what the readings cannot tell. */
export type LimitStanding = 'within' | 'beyond' | 'unsure';

/** A size held against a limit, with its uncertainty. */
export function againstLimit(size: Fraction, limit: Fraction, uncertainty: Fraction): LimitStanding {
  if (size.sub(limit).abs().compare(uncertainty) <= 0) return 'unsure';
  return size.compare(limit) <= 0 ? 'within' : 'beyond';
}
