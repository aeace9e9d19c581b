// Toe: the same marks measured at the front and at the rear of the wheels.
import type { AlignmentLimitRow } from '#data';
import { Fraction } from '../quantity/index.ts';
import { usualLimit } from './squareness.ts';
import { againstLimit, expanded, type LimitStanding, readingUncertainty } from './uncertainty.ts';

/** Inches; `diameter` of the circle on which the marks stand (tyre or rim). */
export interface ToeReadings {
  readonly front: Fraction;
  readonly rear: Fraction;
  readonly diameter?: Fraction;
  readonly resolution?: Fraction;
}

/** `total` is positive for toe-in; half of it is each wheel's. Degrees where the diameter is known. */
export interface Toe {
  readonly code: 'toeWithin' | 'toeUnsure' | 'toeBeyond';
  readonly total: Fraction;
  readonly eachSide: Fraction;
  readonly way: 'in' | 'out' | 'none';
  readonly totalDegrees?: number;
  readonly uncertainty: Fraction;
  readonly limit: AlignmentLimitRow;
}

const codes: Readonly<Record<LimitStanding, Toe['code']>> = { within: 'toeWithin', unsure: 'toeUnsure', beyond: 'toeBeyond' };

/** Judges the toe of a solid axle: neither in nor out by more than the limit. */
export function judgeToe({ front, rear, diameter, resolution = new Fraction(1, 32) }: ToeReadings): Toe {
  const total = rear.sub(front);
  const reading = readingUncertainty(resolution);
  const uncertainty = expanded(reading, reading);
  const limit = usualLimit('toe');
  return {
    code: codes[againstLimit(total.abs(), new Fraction(limit.limit), uncertainty)],
    total,
    eachSide: total.div(2),
    way: total.compare(0) === 0 ? 'none' : total.compare(0) > 0 ? 'in' : 'out',
    uncertainty,
    limit,
    ...(diameter && diameter.compare(0) > 0 ? { totalDegrees: degreesOver(total, diameter) } : {}),
  };
}

/** Angle of an offset over a length, degrees. */
export function degreesOver(offset: Fraction, length: Fraction): number {
  return (Math.atan(offset.div(length).valueOf()) * 180) / Math.PI;
}
