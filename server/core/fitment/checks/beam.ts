import { around, basisOf, sameNeed, windowNeed } from '../need.ts';
import { add, exactly, subtract } from '../span.ts';
import type { Check } from '../types.ts';

/** The tube, its shape and its seats, against the springs and U-bolts that hold it. U-bolts are new in any case. */
export const beam: Check = (trailer, rules) => {
  const size = trailer.numbers.get('beamDiameter')?.span;
  const leaf = trailer.numbers.get('springWidth')?.span;
  const { source, value } = rules.beamTolerance;
  return [
    windowNeed({
      check: 'beam',
      field: 'beamDiameter',
      unit: 'in',
      basis: basisOf(trailer, ['beamDiameter']),
      source,
      sure: size && around(size, value),
      work: true,
      workRemedy: 'newSeats',
    }),
    sameNeed({ check: 'beamShape', field: 'beamShape', trailer, source, otherwise: 'fitsWithWork', remedy: 'newSeats' }),
    windowNeed({
      check: 'seatWidth',
      field: 'springWidth',
      unit: 'in',
      basis: basisOf(trailer, ['springWidth']),
      source,
      sure: leaf && around(leaf, value),
      work: true,
      workRemedy: 'newSeats',
    }),
  ];
};

/** A beam above its springs comes nearer to the frame as it is thicker; only where that room was measured. */
export const frameRoom: Check = (trailer, { bumpRoom }) => {
  const room = trailer.numbers.get('axleToFrame')?.span;
  if (!room || trailer.tokens.get('slung')?.text === 'overSlung') return [];
  const old = trailer.numbers.get('beamDiameter')?.span;
  const most = old && subtract(add(old, room), exactly(bumpRoom.value));
  return [
    windowNeed({
      check: 'frameRoom',
      field: 'beamDiameter',
      unit: 'in',
      basis: basisOf(trailer, ['beamDiameter', 'axleToFrame']),
      source: bumpRoom.source,
      sure: most && { high: most },
      outRemedy: 'slingSwap',
    }),
  ];
};

/** More drop lowers the trailer by the difference, and with it the room above the tyre. */
export const drop: Check = (trailer, rules) => {
  const old = trailer.numbers.get('drop')?.span;
  const room = trailer.numbers.get('bumpClearance')?.span;
  const { dropTolerance: near, bumpRoom } = rules;
  const most = old && room && subtract(add(old, room), exactly(bumpRoom.value));
  return [
    windowNeed({
      check: 'drop',
      field: 'drop',
      unit: 'in',
      basis: basisOf(trailer, ['drop']),
      source: near.source,
      sure: old && around(old, near.value),
      work: true,
      workRemedy: 'slingSwap',
    }),
    windowNeed({
      check: 'bumpRoom',
      field: 'drop',
      unit: 'in',
      basis: basisOf(trailer, ['drop', 'bumpClearance']),
      source: bumpRoom.source,
      sure: most && { high: most },
      outRemedy: 'slingSwap',
    }),
  ];
};
