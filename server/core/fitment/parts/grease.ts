// Grease for a hub: the ring between spindle and hub bore, less the steel of the bearings.
import type { BearingRow } from '#data';
import { Fraction } from '../../quantity/index.ts';

/** Of a tapered bearing's own ring, about this much is steel: common practice, no source. */
const steelShare = new Fraction(2, 3);

/** Square inches of ring times length stay rational; only pi is not. Volume in cubic inches. */
function ring(outer: Fraction, inner: Fraction, length: Fraction): number {
  return (Math.PI / 4) * outer.mul(outer).sub(inner.mul(inner)).mul(length).valueOf();
}

/** Cubic inches of grease to pack both bearings by hand, the space between them left as it is. */
export function packVolume(inner: BearingRow, outer: BearingRow): number {
  const room = (row: BearingRow) => ring(new Fraction(row.od), new Fraction(row.bore), new Fraction(row.width));
  return (room(inner) + room(outer)) * (1 - steelShare.valueOf());
}

/** Cubic inches to fill the hub between the bearings as well: mean bore of the cups, mean journal, `between` inches apart. */
export function fillVolume(inner: BearingRow, outer: BearingRow, between: Fraction): number {
  const mean = (a: string, b: string) => new Fraction(a).add(b).div(2);
  return packVolume(inner, outer) + ring(mean(inner.od, outer.od), mean(inner.bore, outer.bore), between);
}

/** Ounces by weight, at 0.9 g a millilitre (common practice, no source). */
export const ouncesOf = (cubicInches: number): number => (cubicInches * 16.387064 * 0.9) / 28.349523125;
