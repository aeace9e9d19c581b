import { around, basisOf, windowNeed } from '../need.ts';
import type { Check, Need } from '../types.ts';
import { clearance } from './clearance.ts';

const inner = new Set(['tyreToSpring', 'tyreToFrame', 'tyreClearance']);

/** As wide as the old axle; if not, the tyre's room on both sides has to decide. With it, every limit that room sets. */
export const hubFace: Check = (trailer, rules) => {
  const span = trailer.numbers.get('hubFace')?.span;
  const limits = clearance(trailer, rules);
  const known = limits.filter(({ needed }) => needed);
  const decided = known.some(({ check }) => inner.has(check)) && known.some(({ check }) => !inner.has(check));
  const near = windowNeed({
    check: 'hubFace',
    field: 'hubFace',
    unit: 'in',
    basis: basisOf(trailer, ['hubFace']),
    source: rules.hubFaceTolerance.source,
    sure: span && around(span, rules.hubFaceTolerance.value),
    work: true,
  });
  return [{ ...near, judge: beyond(near, decided) }, ...limits];
};

function beyond(near: Need, decided: boolean): Need['judge'] {
  return (value) => {
    const asFound = near.judge(value);
    const { remedy: _none, ...found } = asFound;
    const unsure = found.code === 'trailerUnknown' || found.code === 'tooCoarse';
    if (decided && (unsure || found.result === 'fitsWithWork')) return { ...found, result: 'fits', code: 'clearanceDecides' };
    if (found.result !== 'fitsWithWork') return asFound;
    return { ...found, result: 'cannotSayYet', code: 'clearanceUnknown', remedy: 'measureMore' };
  };
}
