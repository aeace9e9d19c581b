import { around, basisOf, windowNeed } from '../need.ts';
import type { Check } from '../types.ts';

/** The new seats must land on the springs; a little off, and they are moved. */
export const springCentre: Check = (trailer, rules) => {
  const span = trailer.numbers.get('springCentre')?.span;
  const { springCentreTolerance: near, springCentreWork: far } = rules;
  return [
    windowNeed({
      check: 'springCentre',
      field: 'springCentre',
      unit: 'in',
      basis: basisOf(trailer, ['springCentre']),
      source: near.source,
      sure: span && around(span, near.value),
      work: span && around(span, far.value),
      workRemedy: 'moveSeats',
      outRemedy: 'otherAxle',
    }),
  ];
};
