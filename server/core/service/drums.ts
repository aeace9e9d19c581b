// Drum and lining wear. The figure cast in the drum rules over every table.
import { type DrumLimitRow, drumLimits } from '#data';
import { Fraction } from '../quantity/index.ts';

/** Inches; `limit` absent where no drum of that size is listed. */
export interface DrumVerdict {
  readonly code: 'drumWithin' | 'drumWorn' | 'drumLimitUnknown';
  readonly diameter: Fraction;
  readonly limit?: Fraction;
  readonly row?: DrumLimitRow;
}

/** Judges a drum by the figure cast in it, else by the listed limit of its nominal size. */
export function judgeDrum(diameter: Fraction, cast?: Fraction): DrumVerdict {
  const row = drumLimits.find(({ nominal }) => diameter.sub(nominal).abs().compare('1/4') <= 0);
  const limit = cast ?? (row && new Fraction(row.max));
  if (!limit) return { code: 'drumLimitUnknown', diameter };
  const code = diameter.compare(limit) > 0 ? 'drumWorn' : 'drumWithin';
  return { code, diameter, limit, ...(row && !cast ? { row } : {}) };
}

/** A sixteenth or less at the shoe's centre is out (hydraulic and electric drums). */
export const liningLimit = { inches: new Fraction(1, 16), source: '49 CFR Part 396 Appendix A 1.a(6)' } as const;

export function judgeLining(inches: Fraction): { readonly code: 'liningGood' | 'liningWorn'; readonly inches: Fraction } {
  return { code: inches.compare(liningLimit.inches) <= 0 ? 'liningWorn' : 'liningGood', inches };
}
