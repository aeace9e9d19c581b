// Where the tyres stand with a given hub face: room on each side, width over all, track; and the hub faces that would work.
import type { FieldId } from '#data';
import { Fraction, type Quantity } from '../../quantity/index.ts';
import { tyrePlace } from '../place.ts';
import { add, type Span, scale, subtract } from '../span.ts';
import type { CheckId, Need, Rules, Trailer } from '../types.ts';
import type { Needs } from '../verdict.ts';

export interface Clearances {
  /** Inches on each side, the least where it is known only between two ends. */
  readonly toSpring?: Quantity;
  readonly toFrame?: Quantity;
  readonly toFender?: Quantity;
  readonly overall?: Quantity;
  readonly track?: Quantity;
  readonly uses: readonly FieldId[];
  readonly missing: readonly FieldId[];
}

const half = new Fraction(1, 2);

/** Clearances with this hub face (in), as far as the job's values go. */
export function clearancesAt(trailer: Trailer, hubFace: Span, rules: Rules): Clearances {
  const { inward, outward, uses } = tyrePlace(trailer, rules);
  const of = (field: FieldId) => trailer.numbers.get(field)?.span;
  const inner = inward && subtract(scale(hubFace, half), inward);
  const outer = outward && add(scale(hubFace, half), outward);
  const [centre, leaf, frame, fender] = [of('springCentre'), of('springWidth'), of('frameWidth'), of('fenderWidth')];
  const asked: FieldId[] = [...uses, 'springCentre', 'springWidth', 'frameWidth', 'fenderWidth'];
  return {
    ...least('toSpring', inner && centre && leaf && subtract(inner, scale(add(centre, leaf), half))),
    ...least('toFrame', inner && frame && subtract(inner, scale(frame, half))),
    ...least('toFender', outer && fender && subtract(scale(fender, half), outer)),
    ...most('overall', outer && scale(outer, 2)),
    ...most('track', inner && outer && add(inner, outer)),
    uses: asked.filter((field) => has(trailer, field)),
    missing: asked.filter((field) => !has(trailer, field)),
  };
}

const has = ({ numbers, tokens }: Trailer, field: FieldId): boolean => numbers.has(field) || tokens.has(field);

function least(name: string, span: Span | undefined): Record<string, Quantity> {
  return span?.low ? { [name]: { value: span.low, unit: 'in' } } : {};
}

function most(name: string, span: Span | undefined): Record<string, Quantity> {
  return span?.high ? { [name]: { value: span.high, unit: 'in' } } : {};
}

export interface HubFaceRange {
  readonly low?: Quantity;
  readonly high?: Quantity;
  /** The checks that set the two ends. */
  readonly lowBy?: CheckId;
  readonly highBy?: CheckId;
}

/** The hub faces that every clearance allows. */
export function hubFaceRange({ needs }: Needs): HubFaceRange {
  const limits = needs.filter(({ check, field }) => field === 'hubFace' && check !== 'hubFace');
  const low = extreme(limits, 'low', (a, b) => a.value.gt(b.value));
  const high = extreme(limits, 'high', (a, b) => a.value.lt(b.value));
  return { ...(low && { low: low.at, lowBy: low.check }), ...(high && { high: high.at, highBy: high.check }) };
}

function extreme(limits: readonly Need[], end: 'low' | 'high', tighter: (a: Quantity, b: Quantity) => boolean) {
  let best: { readonly at: Quantity; readonly check: CheckId } | undefined;
  for (const { check, needed } of limits) {
    const at = needed?.[end];
    if (at && (!best || tighter(at, best.at))) best = { at, check };
  }
  return best;
}
