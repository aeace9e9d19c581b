// Weight between coupler and axle, by moments about the coupler. Exact; all distances in one unit, all weights in one unit.
import { Fraction } from '../quantity/index.ts';

export interface Balance {
  readonly axle: Fraction;
  readonly tongue: Fraction;
  /** Of the whole weight, percent. */
  readonly tonguePercent: Fraction;
}

/** The whole weight stands `centre` behind the coupler, the axle (or the middle of a tandem) `axle` behind it. */
export function balance(weight: Fraction, centre: Fraction, axle: Fraction): Balance {
  if (weight.lte(0) || axle.lte(0) || centre.lt(0))
    throw new TypeError('expected a positive weight and distances behind the coupler');
  return fromTongue(weight, weight.sub(weight.mul(centre).div(axle)));
}

/** The same from the tongue weight as weighed. */
export function fromTongue(weight: Fraction, tongue: Fraction): Balance {
  return { axle: weight.sub(tongue), tongue, tonguePercent: tongue.mul(100).div(weight) };
}

/** How far behind the coupler the weight's middle stands. */
export const centreOf = (weight: Fraction, tongue: Fraction, axle: Fraction): Fraction =>
  axle.mul(weight.sub(tongue)).div(weight);

/** Where the axle would have to be for this share (percent) on the tongue; the weight's middle stays where it is. */
export const axleForShare = (centre: Fraction, percent: Fraction): Fraction =>
  centre.div(new Fraction(100).sub(percent).div(100));

/** Tongue weight gained when a load is moved so far toward the coupler. */
export const movedForward = (load: Fraction, by: Fraction, axle: Fraction): Fraction => load.mul(by).div(axle);

/** A pair of axles on an equaliser share the load inversely to its arms; equal arms, equal shares. */
export function tandemShare(
  load: Fraction,
  frontArm: Fraction,
  rearArm: Fraction,
): { readonly front: Fraction; readonly rear: Fraction } {
  const whole = frontArm.add(rearArm);
  return { front: load.mul(rearArm).div(whole), rear: load.mul(frontArm).div(whole) };
}
