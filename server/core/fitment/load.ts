// What one axle must carry, as closely as the job's weights tell.
import type { FieldId } from '#data';
import { Fraction } from '../quantity/index.ts';
import { larger, type Span, scale } from './span.ts';
import { balance, tandemShare } from './statics.ts';
import type { Rules, Trailer } from './types.ts';

/** Pounds on one axle. `uses`: the fields it rests on; `missing`: those that would narrow it. */
export interface AxleLoad {
  readonly span?: Span;
  readonly uses: readonly FieldId[];
  readonly missing: readonly FieldId[];
}

const axles = { single: 1, tandem: 2, triple: 3 } as const;
const weights = ['gvwr', 'grossWeight'] as const;

/** The heavier of what it is rated to weigh and what it weighs, less the tongue, shared by the axles. */
export function axleLoad(trailer: Trailer, rules: Rules): AxleLoad {
  const uses: FieldId[] = [];
  const missing: FieldId[] = [];
  const weighed = trailer.numbers.get('axleLoad')?.span;
  if (weighed) uses.push('axleLoad');
  const gross = grossOf(trailer, uses);
  if (!gross) return weighed ? { span: weighed, uses, missing } : { uses, missing: ['gvwr'] };
  const rolling = offTongue(trailer, gross, rules, uses, missing);
  const shared = perAxle(trailer, rolling, uses, missing);
  return { span: weighed ? larger(weighed, shared) : shared, uses, missing };
}

/** Pounds on all of the trailer's axles together. */
export function onAllAxles(trailer: Trailer, rules: Rules): AxleLoad {
  const uses: FieldId[] = [];
  const missing: FieldId[] = [];
  const gross = grossOf(trailer, uses);
  if (!gross) return { uses, missing: ['gvwr'] };
  return { span: offTongue(trailer, gross, rules, uses, missing), uses, missing };
}

/** The heaviest weight the job names. */
export function grossOf(trailer: Trailer, uses: FieldId[] = []): Span | undefined {
  return weights.reduce<Span | undefined>((heaviest, field) => {
    const span = trailer.numbers.get(field)?.span;
    if (!span) return heaviest;
    uses.push(field);
    return heaviest ? larger(heaviest, span) : span;
  }, undefined);
}

/** Gross less tongue. A tongue neither weighed nor told by moments may be anything up to the most any coupling takes; one beyond it is not believed. */
function offTongue(trailer: Trailer, gross: Span, { tongueUpper }: Rules, uses: FieldId[], missing: FieldId[]): Span {
  const least = scale(gross, new Fraction(100).sub(tongueUpper.value).div(100));
  const tongue = tongueOf(trailer, gross);
  const low = gross.low && tongue?.span.high ? gross.low.sub(tongue.span.high) : null;
  if (!tongue || !low || !least.low || low.lt(least.low)) {
    missing.push('tongueWeight');
    return { low: least.low, high: gross.high };
  }
  uses.push(...tongue.uses);
  return { low, high: gross.high && tongue.span.low ? gross.high.sub(tongue.span.low) : gross.high };
}

/** Pounds on the tongue: as weighed, else by moments about the coupler from where the weight's middle and the axle stand. */
export function tongueOf(trailer: Trailer, gross: Span): { readonly span: Span; readonly uses: readonly FieldId[] } | undefined {
  const weighed = trailer.numbers.get('tongueWeight');
  if (weighed) return { span: weighed.span, uses: ['tongueWeight'] };
  const [centre, axle] = [trailer.numbers.get('loadCentre')?.span, trailer.numbers.get('axleDistance')?.span];
  if (!centre || !axle || !gross.low || !gross.high) return undefined;
  if (!centre.low || !centre.high || !axle.low || !axle.high || centre.high.gt(axle.low)) return undefined;
  const low = balance(gross.low, centre.high, axle.low).tongue;
  const high = balance(gross.high, centre.low, axle.high).tongue;
  return { span: { low, high: low.equals(high) ? low : high }, uses: ['loadCentre', 'axleDistance'] };
}

/** How many axles share the load, where that is told. */
export const axlesOf = ({ tokens }: Trailer): number | undefined => axles[tokens.get('axleCount')?.text as keyof typeof axles];

/** The equaliser's arms, in, where both were measured. */
function armsOf({ numbers }: Trailer): { readonly front: Fraction; readonly rear: Fraction } | undefined {
  const [front, rear] = [numbers.get('frontArm')?.span.low, numbers.get('rearArm')?.span.low];
  return front && rear ? { front, rear } : undefined;
}

/** Of one pound on a tandem, what each axle carries by its equaliser; nothing where the arms are not known. */
export function equaliserShares(trailer: Trailer): { readonly front: Fraction; readonly rear: Fraction } | undefined {
  const arms = armsOf(trailer);
  return arms && axlesOf(trailer) === 2 ? tandemShare(new Fraction(1), arms.front, arms.rear) : undefined;
}

/** The share of the axle that is in work; of the heavier where that is not told. */
function inWork({ tokens }: Trailer, arms: { readonly front: Fraction; readonly rear: Fraction }): Fraction {
  const { front, rear } = tandemShare(new Fraction(1), arms.front, arms.rear);
  const which = tokens.get('axleInWork')?.text;
  if (which === 'front') return front;
  return which === 'rear' || rear.gt(front) ? rear : front;
}

function perAxle(trailer: Trailer, rolling: Span, uses: FieldId[], missing: FieldId[]): Span {
  const count = axlesOf(trailer);
  if (count) {
    uses.push('axleCount');
    const arms = count === 2 ? armsOf(trailer) : undefined;
    if (!arms) return scale(rolling, new Fraction(1, count));
    uses.push('frontArm', 'rearArm');
    return scale(rolling, inWork(trailer, arms));
  }
  missing.push('axleCount');
  return { low: rolling.low?.div(3) ?? null, high: rolling.high };
}
