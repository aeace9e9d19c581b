// Breakaway: the battery must hold every magnet for a quarter of an hour.
import type { Fraction } from '../quantity/index.ts';

export const breakawayRule = { minutes: 15, source: '49 CFR 393.43(d); D.C. Municipal Regulations 18-721' } as const;

export interface BreakawayCharge {
  /** Ampere hours taken by the rule's time, without reserve. */
  readonly needed: Fraction;
  /** Minutes that a battery holds, ideal; less when cold or old. */
  readonly minutes?: Fraction;
}

/** Charge for the rule's time at a total current, and how long a battery (Ah) would hold. */
export function breakawayCharge(amps: Fraction, battery?: Fraction): BreakawayCharge {
  const needed = amps.mul(breakawayRule.minutes).div(60);
  return { needed, ...(battery && amps.compare(0) > 0 ? { minutes: battery.div(amps).mul(60) } : {}) };
}
