import { basisOf, windowNeed } from '../need.ts';
import { exactly } from '../span.ts';
import type { Check } from '../types.ts';
import { sidewallOf, tyreLoad, tyreOn } from '../tyres/load.ts';

/** Two tyres an axle: an axle rated above what they carry together may not be labelled so. */
export const tyreRating: Check = (trailer) => {
  const tyre = tyreLoad(tyreOn(trailer));
  const sum = tyre && exactly(tyre.counted.value.mul(2));
  return [
    windowNeed({
      check: 'tyreRating',
      field: 'capacity',
      unit: 'lb',
      basis: basisOf(trailer, sidewallOf(trailer, tyre !== undefined)),
      source: tyre ? `49 CFR 571.120 S5.1.2; ${tyre.source}` : '49 CFR 571.120 S5.1.2',
      sure: sum && { high: sum },
      work: true,
      workRemedy: 'strongerTyres',
    }),
  ];
};
