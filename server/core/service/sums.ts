// Sums and conversions asked mid-job. Exact; a unit that was not said is taken from the other side.
import { convert, dimensionOf, Fraction, type Quantity, type UnitId } from '../quantity/index.ts';

/** A number as said: '1' or nothing where no unit was said. */
export interface Operand {
  readonly value: string;
  readonly unit?: UnitId;
}
export type SumAsked =
  | { readonly op: 'add' | 'subtract' | 'multiply' | 'divide'; readonly a: Operand; readonly b: Operand }
  | { readonly op: 'convert'; readonly a: Operand; readonly into: UnitId };

export type SumResult =
  | { readonly code: 'sum'; readonly result: Quantity; readonly assumed?: UnitId }
  | { readonly code: 'unlikeUnits'; readonly from: UnitId; readonly into: UnitId }
  | { readonly code: 'divideByNothing' }
  | { readonly code: 'noSuchUnit'; readonly op: 'multiply' | 'divide' };

/** What a sum comes to, exactly. Mixed units add up in the unit of the first. */
export function workOut(sum: SumAsked): SumResult {
  if (sum.op === 'convert') return convertedFrom(sum.a, sum.into);
  const [first, second] = [unitOf(sum.a), unitOf(sum.b)];
  return sum.op === 'add' || sum.op === 'subtract' ? summed(sum, first, second) : scaled(sum, first, second);
}

type Sides = { readonly op: 'add' | 'subtract' | 'multiply' | 'divide'; readonly a: Operand; readonly b: Operand };

function summed({ op, a, b }: Sides, first: UnitId | undefined, second: UnitId | undefined): SumResult {
  const unit = first ?? second ?? '1';
  const left = amountOf(a, unit);
  const right = converted(amountOf(b, unit), unit);
  if (right.code !== 'sum') return right;
  const value = op === 'add' ? left.value.add(right.result.value) : left.value.sub(right.result.value);
  return { code: 'sum', result: { value, unit } };
}

/** Something times a bare number; alike over alike is a bare number; nothing else has a unit here. */
function scaled({ op, a, b }: Sides, first: UnitId | undefined, second: UnitId | undefined): SumResult {
  const [left, right] = [new Fraction(a.value), new Fraction(b.value)];
  if (op === 'divide' && right.equals(0)) return { code: 'divideByNothing' };
  if (second === undefined)
    return { code: 'sum', result: { value: op === 'multiply' ? left.mul(right) : left.div(right), unit: first ?? '1' } };
  if (op === 'multiply' && first === undefined) return { code: 'sum', result: { value: left.mul(right), unit: second } };
  if (op === 'multiply' || first === undefined) return { code: 'noSuchUnit', op: op === 'multiply' ? 'multiply' : 'divide' };
  const like = converted({ value: right, unit: second }, first);
  return like.code === 'sum' ? { code: 'sum', result: { value: left.div(like.result.value), unit: '1' } } : like;
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

function convertedFrom(side: Operand, into: UnitId): SumResult {
  const assumed = unitOf(side) === undefined ? counterparts[into] : undefined;
  const result = converted(amountOf(side, assumed ?? into), into);
  return result.code === 'sum' && assumed ? { ...result, assumed } : result;
}

function converted(amount: Quantity, into: UnitId): SumResult {
  if (dimensionOf(amount.unit) !== dimensionOf(into)) return { code: 'unlikeUnits', from: amount.unit, into };
  return { code: 'sum', result: convert(amount, into) };
}

function unitOf({ unit }: Operand): UnitId | undefined {
  return unit === '1' ? undefined : unit;
}

function amountOf(side: Operand, otherwise: UnitId): Quantity {
  return { value: new Fraction(side.value), unit: unitOf(side) ?? otherwise };
}
