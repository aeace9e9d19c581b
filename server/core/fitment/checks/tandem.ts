import { basisOf, windowNeed } from '../need.ts';
import type { Check, Need, Trailer } from '../types.ts';

const practice = 'common practice, no source: axles that share a load share it evenly only when they are alike';

/** Beside another axle, the new one must be its like. */
export const tandem: Check = (trailer) => {
  const count = trailer.tokens.get('axleCount')?.text;
  if (count === undefined || count === 'single') return [];
  return [alike(trailer, 'tandemCapacity', 'capacity'), alike(trailer, 'tandemDrop', 'drop')];
};

function alike(trailer: Trailer, check: 'tandemCapacity' | 'tandemDrop', field: 'capacity' | 'drop'): Need {
  const span = trailer.numbers.get(field)?.span;
  return windowNeed({
    check,
    field,
    unit: field === 'capacity' ? 'lb' : 'in',
    basis: basisOf(trailer, [field]),
    source: practice,
    sure: span && { low: span, high: span },
    work: true,
    workRemedy: 'matchPair',
  });
}
