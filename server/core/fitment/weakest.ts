// What the running gear of one axle carries: its weakest part, against the load.
import type { FieldId } from '#data';
import type { Fraction, Quantity } from '../quantity/index.ts';
import { axleLoad, axlesOf, equaliserShares, grossOf, tongueOf } from './load.ts';
import { basisOf } from './need.ts';
import { axleForShare, centreOf } from './statics.ts';
import type { Basis, Rules, Trailer } from './types.ts';
import { sidewallOf, tyreLoad, tyreOn } from './tyres/load.ts';

export type CarryingPart = 'axle' | 'tyres' | 'springs' | 'hubs' | 'wheels';

export interface Link {
  readonly part: CarryingPart;
  /** Pounds for the whole axle. */
  readonly rating: Quantity;
  readonly source: string;
}

export type TongueCode = 'light' | 'right' | 'heavy' | 'beyondReason';

export interface TongueShare {
  readonly weight: Quantity;
  readonly percent: Fraction;
  readonly code: TongueCode;
  /** By moments, not by a scale. */
  readonly reckoned: boolean;
  /** Where the axle would have to stand behind the coupler for the nearest usual share, percent. */
  readonly axleAt?: Quantity;
  readonly share?: Fraction;
}

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
  readonly tongue?: TongueShare;
  readonly passengerTyres: boolean;
  /** Of one pound on a tandem, by the arms of its equaliser. */
  readonly shares?: { readonly front: Fraction; readonly rear: Fraction };
}

const parts: readonly CarryingPart[] = ['axle', 'tyres', 'springs', 'hubs', 'wheels'];
const pounds = (value: Fraction): Quantity => ({ value, unit: 'lb' });
const inches = (value: Fraction): Quantity => ({ value, unit: 'in' });

/** `capacity`: the rating, lb, of an axle asked about; without it the job's own axle's. */
export function carrying(trailer: Trailer, rules: Rules, capacity?: Fraction): Carrying {
  const { span, uses, missing } = axleLoad(trailer, rules);
  const rated = capacity ?? trailer.numbers.get('capacity')?.span.low ?? undefined;
  const tyre = tyreLoad(tyreOn(trailer));
  const links: Link[] = [
    ...(rated ? [{ part: 'axle' as const, rating: pounds(rated), source: 'the axle maker' }] : []),
    ...(tyre ? [{ part: 'tyres' as const, rating: pounds(tyre.counted.value.mul(2)), source: tyre.source }] : []),
    ...ofEach(trailer),
  ];
  const [weakest, next] = links.toSorted((a, b) => a.rating.value.compare(b.rating.value));
  const axles = axlesOf(trailer);
  const shares = equaliserShares(trailer);
  const fields: FieldId[] = [
    ...uses,
    ...(rated && !capacity ? (['capacity'] as const) : []),
    ...(tyre ? sidewallOf(trailer, true) : []),
    ...ratings.map(([, field]) => field).filter((field) => trailer.numbers.has(field)),
  ];
  const basis = basisOf(trailer, fields);
  return {
    ...basis,
    missing: [...missing, ...lacking(rated !== undefined, tyre !== undefined, trailer)],
    links,
    ...(weakest && { weakest }),
    ...(next && { next }),
    ...(axles && { axles }),
    ...(span?.high && { load: pounds(span.high) }),
    ...(span?.low && span.high && !span.low.equals(span.high) && { loadLeast: pounds(span.low) }),
    unknown: parts.filter((part) => !links.some((link) => link.part === part)),
    ...marginOf(weakest, span?.high ?? undefined),
    ...tongueFound(trailer, rules),
    passengerTyres: tyre?.passenger ?? false,
    ...(shares && { shares }),
  };
}

/** Rated one by one, and an axle has two of each. */
const ratings = [
  ['springs', 'springCapacity'],
  ['hubs', 'hubCapacity'],
  ['wheels', 'wheelCapacity'],
] as const;

function ofEach({ numbers }: Trailer): Link[] {
  return ratings.flatMap(([part, field]) => {
    const each = numbers.get(field)?.span.low;
    return each ? [{ part, rating: pounds(each.mul(2)), source: `what is stamped on or listed for the ${part}` }] : [];
  });
}

const lacking = (axle: boolean, tyre: boolean, { tokens }: Trailer): FieldId[] => [
  ...(axle ? [] : (['capacity'] as const)),
  ...(tyre ? [] : ([tokens.has('tyreSize') ? 'loadRange' : 'tyreSize'] as const)),
];

function marginOf(weakest: Link | undefined, load: Fraction | undefined): Pick<Carrying, 'margin' | 'marginPercent'> {
  if (!weakest || !load) return {};
  const margin = weakest.rating.value.sub(load);
  return { margin: pounds(margin), marginPercent: margin.mul(100).div(weakest.rating.value) };
}

function tongueFound(trailer: Trailer, rules: Rules): Pick<Carrying, 'tongue'> {
  const gross = trailer.numbers.get('grossWeight')?.span ?? grossOf(trailer);
  const onTongue = gross && tongueOf(trailer, gross);
  const weight = onTongue?.span.high;
  if (!gross?.high || !weight || gross.high.lte(0)) return {};
  const percent = weight.mul(100).div(gross.high);
  const code = tongueCode(percent, rules);
  const axle = trailer.numbers.get('axleDistance')?.span.low;
  const share = code === 'light' ? rules.tongueLeast.value : rules.tongueMost.value;
  const moved =
    code !== 'right' && axle ? { axleAt: inches(axleForShare(centreOf(gross.high, weight, axle), share)), share } : {};
  return { tongue: { weight: pounds(weight), percent, code, reckoned: !trailer.numbers.has('tongueWeight'), ...moved } };
}

function tongueCode(percent: Fraction, { tongueLeast, tongueMost, tongueUpper }: Rules): TongueCode {
  if (percent.gt(tongueUpper.value)) return 'beyondReason';
  if (percent.gt(tongueMost.value)) return 'heavy';
  return percent.lt(tongueLeast.value) ? 'light' : 'right';
}
