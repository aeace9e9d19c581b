// Sums and conversions asked mid-job. Exact; a unit that was not said is taken from the other side.
import { convert, dimensionOf, Fraction, type Quantity, type UnitId } from '../quantity/index.ts';

/** A number as said: '1' or nothing where no unit was said. */
export interface Operand {
  readonly value: string;
  readonly unit?: UnitId;
}
export type SumAsked =
  | { readonly op: 'add' | 'subtract' | 'multiply' | 'divide'; readonly a: TermAsked; readonly b: TermAsked }
  | { readonly op: 'convert'; readonly a: TermAsked; readonly into: UnitId };
type TermAsked = Operand | SumAsked;

export type SumResult =
  | { readonly code: 'sum'; readonly result: Quantity; readonly assumed?: UnitId }
  | { readonly code: 'unlikeUnits'; readonly from: UnitId; readonly into: UnitId }
  | { readonly code: 'divideByNothing' }
  | { readonly code: 'noSuchUnit'; readonly op: 'multiply' | 'divide' };

/** What a sum comes to, exactly, its inner sums first. Mixed units add up in the unit of the first. */
export function workOut(sum: SumAsked): SumResult {
  const a = amountOf(sum.a);
  if (a.code !== 'sum') return a;
  if (sum.op === 'convert') return convertedFrom(a.result, sum.into);
  const b = amountOf(sum.b);
  if (b.code !== 'sum') return b;
  return sum.op === 'add' || sum.op === 'subtract' ? summed(sum.op, a.result, b.result) : scaled(sum.op, a.result, b.result);
}

function amountOf(term: TermAsked): SumResult {
  if ('op' in term) return workOut(term);
  return { code: 'sum', result: { value: new Fraction(term.value), unit: term.unit ?? '1' } };
}

const isBare = ({ unit }: Quantity): boolean => unit === '1';

function summed(op: 'add' | 'subtract', a: Quantity, b: Quantity): SumResult {
  const unit = isBare(a) ? b.unit : a.unit;
  const right = converted(isBare(b) ? { ...b, unit } : b, unit);
  if (right.code !== 'sum') return right;
  const value = op === 'add' ? a.value.add(right.result.value) : a.value.sub(right.result.value);
  return { code: 'sum', result: { value, unit } };
}

/** Something times a bare number; alike over alike is a bare number; nothing else has a unit here. */
function scaled(op: 'multiply' | 'divide', a: Quantity, b: Quantity): SumResult {
  if (op === 'divide' && b.value.equals(0)) return { code: 'divideByNothing' };
  if (isBare(b))
    return { code: 'sum', result: { value: op === 'multiply' ? a.value.mul(b.value) : a.value.div(b.value), unit: a.unit } };
  if (op === 'multiply' && isBare(a)) return { code: 'sum', result: { value: a.value.mul(b.value), unit: b.unit } };
  if (op === 'multiply' || isBare(a)) return { code: 'noSuchUnit', op };
  const like = converted(b, a.unit);
  return like.code === 'sum' ? { code: 'sum', result: { value: a.value.div(like.result.value), unit: '1' } } : like;
}

/** What a shop means by a bare number that it wants in the other system. */
const counterparts: Readonly<Partial<Record<UnitId, UnitId>>> = {
  mm: 'in',
  cm: 'in',
  m: 'in',
  in: 'mm',
  ft: 'in',
  'N.m': 'lbf.ft',
  'lbf.ft': 'N.m',
  'lbf.in': 'lbf.ft',
  kg: 'lb',
  lb: 'kg',
  kPa: 'psi',
  bar: 'psi',
  psi: 'kPa',
  degC: 'degF',
  degF: 'degC',
  km: 'mi',
  mi: 'km',
};

function convertedFrom(amount: Quantity, into: UnitId): SumResult {
  const assumed = isBare(amount) && into !== '1' ? counterparts[into] : undefined;
  const result = converted(isBare(amount) ? { ...amount, unit: assumed ?? into } : amount, into);
  return result.code === 'sum' && assumed ? { ...result, assumed } : result;
}

function converted(amount: Quantity, into: UnitId): SumResult {
  if (dimensionOf(amount.unit) !== dimensionOf(into)) return { code: 'unlikeUnits', from: amount.unit, into };
  return { code: 'sum', result: convert(amount, into) };
}
