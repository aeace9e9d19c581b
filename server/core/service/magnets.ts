// Electric brake magnets: resistance, current, and what a wrong current says.
import { type BrakeMagnetRow, brakeMagnets } from '#data';
import { Fraction } from '../quantity/index.ts';
import { type Range, rangeOf, standingOf } from './ranges.ts';

/** Resistance band of a drum size (nominal inches, "10"); both sizes where it is not known. */
export function magnetRows(drum?: string): readonly BrakeMagnetRow[] {
  const rows = brakeMagnets.filter(({ drums }) => drum === undefined || drums.some((one) => new Fraction(one).equals(drum)));
  return rows.length > 0 ? rows : brakeMagnets;
}

export interface MagnetOhms {
  readonly code: 'magnetGood' | 'magnetLow' | 'magnetHigh' | 'magnetOpen' | 'magnetShorted' | 'magnetDepends';
  readonly ohms: Fraction;
  readonly ranges: readonly Range[];
}

/** Below half an ohm a coil is shorted, above fifty it is broken (common practice, no source). */
const shorted = new Fraction(1, 2);
const broken = new Fraction(50);

/** Judges one magnet's resistance, with a tenth of an ohm for meter and leads. */
export function judgeOhms(ohms: Fraction, drum?: string): MagnetOhms {
  const ranges = magnetRows(drum).map((row) => rangeOf(row.low, row.high, 'ohm', row));
  const meter = new Fraction(1, 10);
  const wide = ranges.map((range) => ({ ...range, low: range.low.sub(meter), high: range.high.add(meter) }));
  const standing = standingOf({ value: ohms, unit: 'ohm' }, wide);
  const code = { within: 'magnetGood', low: 'magnetLow', high: 'magnetHigh', depends: 'magnetDepends' } as const;
  if (ohms.compare(shorted) < 0) return { code: 'magnetShorted', ohms, ranges };
  if (ohms.compare(broken) > 0) return { code: 'magnetOpen', ohms, ranges };
  return { code: standing ? code[standing] : 'magnetDepends', ohms, ranges };
}

/** Total current of n magnets side by side: n V / R, the band from the band of R. Amperes. */
export interface BrakeCurrent {
  readonly brakes: number;
  readonly volts: Fraction;
  readonly each: { readonly low: Fraction; readonly high: Fraction };
  readonly total: { readonly low: Fraction; readonly high: Fraction };
  /** Resistance of all together, of the lowest that the band allows. */
  readonly together: Fraction;
  readonly rows: readonly string[];
  readonly sources: readonly string[];
}

export function brakeCurrent(brakes: number, volts: Fraction, drum?: string): BrakeCurrent {
  const rows = magnetRows(drum);
  const low = rows.reduce((least, row) => min(least, new Fraction(row.low)), new Fraction(rows[0]?.low ?? '1'));
  const high = rows.reduce((most, row) => max(most, new Fraction(row.high)), new Fraction(rows[0]?.high ?? '1'));
  const each = { low: volts.div(high), high: volts.div(low) };
  return {
    brakes,
    volts,
    each,
    total: { low: each.low.mul(brakes), high: each.high.mul(brakes) },
    together: low.div(brakes),
    rows: rows.map(({ id }) => id),
    sources: [...new Set(rows.map(({ source }) => source))],
  };
}

export interface CurrentVerdict {
  readonly code: 'currentGood' | 'currentNone' | 'currentOneShort' | 'currentLow' | 'currentHigh';
  readonly amps: Fraction;
  readonly perBrake: Fraction;
  /** How many magnets' worth is missing, where it is a whole number of them. */
  readonly missing: number;
  readonly expected: BrakeCurrent;
}

/** Judges a total brake current. Wire and connectors take some: down to three quarters of the lowest expected passes (common practice, no source). */
export function judgeCurrent(amps: Fraction, expected: BrakeCurrent): CurrentVerdict {
  const { total, each, brakes } = expected;
  const perBrake = amps.div(brakes);
  const missing = missingMagnets(amps, expected);
  const verdict = { amps, perBrake, missing, expected };
  if (amps.compare(each.low.div(4)) < 0) return { code: 'currentNone', ...verdict };
  if (amps.compare(total.high.mul('1.05')) > 0) return { code: 'currentHigh', ...verdict };
  if (amps.compare(total.low.mul('0.9')) >= 0) return { code: 'currentGood', ...verdict };
  return { code: missing > 0 ? 'currentOneShort' : 'currentLow', ...verdict };
}

/** The number of dead magnets that explains a current: what the rest would draw, within five in a hundred. */
function missingMagnets(amps: Fraction, { brakes, each }: BrakeCurrent): number {
  for (let dead = 1; dead < brakes; dead += 1) {
    const working = brakes - dead;
    if (amps.compare(each.low.mul(working).mul('0.95')) >= 0 && amps.compare(each.high.mul(working).mul('1.05')) <= 0)
      return dead;
  }
  return 0;
}

const min = (one: Fraction, other: Fraction): Fraction => (one.compare(other) <= 0 ? one : other);
const max = (one: Fraction, other: Fraction): Fraction => (one.compare(other) >= 0 ? one : other);
