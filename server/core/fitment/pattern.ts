import type { UnitId } from '#data';
import { convert, type Fraction } from '../quantity/index.ts';
import { numberOf } from './number.ts';

/** Studs on a circle. `circle` in inches, exact. */
export interface Pattern {
  readonly studs: number;
  readonly circle: Fraction;
}

/** "5x9/2", "5x114.3 mm"; a circle above 40 with no unit can only be millimetres. Undefined where it is no pattern. */
export function parsePattern(text: string, unit?: UnitId): Pattern | undefined {
  const parts = /^(\d+)x(\d+(?:\.\d+|\/\d+)?)\s*(mm|in)?$/.exec(text);
  const size = numberOf(parts?.[2] ?? '');
  const studs = Number(parts?.[1]);
  if (!size || studs < 3 || studs > 12) return undefined;
  const said = (parts?.[3] ?? unit ?? 'in') as UnitId;
  const circle = convert({ value: size, unit: said === 'in' && size.gt(40) ? 'mm' : said }, 'in').value;
  return circle.lt(2) || circle.gt(20) ? undefined : { studs, circle };
}
