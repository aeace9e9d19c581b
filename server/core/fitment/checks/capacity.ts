import { axleLoad } from '../load.ts';
import { basisOf, windowNeed } from '../need.ts';
import type { Check, Need } from '../types.ts';

const gawr = '49 CFR 571.3, GAWR; the axle maker';

/** The axle must carry its share; while that is not known, as much as the old one did. */
export const capacity: Check = (trailer, rules) => {
  const load = axleLoad(trailer, rules);
  const old = trailer.numbers.get('capacity')?.span;
  const basis = basisOf(trailer, [...load.uses, ...(old ? (['capacity'] as const) : [])]);
  const carry = windowNeed({
    check: 'capacity',
    field: 'capacity',
    unit: 'lb',
    basis: { ...basis, missing: [...basis.missing, ...load.missing] },
    source: gawr,
    sure: load.span && { low: load.span },
    outRemedy: 'otherAxle',
  });
  if (!old) return [carry];
  const likeOld = windowNeed({ ...carry, unit: 'lb', sure: { low: old }, work: true });
  return [{ ...carry, judge: besideOld(carry, likeOld) }];
};

function besideOld(carry: Need, likeOld: Need): Need['judge'] {
  return (value) => {
    const found = carry.judge(value);
    const beside = likeOld.judge(value);
    if (found.code === 'trailerUnknown' && beside.result === 'fits') return { ...beside, code: 'likeOld' };
    if (found.result === 'fits' && beside.result === 'fitsWithWork') {
      return { ...found, result: 'fitsWithWork', code: 'belowOld', remedy: 'relabel' };
    }
    return found;
  };
}
