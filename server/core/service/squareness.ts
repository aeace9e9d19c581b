// Is the axle square to the coupler: two diagonals, the angle it would drive at, and the move that mends it.
import { type AlignmentLimitRow, alignmentLimits } from '#data';
import { Fraction } from '../quantity/index.ts';
import { againstLimit, expanded, type LimitStanding, readingUncertainty } from './uncertainty.ts';

/** Inches: coupler to each spindle end; `spread` between the two measured points; `at` between the places that will be moved. */
export interface Diagonals {
  readonly left: Fraction;
  readonly right: Fraction;
  readonly spread?: Fraction;
  readonly at?: Fraction;
  /** What the tape was read to; a sixteenth when left out. */
  readonly resolution?: Fraction;
}

/** How far to bring one end, or half of it at each end, at the spindle and at the springs. */
export interface SquaringMove {
  readonly side: 'left' | 'right';
  readonly direction: 'forward';
  readonly oneEnd: Fraction;
  readonly eachEnd: Fraction;
  readonly oneEndAtSpring?: Fraction;
  readonly eachEndAtSpring?: Fraction;
}

/** `degrees` is the thrust angle, positive when the left end sits further back. */
export interface Squareness {
  readonly code: 'square' | 'squareUnsure' | 'notSquare';
  readonly difference: Fraction;
  readonly longer: 'left' | 'right' | 'equal';
  readonly uncertainty: Fraction;
  readonly limit: AlignmentLimitRow;
  readonly otherLimits: readonly AlignmentLimitRow[];
  readonly degrees?: number;
  readonly move?: SquaringMove;
}
/** So far apart that one of them is misread or misheard: nothing is moved by them. */
export interface ImpossibleDiagonals {
  readonly code: 'impossibleDiagonals';
  readonly difference: Fraction;
}

/** Spindle ends of no axle on the road stand further apart, inches (the widest vehicle without a permit, 23 CFR 658.15). */
const widest = new Fraction(102);
/** More than an eighth of the spread, seven degrees, no axle sits crooked: a reading is wrong (common practice, no source). */
const crookedest = new Fraction(1, 8);

const codes: Readonly<Record<LimitStanding, Squareness['code']>> = {
  within: 'square',
  unsure: 'squareUnsure',
  beyond: 'notSquare',
};

/** Judges two diagonals. The end with the longer one sits further back: it comes forward, or the other goes back. */
export function judgeSquareness(measured: Diagonals): Squareness | ImpossibleDiagonals {
  const { left, right, spread, resolution = new Fraction(1, 16) } = measured;
  const difference = left.sub(right).abs();
  if (difference.compare((spread ?? widest).mul(crookedest)) > 0) return { code: 'impossibleDiagonals', difference };
  const reading = readingUncertainty(resolution);
  const uncertainty = expanded(reading, reading);
  const limit = usualLimit('square');
  const standing = againstLimit(difference, new Fraction(limit.limit), uncertainty);
  const longer = left.equals(right) ? 'equal' : left.compare(right) > 0 ? 'left' : 'right';
  return {
    code: codes[standing],
    difference,
    longer,
    uncertainty,
    limit,
    otherLimits: alignmentLimits.filter(({ of, id }) => of === 'square' && id !== limit.id),
    ...(spread ? { degrees: thrustAngle(left, right, spread) } : {}),
    ...(longer === 'equal' ? {} : { move: moveFor(difference, longer, measured) }),
  };
}

/** Exact: D from the median of the triangle, then asin((L2 - R2) / (2 w D)). Degrees. */
export function thrustAngle(left: Fraction, right: Fraction, spread: Fraction): number {
  const squares = [left.valueOf() ** 2, right.valueOf() ** 2] as const;
  const width = spread.valueOf();
  const distance = Math.sqrt((squares[0] + squares[1]) / 2 - (width / 2) ** 2);
  return (Math.asin((squares[0] - squares[1]) / (2 * width * distance)) * 180) / Math.PI;
}

/** Half at each end, or all at one (TM 5-2330-325-13&P WP 0052); at the springs less, as they stand closer together. */
function moveFor(difference: Fraction, side: 'left' | 'right', { spread, at }: Diagonals): SquaringMove {
  const half = difference.div(2);
  const near = spread && at && at.compare(0) > 0 ? at.div(spread) : undefined;
  return {
    side,
    direction: 'forward',
    oneEnd: difference,
    eachEnd: half,
    ...(near ? { oneEndAtSpring: difference.mul(near), eachEndAtSpring: half.mul(near) } : {}),
  };
}

/** The limit that an answer judges by. @throws TypeError when the table has none. */
export function usualLimit(of: 'square' | 'spacing' | 'toe'): AlignmentLimitRow {
  const row = alignmentLimits.find((one) => one.of === of && one.usual);
  if (!row) throw new TypeError(`data/service/alignment-limits.json has no usual limit of ${of}`);
  return row;
}
