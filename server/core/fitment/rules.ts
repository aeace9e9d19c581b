import { type FitRule, type FitRuleId, fitRules } from '#data';
import { convert, dimensionOf, quantity } from '../quantity/index.ts';
import type { Rules } from './types.ts';

/** The tolerances of the table, in inches and pounds. A shop's own rows may be handed in instead. */
export function rulesOf(rows: readonly FitRule[]): Rules {
  const read = rows.map(({ id, value, unit, source }) => {
    const amount = quantity(value, unit);
    return [id, { value: dimensionOf(unit) === 'length' ? convert(amount, 'in').value : amount.value, source }] as const;
  });
  return Object.fromEntries(read) as Record<FitRuleId, Rules[FitRuleId]>;
}

export const tableRules = rulesOf(fitRules);
