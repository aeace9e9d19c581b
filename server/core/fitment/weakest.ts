// What the running gear of one axle carries: its weakest part, against the load.
import type { FieldId } from '#data';
import type { Fraction, Quantity } from '../quantity/index.ts';
import { axleLoad, axlesOf, grossOf } from './load.ts';
import { basisOf } from './need.ts';
import type { Basis, Rules, Trailer } from './types.ts';
import { tyreLoad } from './tyres/load.ts';

export type CarryingPart = 'axle' | 'tyres' | 'springs' | 'hubs' | 'wheels';

export interface Link {
  readonly part: CarryingPart;
  /** Pounds for the whole axle. */
  readonly rating: Quantity;
  readonly source: string;
}

export type TongueCode = 'light' | 'right' | 'heavy' | 'beyondReason';

export interface Carrying extends Basis {
  /** Pounds on one axle: the most it may be, and the least where that is not the same. */
  readonly load?: Quantity;
  readonly loadLeast?: Quantity;
  readonly links: readonly Link[];
  readonly weakest?: Link;
  /** What would set it if the weakest part were made stronger. */
  readonly next?: Link;
  /** Axles that share the load, where told. */
  readonly axles?: number;
  /** Parts whose rating is not on the job: any of them may be weaker. */
  readonly unknown: readonly CarryingPart[];
  /** Weakest less load, pounds, and as percent of the weakest; negative where it is overloaded. */
  readonly margin?: Quantity;
  readonly marginPercent?: Fraction;
  readonly tongue?: { readonly weight: Quantity; readonly percent: Fraction; readonly code: TongueCode };
  readonly passengerTyres: boolean;
}

const parts: readonly CarryingPart[] = ['axle', 'tyres', 'springs', 'hubs', 'wheels'];
const pounds = (value: Fraction): Quantity => ({ value, unit: 'lb' });

/** `capacity`: the rating, lb, of an axle asked about; without it the job's own axle's. */
export function carrying(trailer: Trailer, rules: Rules, capacity?: Fraction): Carrying {
  const { span, uses, missing } = axleLoad(trailer, rules);
  const rated = capacity ?? trailer.numbers.get('capacity')?.span.low ?? undefined;
  const tyre = tyreLoad(trailer.tokens.get('tyreSize')?.text ?? '');
  const links: Link[] = [
    ...(rated ? [{ part: 'axle' as const, rating: pounds(rated), source: 'the axle maker' }] : []),
    ...(tyre ? [{ part: 'tyres' as const, rating: pounds(tyre.counted.value.mul(2)), source: tyre.source }] : []),
  ];
  const [weakest, next] = links.toSorted((a, b) => a.rating.value.compare(b.rating.value));
  const axles = axlesOf(trailer);
  const fields: FieldId[] = [
    ...uses,
    ...(rated && !capacity ? (['capacity'] as const) : []),
    ...(tyre ? (['tyreSize'] as const) : []),
  ];
  const basis = basisOf(trailer, fields);
  return {
    ...basis,
    missing: [...missing, ...lacking(rated !== undefined, tyre !== undefined)],
    links,
    ...(weakest && { weakest }),
    ...(next && { next }),
    ...(axles && { axles }),
    ...(span?.high && { load: pounds(span.high) }),
    ...(span?.low && span.high && !span.low.equals(span.high) && { loadLeast: pounds(span.low) }),
    unknown: parts.filter((part) => !links.some((link) => link.part === part)),
    ...marginOf(weakest, span?.high ?? undefined),
    ...tongueOf(trailer, rules),
    passengerTyres: tyre?.passenger ?? false,
  };
}

const lacking = (axle: boolean, tyre: boolean): FieldId[] => [
  ...(axle ? [] : (['capacity'] as const)),
  ...(tyre ? [] : (['tyreSize'] as const)),
];

function marginOf(weakest: Link | undefined, load: Fraction | undefined): Pick<Carrying, 'margin' | 'marginPercent'> {
  if (!weakest || !load) return {};
  const margin = weakest.rating.value.sub(load);
  return { margin: pounds(margin), marginPercent: margin.mul(100).div(weakest.rating.value) };
}

function tongueOf(trailer: Trailer, rules: Rules): Pick<Carrying, 'tongue'> {
  const weight = trailer.numbers.get('tongueWeight')?.span.high;
  const gross = (trailer.numbers.get('grossWeight')?.span ?? grossOf(trailer))?.high;
  if (!weight || !gross || gross.lte(0)) return {};
  const percent = weight.mul(100).div(gross);
  return { tongue: { weight: pounds(weight), percent, code: tongueCode(percent, rules) } };
}

function tongueCode(percent: Fraction, { tongueLeast, tongueMost, tongueUpper }: Rules): TongueCode {
  if (percent.gt(tongueUpper.value)) return 'beyondReason';
  if (percent.gt(tongueMost.value)) return 'heavy';
  return percent.lt(tongueLeast.value) ? 'light' : 'right';
}
