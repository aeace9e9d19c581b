// "A on B", "A by B": bolt patterns and brake sizes.
import type Fraction from 'fraction.js';
import type { UnitId } from '#data';
import { type NumberReading, readNumbers } from '../numbers/number.ts';
import { readUnit } from '../numbers/unit.ts';
import { readWholes } from '../numbers/whole.ts';
import type { Token } from '../tokens.ts';
import type { Stamp } from './types.ts';

const studWords = new Set(['lug', 'lugs', 'bolt', 'bolts', 'hole', 'holes', 'stud', 'studs']);
const byWords = new Set(['by', 'x', '*']);

interface Size {
  readonly end: number;
  readonly value: Fraction;
  readonly unit: UnitId;
  readonly unitSaid: boolean;
}

/** "five on four and a half", "six lug five and a half", "6x139.7". Circle in inches, or in millimetres where only that can be. */
export function readBoltPattern(tokens: readonly Token[], at: number, asked: boolean): Stamp | undefined {
  for (const { end, value, cut } of readWholes(tokens, at)) {
    if (value > 99 || cut) continue;
    const joint = jointAt(tokens, end) ?? (asked && tokens[end]?.word === '-' ? { end: end + 1, sure: false } : undefined);
    if (!joint) continue;
    const circle = circleAt(tokens, joint.end);
    if (!circle) {
      if (asked && joint.sure && !readNumbers(tokens, joint.end)[0])
        return problem(joint.end, value, `I heard ${value} on, but no circle. Say both, such as five on four and a half.`);
      continue;
    }
    if (!joint.sure && !asked && (value < 3 || value > 12 || circle.value.compare('7/2') < 0)) continue;
    if (value < 3 || value > 12)
      return problem(
        circle.end,
        value,
        `A bolt pattern of ${value} cannot be. Say three to twelve studs, such as five on four and a half.`,
      );
    return { ...stamp(circle.end, `${value}x${circle.value.toFraction()}`), unit: circle.unit, unitSaid: circle.unitSaid };
  }
  return undefined;
}

const stamp = (end: number, value: string): Stamp => ({ end, holds: 'boltPattern', field: 'boltPattern', value });
const problem = (end: number, studs: number, message: string): Stamp => ({ ...stamp(end, String(studs)), problem: message });

/** "on" can only be a pattern; "lug" needs a circle after it; "by" may be a brake or a beam. */
function jointAt(tokens: readonly Token[], at: number): { end: number; sure: boolean } | undefined {
  const lugs = studWords.has(tokens[at]?.word ?? '')
    ? 1
    : tokens[at]?.word === '-' && studWords.has(tokens[at + 1]?.word ?? '')
      ? 2
      : 0;
  const next = tokens[at + lugs]?.word ?? '';
  if (next === 'on' || next === 'onto') {
    const article = tokens[at + lugs + 1]?.word === 'a' ? 1 : 0;
    return { end: at + lugs + 1 + article, sure: true };
  }
  if (byWords.has(next)) return { end: at + lugs + 1, sure: lugs > 0 };
  return lugs ? { end: at + lugs, sure: false } : undefined;
}

function circleAt(tokens: readonly Token[], at: number): Size | undefined {
  for (const number of readNumbers(tokens, at)) {
    const unit = readUnit(tokens, number.end);
    const size = circleSize(number, unit?.unit);
    if (size) return { end: unit?.end ?? number.end, ...size, unitSaid: unit !== undefined };
  }
  return undefined;
}

/** Inches from three to twelve, millimetres from 95 to 340; "four seventy-five" is 4.75. */
function circleSize(number: NumberReading, unit: UnitId | undefined): { value: Fraction; unit: UnitId } | undefined {
  const inches = number.whole?.form === 'run' && number.value.compare(1000) < 0 ? number.value.div(100) : number.value;
  const within = (value: Fraction, low: number, high: number) => value.compare(low) >= 0 && value.compare(high) <= 0;
  if (unit !== 'in' && within(number.value, 95, 340) && number.value.compare(inches) === 0)
    return { value: number.value, unit: 'mm' };
  if (unit !== 'in' && number.shape === 'decimal' && within(number.value, 95, 340)) return { value: number.value, unit: 'mm' };
  // "one fourteen three" is 114.3 mm.
  const tenths = number.whole?.form === 'run' && number.whole.digits.length === 4 ? number.value.div(10) : undefined;
  if (tenths && unit !== 'in' && within(tenths, 95, 340)) return { value: tenths, unit: 'mm' };
  if (unit !== 'mm' && within(inches, 3, 12)) return { value: inches, unit: 'in' };
  return within(number.value, 95, 340) && unit !== 'in' ? { value: number.value, unit: 'mm' } : undefined;
}

/** "ten by two and a quarter", "12 x 2 brakes". Drum 6 to 18, shoe 1 to 8 inches wide. */
export function readBrakeSize(tokens: readonly Token[], at: number, asked: boolean): Stamp | undefined {
  const drum = readNumbers(tokens, at).find(({ end }) => byAfter(tokens, end) > 0);
  if (!drum) return undefined;
  const width = readNumbers(tokens, byAfter(tokens, drum.end))[0];
  if (!width || tokens[width.end]?.word === 'by' || tokens[width.end]?.word === 'x') return undefined;
  const fits = (value: Fraction, low: number, high: number) => value.compare(low) >= 0 && value.compare(high) <= 0;
  if (!fits(drum.value, 6, 18) || !fits(width.value, 1, asked ? 8 : 5) || width.value.compare(drum.value) >= 0) return undefined;
  const unit = readUnit(tokens, width.end);
  if (unit && unit.unit !== 'in') return undefined;
  const value = `${drum.value.toFraction()}x${width.value.toFraction()}`;
  return { end: unit?.end ?? width.end, holds: 'brakeSize', field: 'brakeSize', value, unit: 'in', unitSaid: unit !== undefined };
}

/** Where the number after "by" begins; inches may be named before it. */
function byAfter(tokens: readonly Token[], at: number): number {
  const unit = readUnit(tokens, at);
  const joint = unit?.unit === 'in' ? unit.end : at;
  return byWords.has(tokens[joint]?.word ?? '') ? joint + 1 : 0;
}
