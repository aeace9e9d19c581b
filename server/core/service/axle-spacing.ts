// Tandem: spindle to spindle left against right says whether the axles are parallel.
import { type AlignmentLimitRow, alignmentLimits } from '#data';
import { Fraction } from '../quantity/index.ts';
import { usualLimit } from './squareness.ts';
import { degreesOver } from './toe.ts';
import { againstLimit, expanded, type LimitStanding, readingUncertainty } from './uncertainty.ts';

/** Inches; `spread` between the measured ends of one axle. */
export interface SpacingReadings {
  readonly left: Fraction;
  readonly right: Fraction;
  readonly spread?: Fraction;
  readonly resolution?: Fraction;
}

/** `byDocument`: one reading can pass one document and fail another. */
export interface Spacing {
  readonly code: 'parallel' | 'parallelUnsure' | 'notParallel';
  readonly difference: Fraction;
  readonly wider: 'left' | 'right' | 'equal';
  readonly uncertainty: Fraction;
  readonly limit: AlignmentLimitRow;
  readonly byDocument: readonly { readonly limit: AlignmentLimitRow; readonly passes: boolean }[];
  /** Angle between the axles. */
  readonly scrubDegrees?: number;
}

const codes: Readonly<Record<LimitStanding, Spacing['code']>> = {
  within: 'parallel',
  unsure: 'parallelUnsure',
  beyond: 'notParallel',
};

/** Judges whether two axles are parallel. */
export function judgeSpacing({ left, right, spread, resolution = new Fraction(1, 16) }: SpacingReadings): Spacing {
  const difference = left.sub(right).abs();
  const reading = readingUncertainty(resolution);
  const uncertainty = expanded(reading, reading);
  const limit = usualLimit('spacing');
  const rows = alignmentLimits.filter(({ of }) => of === 'spacing');
  return {
    code: codes[againstLimit(difference, new Fraction(limit.limit), uncertainty)],
    difference,
    wider: left.equals(right) ? 'equal' : left.compare(right) > 0 ? 'left' : 'right',
    uncertainty,
    limit,
    byDocument: rows.map((row) => ({ limit: row, passes: difference.compare(row.limit) <= 0 })),
    ...(spread && spread.compare(0) > 0 ? { scrubDegrees: degreesOver(difference, spread) } : {}),
  };
}
