// What was measured on both sides of one axle, and the hub face that two halves make.
import type { FieldId } from '#data';
import { tableRules } from './rules.ts';
import { add } from './span.ts';
import type { FieldProblem, FitReading, Known, Sides } from './types.ts';

export interface Sided {
  readonly reading: FitReading;
  readonly known: Known;
}

/** By field, left and right of one axle: of several axles the last that has both. */
export function bothSides(all: readonly Sided[]): Map<FieldId, Sides> {
  const byAxle = new Map<string, { readonly field: FieldId; readonly sides: Sides }>();
  for (const { reading, known } of all) {
    const { field, axle = '', side } = reading;
    if (side !== 'left' && side !== 'right') continue;
    const key = `${field} ${axle}`;
    byAxle.set(key, { field, sides: { ...byAxle.get(key)?.sides, [side]: known } });
  }
  const found = new Map<FieldId, Sides>();
  const whole = ({ left, right }: Sides) => left !== undefined && right !== undefined;
  for (const { field, sides } of byAxle.values()) {
    const before = found.get(field);
    if (!before || whole(sides) || !whole(before)) found.set(field, sides);
  }
  return found;
}

/** Two halves are the hub face where that was not measured whole; where it was, they must add up to it. */
export function wholeFromHalves(numbers: Map<FieldId, Known>, sides: ReadonlyMap<FieldId, Sides>): FieldProblem[] {
  const { left, right } = sides.get('halfFace') ?? {};
  if (!left || !right) return [];
  const span = add(left.span, right.span);
  const face = numbers.get('hubFace');
  if (!face) {
    const confirmed = left.confirmed && right.confirmed;
    numbers.set('hubFace', { span, id: left.id, also: [right.id], confirmed });
    return [];
  }
  const slack = tableRules.halvesSum.value;
  const apart = (a: Known['span'], b: Known['span']) => a.low && b.high && a.low.sub(b.high).gt(slack);
  if (!apart(span, face.span) && !apart(face.span, span)) return [];
  const sum = (span.low ?? span.high)?.toFraction() ?? '';
  return [{ field: 'halfFace', code: 'halvesDoNotAddUp', id: left.id, value: sum }];
}
