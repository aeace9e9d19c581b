// Which standard bolt circle a hole-to-hole measurement means. The chord of k steps round n holes is D sin(pi k / n);
// the sine is irrational, so this is the one place of the room that computes in floating point.
import { type BoltPatternRow, boltPatterns } from '#data';
import { convert, type Quantity, quantity } from '../../quantity/index.ts';

/** Holes counted from one to the other: 1 next to each other, 2 skip one, and so on up to the opposite hole. */
export interface HoleMeasure {
  readonly studs: number;
  readonly steps: number;
  readonly between: Quantity;
  /** What the tape resolves. */
  readonly resolution: Quantity;
}

export interface PatternMatch {
  readonly pattern: BoltPatternRow;
  /** How far the measured circle lies from this one, in inches. */
  readonly offIn: number;
}

export type PatternAnswer =
  | { readonly ok: false; readonly code: 'badCount' | 'badMeasure' | 'noStandard'; readonly circleIn?: number }
  | {
      readonly ok: true;
      readonly circleIn: number;
      readonly best: PatternMatch;
      /** Other standard circles that one reading of the tape cannot tell from the best. */
      readonly alike: readonly PatternMatch[];
    };

/** Inches of circle for inches between two holes `steps` apart. */
export const circleOf = (betweenIn: number, studs: number, steps: number): number =>
  betweenIn / Math.sin((Math.PI * steps) / studs);

export const chordOf = (circleIn: number, studs: number, steps: number): number => circleIn * Math.sin((Math.PI * steps) / studs);

const inches = (amount: Quantity): number => convert(amount, 'in').value.valueOf();

const sizeIn = ({ circle, unit }: BoltPatternRow): number => inches(quantity(circle, unit));

/** The standard pattern nearest to what was measured, and those too close to it to tell apart with this tape. */
export function identifyPattern({ studs, steps, between, resolution }: HoleMeasure): PatternAnswer {
  if (!Number.isInteger(studs) || studs < 3 || studs > 12) return { ok: false, code: 'badCount' };
  const chord = inches(between);
  if (!Number.isInteger(steps) || steps < 1 || steps > studs / 2 || chord <= 0) return { ok: false, code: 'badMeasure' };
  const circleIn = circleOf(chord, studs, steps);
  // Two circles whose chords lie less than two marks apart cannot be told by one reading between marks.
  const reach = circleOf(2 * inches(resolution), studs, steps);
  const near = boltPatterns
    .filter((row) => row.studs === studs)
    .map((pattern) => ({ pattern, offIn: Math.abs(circleIn - sizeIn(pattern)) }))
    .sort((a, b) => a.offIn - b.offIn);
  const [best, ...others] = near;
  if (!best || best.offIn > reach / 2) return { ok: false, code: 'noStandard', circleIn };
  return {
    ok: true,
    circleIn,
    best,
    alike: others.filter(({ pattern }) => Math.abs(sizeIn(pattern) - sizeIn(best.pattern)) < reach),
  };
}
