// Whether a trailer may go without brakes: the federal rule for commercial vehicles in interstate commerce.
import { convert, Fraction, type Quantity } from '../quantity/index.ts';
import { grossOf, onAllAxles } from './load.ts';
import { basisOf } from './need.ts';
import type { Basis, Rules, Trailer } from './types.ts';

export interface BrakeQuestion {
  readonly gross: Quantity;
  /** On the trailer's axles: one axle's weight for a semitrailer, the sum for a full trailer. */
  readonly onAxles: Quantity;
  /** Sum of the towing vehicle's axle weights. */
  readonly towing: Quantity;
}

/** 49 CFR 393.42(b)(3), (4): none needed up to 3,000 lb gross while the axle weight is at most 40 percent of the towing vehicle's. State and local rules may be stricter. */
export function brakesRequired(
  { gross, onAxles, towing }: BrakeQuestion,
  { brakeExemptGross, brakeExemptShare }: Rules,
): boolean {
  const lb = (amount: Quantity): Fraction => convert(amount, 'lb').value;
  if (lb(gross).gt(brakeExemptGross.value)) return true;
  return lb(onAxles).gt(lb(towing).mul(brakeExemptShare.value).div(100));
}

/** `exempt`: none needed; `untold`: light enough, and what decides it is not known or not closely enough. */
export interface BrakeLaw extends Basis {
  readonly code: 'exempt' | 'tooHeavy' | 'overShare' | 'untold' | 'unknown';
  /** The trailer's axles, as percent of the towing vehicle's: the most it may be. */
  readonly percent?: Fraction;
  readonly source: string;
}

/** The same rule on what the job tells of the trailer and the towing vehicle. */
export function brakeLawFor(trailer: Trailer, rules: Rules): BrakeLaw {
  const { brakeExemptGross, brakeExemptShare } = rules;
  const { source } = brakeExemptGross;
  const gross = grossOf(trailer);
  if (!gross) return { code: 'unknown', ...basisOf(trailer, ['gvwr']), source };
  const weights = weightsOn(trailer);
  if (gross.low?.gt(brakeExemptGross.value)) return { code: 'tooHeavy', ...basisOf(trailer, weights), source };
  const { span, uses, missing } = onAllAxles(trailer, rules);
  const basis = basisOf(trailer, [...uses, 'towWeight']);
  const towing = trailer.numbers.get('towWeight')?.span;
  const share = (of: Fraction | null | undefined, whole: Fraction | null | undefined) => of && whole && of.mul(100).div(whole);
  const [least, most] = [share(span?.low, towing?.high), share(span?.high, towing?.low)];
  const told = { ...(most && { percent: most }), source };
  if (most?.lte(brakeExemptShare.value) && gross.high?.lte(brakeExemptGross.value)) return { code: 'exempt', ...basis, ...told };
  if (least?.gt(brakeExemptShare.value)) return { code: 'overShare', ...basis, ...told };
  return { code: 'untold', ...basis, missing: [...new Set([...basis.missing, ...missing])], ...told };
}

const weightsOn = ({ numbers }: Trailer) => (['gvwr', 'grossWeight'] as const).filter((field) => numbers.has(field));

const light = { upTo: new Fraction(12000), times: new Fraction('1.75') };
const heavy = { under: new Fraction(20001), times: new Fraction('1.25') };

/** 49 CFR 393.48(d): surge brakes only up to so many times the towing vehicle's rating, and not at all from 20,001 lb. */
export function surgeBrakesAllowed(trailerRating: Quantity, towingRating: Quantity): boolean {
  const [trailer, towing] = [convert(trailerRating, 'lb').value, convert(towingRating, 'lb').value];
  if (trailer.lte(light.upTo)) return trailer.lte(towing.mul(light.times));
  return trailer.lt(heavy.under) && trailer.lte(towing.mul(heavy.times));
}
