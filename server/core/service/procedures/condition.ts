import type { Condition } from '#data';
import { measured, type Reading, sameValue } from '../reading.ts';

/** True when every condition holds for what is known now. */
export function holds(conditions: readonly Condition[] | undefined, readings: readonly Reading[]): boolean {
  return (conditions ?? []).every(({ field, is, orUnknown }) => {
    const known = measured(readings, { field });
    return known === undefined ? orUnknown === true : is.some((value) => sameValue(value, known.value));
  });
}
