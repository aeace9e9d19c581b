// A joint is brought up in stages, so that it seats level.
import type { Fraction } from '../quantity/index.ts';

/** One stage of a tightening, in the unit of its final. */
export interface TorqueStage {
  readonly low: Fraction;
  readonly high: Fraction;
}

/** A third, two thirds and the whole, to the nearest five below the final: common practice where no document gives stages. */
export function thirds(low: Fraction, high: Fraction): readonly TorqueStage[] {
  const part = (of: number) => low.mul(of).div(15).round().mul(5);
  return [
    { low: part(1), high: part(1) },
    { low: part(2), high: part(2) },
    { low, high },
  ];
}
