// Thread pitch: how far a nut moves for a part of a turn, and the other way round.
import { Fraction } from '../quantity/index.ts';
import { threadOf } from './fastener.ts';

/** A turn of the nut: whole turns, degrees, flats of a hexagon, or slots of a castle nut. */
export type Rotation =
  | { readonly turns: Fraction }
  | { readonly degrees: Fraction }
  | { readonly flats: Fraction }
  | { readonly slots: Fraction; readonly positions: number };

/** Parts of one whole turn. */
export function turnsOf(rotation: Rotation): Fraction {
  if ('turns' in rotation) return rotation.turns;
  if ('degrees' in rotation) return rotation.degrees.div(360);
  if ('flats' in rotation) return rotation.flats.div(6);
  return rotation.slots.div(rotation.positions);
}

/** Inches along the thread. */
export function travelOf(rotation: Rotation, tpi: Fraction): Fraction {
  return turnsOf(rotation).div(tpi);
}

/** Turns that move the nut so many inches. */
export function turnsFor(travel: Fraction, tpi: Fraction): Fraction {
  return travel.mul(tpi);
}

/** Threads per inch of "1-14", "1-1/2-12", or a metric thread's 25.4 over its pitch; undefined when it reads as no thread. */
export function threadsPerInch(thread: string): Fraction | undefined {
  const row = threadOf(thread);
  if (row?.tpi) return new Fraction(row.tpi);
  const inch = /^\d+(?:[- ]\d+\/\d+|\/\d+)?-(\d+)$/.exec(thread.trim());
  if (inch?.[1]) return positive(inch[1]);
  const metric = /^m\d+x(\d+(?:\.\d+)?)$/i.exec(thread.trim());
  const pitch = metric?.[1] === undefined ? undefined : positive(metric[1]);
  return pitch && new Fraction('25.4').div(pitch);
}

function positive(text: string): Fraction | undefined {
  const value = new Fraction(text);
  return value.compare(0) > 0 ? value : undefined;
}

/** Stops in one turn: castle nut of six slots over one cross hole, or over two at right angles; a washer that can be flipped doubles its holes. */
export const lockPositions = { oneHole: 6, twoHoles: 12 } as const;
