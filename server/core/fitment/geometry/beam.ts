// What halves and rim readings say about the beam: shifted, bent, toed.
import type { Fraction, Quantity } from '../../quantity/index.ts';

/** Two half measurements, from the trailer's middle line to each hub face, in one unit. */
export interface Halves {
  readonly whole: Quantity;
  /** How far the beam stands to the left of the middle; negative: to the right. */
  readonly toLeft: Quantity;
  readonly straight: boolean;
}

/** Hub face from its halves. Not straight: the sides differ by more than `allowed`, so the beam is shifted or bent. */
export function fromHalves(left: Quantity, right: Quantity, allowed: Quantity): Halves {
  if (left.unit !== right.unit || left.unit !== allowed.unit)
    throw new TypeError('expected both halves and the allowance in one unit');
  const difference = left.value.sub(right.value);
  const { unit } = left;
  return {
    whole: { value: left.value.add(right.value), unit },
    toLeft: { value: difference.div(2), unit },
    straight: difference.abs().lte(allowed.value),
  };
}

/** Camber of a wheel from the distance to a plumb line at the rim's top and bottom: degrees, positive leans out at the top. */
export function camberDegrees(topIn: number, bottomIn: number, betweenIn: number): number {
  if (!(betweenIn > 0)) throw new TypeError(`expected a positive distance between the readings, got ${betweenIn}`);
  return (Math.asin((bottomIn - topIn) / betweenIn) * 180) / Math.PI;
}

/** Total toe: rear reading less front reading; positive is toe-in. */
export const toeIn = (front: Fraction, rear: Fraction): Fraction => rear.sub(front);
