import { around, basisOf, sameNeed, windowNeed } from '../need.ts';
import type { Check } from '../types.ts';

const practice = 'common practice, no source: a spring is held where its hangers are';

/** An axle that comes with springs must suit the hangers. */
export const springs: Check = (trailer, rules) => {
  const length = trailer.numbers.get('springLength')?.span;
  return [
    windowNeed({
      check: 'springLength',
      field: 'springLength',
      unit: 'in',
      basis: basisOf(trailer, ['springLength']),
      source: practice,
      sure: length && around(length, rules.springCentreTolerance.value),
      work: true,
      workRemedy: 'otherSprings',
    }),
    sameNeed({
      check: 'springType',
      field: 'springType',
      trailer,
      source: practice,
      otherwise: 'fitsWithWork',
      remedy: 'otherSprings',
    }),
  ];
};
