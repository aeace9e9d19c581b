// Whether a value can belong to a field, and which of several fields it fits best.
import { type FieldId, fieldOf } from '#data';
import { fitsUnit, holds, isBeyond, isPlausible, wholeIfCounted } from '../fields.ts';
import type { Item } from '../items.ts';

export const compatible = (fields: readonly FieldId[], value: Item): boolean => fields.some((field) => fits(field, value));

export function fits(field: FieldId, value: Item): boolean {
  const kind = holds(field);
  if (value.is === 'choice') return value.field === field;
  if (value.is === 'stamp') return kind === value.stamp.holds;
  if (value.is !== 'number') return false;
  if (kind === 'bearing' || kind === 'serial') return value.quantity.unit === undefined && partNumber(value) !== undefined;
  const row = fieldOf(field);
  const { value: size, unit, number } = value.quantity;
  // A sixteenth of a pound is never said of a torque or a rating: it is the size of what is named.
  const part = number.shape === 'fraction' && !number.whole && unit === undefined && (row.unit === 'lbf.ft' || row.unit === 'lb');
  return kind === 'number' && fitsUnit(row, unit) && !part && wholeIfCounted(field, size.toFraction());
}

/** Digits of a bare whole number that may be stamped on a part: "25580". */
export function partNumber(value: Item): string | undefined {
  const whole = value.is === 'number' && value.quantity.number.shape === 'whole' ? value.quantity.number.whole : undefined;
  return whole && whole.digits.length >= 3 ? whole.digits : undefined;
}

/** The first field that fits and finds the value plausible, else the first that fits. A name that several share is nobody's where
 * the value is far beyond them all: "ten inch brakes" are no lining. */
export function bestField(fields: readonly FieldId[], value: Item): FieldId | undefined {
  const fitting = fields.filter((field) => fits(field, value));
  if (value.is !== 'number') return fitting[0];
  const { value: size, unit } = value.quantity;
  const plausible = fitting.find((field) => isPlausible(fieldOf(field), size, unit));
  return plausible ?? fitting.find((field) => fields.length === 1 || !isBeyond(fieldOf(field), size.div(2), unit));
}

/** A number that is plausible for a field, whatever it was said of. */
export function isPlausibleFor(value: Item, field: FieldId): boolean {
  return value.is === 'number' && fits(field, value) && isPlausible(fieldOf(field), value.quantity.value, value.quantity.unit);
}
