// How the trailer will sit: by another drop, and with the springs on the other side of the beam.
import type { FieldId } from '#data';
import { Fraction, type Quantity } from '../quantity/index.ts';
import { basisOf } from './need.ts';
import type { Basis, Rules, Trailer } from './types.ts';

/** The axle asked about, in inches; left out, the old one's figures stand. */
export interface RideQuestion {
  readonly drop?: Fraction | undefined;
  readonly beam?: Fraction | undefined;
}

/** Inches. Higher is positive. */
export interface Ride extends Basis {
  readonly byDrop?: Quantity;
  /** What the springs under the beam instead of over it, or the other way, change: beam, spring pack and both seats. */
  readonly bySwap?: Quantity;
  /** Which way a swap goes from here: `raises` from under-slung to over-slung. */
  readonly swap?: 'raises' | 'lowers';
  /** Above the tyre at rest with the axle asked about, and what full bump leaves of it. */
  readonly aboveTyre?: Quantity;
  readonly aboveTyreAtBump?: Quantity;
  /** The same between beam and frame. */
  readonly toFrame?: Quantity;
  readonly toFrameAtBump?: Quantity;
}

const inch = (value: Fraction): Quantity => ({ value, unit: 'in' });

/** What the job's values tell of the ride height; what is missing is named. */
export function rideOf(trailer: Trailer, rules: Rules, asked: RideQuestion = {}): Ride {
  const of = (field: FieldId) => trailer.numbers.get(field)?.span.low ?? undefined;
  const drop = of('drop');
  const byDrop = drop && asked.drop ? drop.sub(asked.drop) : new Fraction(0);
  const [beam, pack] = [asked.beam ?? of('beamDiameter'), of('springPack')];
  const bySwap = beam && pack && beam.add(pack).add(rules.springSeat.value.mul(2));
  const slung = trailer.tokens.get('slung')?.text;
  const travel = rules.bumpRoom.value;
  const tyre = of('bumpClearance')?.add(byDrop);
  const frame = of('axleToFrame')?.sub(thicker(trailer, asked.beam));
  return {
    ...basisOf(trailer, ['drop', 'bumpClearance', 'slung', 'springPack', ...(asked.beam ? [] : (['beamDiameter'] as const))]),
    ...(drop && asked.drop && { byDrop: inch(byDrop) }),
    ...(bySwap && { bySwap: inch(bySwap) }),
    ...(slung !== undefined && { swap: slung === 'underSlung' ? ('raises' as const) : ('lowers' as const) }),
    ...(tyre && { aboveTyre: inch(tyre), aboveTyreAtBump: inch(tyre.sub(travel)) }),
    ...(frame && { toFrame: inch(frame), toFrameAtBump: inch(frame.sub(travel)) }),
  };
}

/** How much nearer to the frame a beam comes that is not as thick: nothing where it hangs below its springs. */
export function thicker(trailer: Trailer, beam: Fraction | undefined): Fraction {
  const old = trailer.numbers.get('beamDiameter')?.span.low;
  if (!beam || !old || trailer.tokens.get('slung')?.text === 'overSlung') return new Fraction(0);
  return beam.sub(old);
}
