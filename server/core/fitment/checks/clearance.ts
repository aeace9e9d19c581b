import type { FieldId, FitRuleId } from '#data';
import { basisOf, type Window, windowNeed } from '../need.ts';
import { type TyrePlace, tyrePlace } from '../place.ts';
import { add, exactly, type Span, scale, subtract } from '../span.ts';
import type { Check, CheckId, Need, Rules, Trailer } from '../types.ts';

/** Every limit that the tyre sets to the hub face: inward by spring and frame, outward by fender and law. */
export const clearance: Check = (trailer, rules) => {
  const tyre = tyrePlace(trailer, rules);
  const sides = [toSpring, toFrame, toFender, overall].map((side) => side(trailer, rules, tyre));
  return [...sides, ...asMeasured(trailer, rules)];
};

type Side = (trailer: Trailer, rules: Rules, tyre: TyrePlace) => Need;

const toSpring: Side = (trailer, { tyreToSpring }, { inward, uses }) => {
  const centre = trailer.numbers.get('springCentre')?.span;
  const width = trailer.numbers.get('springWidth')?.span;
  const low = centre && width && inward && add(add(centre, width), bothSides(inward, tyreToSpring));
  return limit('tyreToSpring', trailer, ['springCentre', 'springWidth', ...uses], tyreToSpring.source, low && { low });
};

const toFrame: Side = (trailer, { tyreToFrame }, { inward, uses }) => {
  const frame = trailer.numbers.get('frameWidth')?.span;
  const low = frame && inward && add(frame, bothSides(inward, tyreToFrame));
  return limit('tyreToFrame', trailer, ['frameWidth', ...uses], tyreToFrame.source, low && { low });
};

const toFender: Side = (trailer, { tyreToFender }, { outward, uses }) => {
  const fender = trailer.numbers.get('fenderWidth')?.span;
  const high = fender && outward && subtract(fender, bothSides(outward, tyreToFender));
  return limit('tyreToFender', trailer, ['fenderWidth', ...uses], tyreToFender.source, high && { high });
};

const overall: Side = (trailer, { legalWidth }, { outward, uses }) => {
  const high = outward && subtract(exactly(legalWidth.value), scale(outward, 2));
  return limit('overallWidth', trailer, uses, legalWidth.source, high && { high });
};

/** The tyre's reach and the room it wants, left and right. */
const bothSides = (reach: Span, room: Rules[FitRuleId]): Span => scale(add(reach, exactly(room.value)), 2);

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
