import { around, basisOf, windowNeed } from '../need.ts';
import type { Check, Finding, Need } from '../types.ts';
import { clearance } from './clearance.ts';

const inner = new Set(['tyreToSpring', 'tyreToFrame', 'tyreClearance']);

/** As wide as the old axle; if not, the tyre's room on both sides has to decide. */
export const hubFace: Check = (trailer, rules) => {
  const span = trailer.numbers.get('hubFace')?.span;
  const limits = clearance(trailer, rules).filter(({ needed }) => needed);
  const decided = limits.some(({ check }) => inner.has(check)) && limits.some(({ check }) => !inner.has(check));
  const near = windowNeed({
    check: 'hubFace',
    field: 'hubFace',
    unit: 'in',
    basis: basisOf(trailer, ['hubFace']),
    source: rules.hubFaceTolerance.source,
    sure: span && around(span, rules.hubFaceTolerance.value),
    work: true,
  });
  return [{ ...near, judge: (value) => beyond(near, value, decided) }];
};

function beyond(near: Need, value: string | undefined, decided: boolean): Finding {
  const { remedy: _none, ...found } = near.judge(value);
  const unsure = found.code === 'trailerUnknown' || found.code === 'tooCoarse';
  if (decided && (unsure || found.result === 'fitsWithWork')) return { ...found, result: 'fits', code: 'clearanceDecides' };
  if (found.result !== 'fitsWithWork') return near.judge(value);
  return { ...found, result: 'cannotSayYet', code: 'clearanceUnknown', remedy: 'measureMore' };
}
