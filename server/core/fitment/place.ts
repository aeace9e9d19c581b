// Where the tyre stands, from the hub face outward and inward.
import type { FieldId } from '#data';
import { Fraction } from '../quantity/index.ts';
import { add, exactly, type Span, scale, subtract } from './span.ts';
import type { Rules, Trailer } from './types.ts';

/** From the hub face, in inches: how far the tyre reaches in (toward the springs) and out. `uses`: the fields asked for. */
export interface TyrePlace {
  readonly inward?: Span;
  readonly outward?: Span;
  readonly uses: readonly FieldId[];
}

/** A wheel's offset is positive where its middle stands inboard of the hub face. */
export function tyrePlace(trailer: Trailer, rules: Rules): TyrePlace {
  const offset = offsetOf(trailer, rules);
  const width = trailer.tokens.get('tyreSize')?.tyre?.width;
  const uses: FieldId[] = ['tyreSize', ...offset.uses];
  if (!offset.span || !width) return { uses };
  const half = exactly(width.div(2));
  return { inward: add(half, offset.span), outward: subtract(half, offset.span), uses };
}

const perInch = new Fraction('25.4');

function offsetOf({ numbers }: Trailer, { rimLips }: Rules): { readonly span?: Span; readonly uses: readonly FieldId[] } {
  const offset = numbers.get('wheelOffset');
  if (offset) return { span: scale(offset.span, perInch.inverse()), uses: ['wheelOffset'] };
  const back = numbers.get('backspacing');
  if (!back) return { uses: ['wheelOffset'] };
  const width = numbers.get('wheelWidth');
  const uses: FieldId[] = ['backspacing', 'wheelWidth'];
  if (!width) return { uses };
  return { span: subtract(back.span, scale(add(width.span, exactly(rimLips.value)), new Fraction(1, 2))), uses };
}
