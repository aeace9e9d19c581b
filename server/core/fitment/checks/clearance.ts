import type { FieldId } from '#data';
import { basisOf, type Window, windowNeed } from '../need.ts';
import { tyrePlace } from '../place.ts';
import { add, exactly, scale, subtract } from '../span.ts';
import type { Check, CheckId, Need, Rules, Trailer } from '../types.ts';

/** Every limit that the tyre sets to the hub face: inward by spring and frame, outward by fender and law. */
export const clearance: Check = (trailer, rules) => [
  toSpring(trailer, rules),
  toFrame(trailer, rules),
  toFender(trailer, rules),
  overall(trailer, rules),
  ...asMeasured(trailer, rules),
];

function toSpring(trailer: Trailer, rules: Rules): Need {
  const centre = trailer.numbers.get('springCentre')?.span;
  const width = trailer.numbers.get('springWidth')?.span;
  const { inward, uses } = tyrePlace(trailer, rules);
  const low = centre && width && inward && add(add(centre, width), scale(add(inward, exactly(rules.tyreToSpring.value)), 2));
  return limit('tyreToSpring', trailer, ['springCentre', 'springWidth', ...uses], rules.tyreToSpring.source, low && { low });
}

function toFrame(trailer: Trailer, rules: Rules): Need {
  const frame = trailer.numbers.get('frameWidth')?.span;
  const { inward, uses } = tyrePlace(trailer, rules);
  const low = frame && inward && add(frame, scale(add(inward, exactly(rules.tyreToFrame.value)), 2));
  return limit('tyreToFrame', trailer, ['frameWidth', ...uses], rules.tyreToFrame.source, low && { low });
}

function toFender(trailer: Trailer, rules: Rules): Need {
  const fender = trailer.numbers.get('fenderWidth')?.span;
  const { outward, uses } = tyrePlace(trailer, rules);
  const high = fender && outward && subtract(fender, scale(add(outward, exactly(rules.tyreToFender.value)), 2));
  return limit('tyreToFender', trailer, ['fenderWidth', ...uses], rules.tyreToFender.source, high && { high });
}

function overall(trailer: Trailer, rules: Rules): Need {
  const { outward, uses } = tyrePlace(trailer, rules);
  const high = outward && subtract(exactly(rules.legalWidth.value), scale(outward, 2));
  return limit('overallWidth', trailer, uses, rules.legalWidth.source, high && { high });
}

/** The room that was measured on the old axle, less half of what the new one is narrower. */
function asMeasured(trailer: Trailer, rules: Rules): Need[] {
  const room = trailer.numbers.get('tyreClearance')?.span;
  if (!room) return [];
  const face = trailer.numbers.get('hubFace')?.span;
  const low = face && subtract(face, scale(subtract(room, exactly(rules.tyreToSpring.value)), 2));
  return [limit('tyreClearance', trailer, ['hubFace', 'tyreClearance'], rules.tyreToSpring.source, low && { low })];
}

function limit(check: CheckId, trailer: Trailer, fields: readonly FieldId[], source: string, sure: Window | undefined): Need {
  const basis = basisOf(trailer, fields);
  return windowNeed({ check, field: 'hubFace', unit: 'in', basis, source, sure, outRemedy: 'otherAxle' });
}
