// Exact quantities: a fraction beside its unit. Nothing is rounded here; rounding belongs to speaking and showing.
import Fraction from 'fraction.js';
import { type UnitId, units } from '#data';

export type { UnitId };
export { Fraction };

/** An exact amount. `value` is a fraction in lowest terms. */
export interface Quantity {
  readonly value: Fraction;
  readonly unit: UnitId;
}

interface Scale {
  readonly dimension: string;
  readonly factor: Fraction;
  readonly offset: Fraction;
}

const scales = new Map<string, Scale>(
  units.map(({ id, dimension, factor, offset }) => [
    id,
    { dimension, factor: new Fraction(factor), offset: new Fraction(offset ?? '0') },
  ]),
);

/** "579/8" in inches, say. @throws TypeError when the text is no number. */
export function quantity(value: string | number | Fraction, unit: UnitId): Quantity {
  try {
    return { value: new Fraction(value), unit };
  } catch (cause) {
    throw new TypeError(`expected an exact number such as "579/8", got ${JSON.stringify(value)}`, { cause });
  }
}

/** "length", "mass", "torque" ... @throws TypeError for a unit that data/units.json does not have. */
export function dimensionOf(unit: UnitId): string {
  return scaleOf(unit).dimension;
}

/** The same amount in another unit of its dimension, exactly. @throws TypeError when the dimensions differ. */
export function convert(amount: Quantity, unit: UnitId): Quantity {
  if (amount.unit === unit) return amount;
  const from = scaleOf(amount.unit);
  const into = scaleOf(unit);
  if (from.dimension !== into.dimension) {
    throw new TypeError(`cannot turn ${amount.unit} (${from.dimension}) into ${unit} (${into.dimension})`);
  }
  const inBase = amount.value.mul(from.factor).add(from.offset);
  return { value: inBase.sub(into.offset).div(into.factor), unit };
}

function scaleOf(unit: UnitId): Scale {
  const scale = scales.get(unit);
  if (!scale) throw new TypeError(`data/units.json has no unit '${unit}'`);
  return scale;
}
