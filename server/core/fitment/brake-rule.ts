// Whether a trailer may go without brakes: the federal rule for commercial vehicles in interstate commerce.
import { convert, Fraction, type Quantity } from '../quantity/index.ts';
import type { Rules } from './types.ts';

export interface BrakeQuestion {
  readonly gross: Quantity;
  /** On the trailer's axles: one axle's weight for a semitrailer, the sum for a full trailer. */
  readonly onAxles: Quantity;
  /** Sum of the towing vehicle's axle weights. */
  readonly towing: Quantity;
}

/** 49 CFR 393.42(b)(3), (4): none needed up to 3,000 lb gross while the axle weight is at most 40 percent of the towing vehicle's. State and local rules may be stricter. */
export function brakesRequired(
  { gross, onAxles, towing }: BrakeQuestion,
  { brakeExemptGross, brakeExemptShare }: Rules,
): boolean {
  const lb = (amount: Quantity): Fraction => convert(amount, 'lb').value;
  if (lb(gross).gt(brakeExemptGross.value)) return true;
  return lb(onAxles).gt(lb(towing).mul(brakeExemptShare.value).div(100));
}

const light = { upTo: new Fraction(12000), times: new Fraction('1.75') };
const heavy = { under: new Fraction(20001), times: new Fraction('1.25') };

/** 49 CFR 393.48(d): surge brakes only up to so many times the towing vehicle's rating, and not at all from 20,001 lb. */
export function surgeBrakesAllowed(trailerRating: Quantity, towingRating: Quantity): boolean {
  const [trailer, towing] = [convert(trailerRating, 'lb').value, convert(towingRating, 'lb').value];
  if (trailer.lte(light.upTo)) return trailer.lte(towing.mul(light.times));
  return trailer.lt(heavy.under) && trailer.lte(towing.mul(heavy.times));
}
