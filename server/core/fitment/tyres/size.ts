// How big a tyre is, as far as its designation or the table says; and what another size would change.
import { letterTyres, tyreSizes } from '#data';
import { type Fraction, type Quantity, quantity } from '../../quantity/index.ts';
import { parseTyre, type TyreSize } from './designation.ts';

export interface TyreFigures {
  readonly size: TyreSize;
  /** Inches; the width as it is named, absent where the size does not name one. */
  readonly width?: Quantity;
  readonly sidewall?: Quantity;
  readonly overall?: Quantity;
  /** The metric size that took a letter size's place. */
  readonly replacedBy?: string;
  readonly source: string;
}

const formula = 'height = width x aspect / 100, twice that and the rim; a real tyre is within about 1 percent';
const inch = (value: Fraction): Quantity => ({ value, unit: 'in' });

/** The figures of a designation. Undefined where it is none. */
export function tyreFigures(text: string): TyreFigures | undefined {
  const size = parseTyre(text);
  if (!size) return undefined;
  if (size.form === 'letter') return byLetter(size);
  const width = size.width ? { width: inch(size.width) } : {};
  const overall = overallOf(size, text);
  if (!overall) return { size, ...width, source: 'the size does not say its diameter and the table does not have it' };
  const sidewall = inch(overall.value.sub(size.rim).div(2));
  return { size, ...width, sidewall, overall: overall, source: overall.source };
}

function overallOf(size: TyreSize, text: string): (Quantity & { readonly source: string }) | undefined {
  if (size.overall) return { ...inch(size.overall), source: 'the size says it' };
  if (size.form === 'metric' && size.width && size.aspect !== undefined) {
    return { ...inch(size.width.mul(size.aspect).div(50).add(size.rim)), source: formula };
  }
  const written = text.toUpperCase().replace(/\s.*$/, '');
  const row = tyreSizes.find(({ id }) => id === written || (id.split('/')[0] ?? '') + id.slice(id.indexOf('-')) === written);
  return row && { ...quantity(row.overall, 'in'), source: row.source };
}

function byLetter(size: TyreSize): TyreFigures {
  const id = `${size.letter ?? ''}${size.aspect ?? ''}-${size.rim.toFraction()}`;
  const row = letterTyres.find((one) => one.id === id);
  const figures = row && tyreFigures(row.metric);
  if (!row || !figures) return { size, source: 'no metric size is on file for this letter size' };
  return { ...figures, size, replacedBy: row.metric, source: `${row.source}; ${figures.source}` };
}

/** Turns a mile at this overall diameter, in; a loaded tyre is lower and turns about 3 percent more. */
export const turnsPerMile = (overall: Quantity): number => 63360 / (Math.PI * overall.value.valueOf());

/** Axle turns a minute at a road speed in mph. */
export const axleRpm = (overall: Quantity, mph: number): number => (turnsPerMile(overall) * mph) / 60;

export interface TyreChange {
  /** Inches: the axle and the trailer with it go up by half the difference of the diameters. */
  readonly rideHeight?: Quantity;
  /** Inches that each side loses toward spring and fender: half the difference of the widths. */
  readonly sideRoom?: Quantity;
  readonly sameRim: boolean;
}

/** What changes when `next` takes the place of `now`. */
export function compareTyres(now: TyreFigures, next: TyreFigures): TyreChange {
  const half = (a: Quantity | undefined, b: Quantity | undefined) => a && b && inch(b.value.sub(a.value).div(2));
  const rideHeight = half(now.overall, next.overall);
  const sideRoom = half(next.width, now.width);
  return { ...(rideHeight && { rideHeight }), ...(sideRoom && { sideRoom }), sameRim: now.size.rim.equals(next.size.rim) };
}
