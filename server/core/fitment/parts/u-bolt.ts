// The U-bolt that holds this beam to this spring: size over the rod, inside width and leg length.
import { Fraction, type Quantity } from '../../quantity/index.ts';

/** All in inches. `seat`: the spring seat on the beam; `plate`: the tie plate; `nut`: nut and washer; `showing`: thread past the nut. */
export interface UBoltStack {
  readonly beam: Fraction;
  readonly seat: Fraction;
  readonly springPack: Fraction;
  readonly plate: Fraction;
  readonly nut: Fraction;
  readonly showing: Fraction;
}

export interface UBoltSize {
  /** Least inside width: the beam itself, round or square. */
  readonly insideWidth: Quantity;
  /** From the inside of the bend to the end of the thread. */
  readonly leg: Quantity;
  /** The leg as it is ordered: the next quarter inch. */
  readonly order: Quantity;
}

const quarter = new Fraction(1, 4);

/** Leg = beam + seat + spring pack + plate + nut + thread showing. */
export function uBoltFor({ beam, seat, springPack, plate, nut, showing }: UBoltStack): UBoltSize {
  const stack = [seat, springPack, plate, nut, showing];
  const leg = stack.reduce((sum, part) => sum.add(part), beam);
  const inch = (value: Fraction): Quantity => ({ value, unit: 'in' });
  return { insideWidth: inch(beam), leg: inch(leg), order: inch(leg.div(quarter).ceil().mul(quarter)) };
}
