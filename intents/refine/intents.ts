// Bound values -> intents: corrections settled, units filled in, impossible ones named.
import type Fraction from 'fraction.js';
import { type Field, type FieldId, fieldOf, type UnitId } from '#data';
import { holds, isPlausible, meantUnit } from '../fields.ts';
import type { QuantityReading } from '../numbers/quantity.ts';
import type { Token } from '../tokens.ts';
import type { CorrectIntent, Expects, Intent, MeasureIntent, ProblemIntent, QuantityIntent, Said, Span } from '../types.ts';
import type { Bound } from './bind.ts';
import { fits, isPlausibleFor, partNumber } from './compatible.ts';

/** The characters that tokens start..end cover. */
export function spanOf(tokens: readonly Token[], start: number, end: number): Span {
  return [tokens[start]?.span[0] ?? 0, tokens[end - 1]?.span[1] ?? 0];
}

/** One intent for each value said, in order; a denied value goes with the one that replaces it. */
export function intentsOf(bounds: readonly Bound[], tokens: readonly Token[], expects: Expects | undefined): Intent[] {
  return settle(bounds).map((settled) => intentOf(settled, tokens, expects));
}

interface Settled {
  readonly bound: Bound;
  readonly not?: Bound;
  readonly correct: boolean;
}

/** "fifty nine, scratch that, fifty eight" is one measure; "no, fifty eight" corrects what went before. */
function settle(bounds: readonly Bound[]): Settled[] {
  const found: Settled[] = [];
  let denied: Bound | undefined;
  for (const bound of bounds) {
    const last = found.at(-1);
    if (bound.denied && last && !last.not) found[found.length - 1] = { ...last, not: bound, correct: true };
    else if (bound.denied) denied = bound;
    else if (bound.corrects && last && !last.correct && replaces(bound, last.bound)) {
      found[found.length - 1] = {
        bound: { ...last.bound, ...withWhole(bound, last.bound), ...keep(last.bound, bound) },
        correct: false,
      };
    } else if (denied) {
      found.push({ bound: merged(bound, denied), not: denied, correct: true });
      denied = undefined;
    } else found.push({ bound, correct: bound.corrects });
  }
  if (denied) found.push({ bound: denied, not: denied, correct: true });
  return found;
}

/** "seventy-one and seven eighths, no, five eighths": the part alone is corrected where it cannot be the whole. */
function withWhole(bound: Bound, last: Bound): Bound {
  if (bound.value.is !== 'number' || last.value.is !== 'number' || !last.field || !isPlausibleFor(last.value, last.field))
    return bound;
  const { quantity } = bound.value;
  const alone =
    quantity.number.shape === 'fraction' &&
    quantity.unit === undefined &&
    !isPlausible(fieldOf(last.field), quantity.value, undefined);
  if (!alone) return bound;
  const value = quantity.value.add(last.value.quantity.value.floor());
  return { ...bound, value: { ...bound.value, quantity: { ...quantity, value } } };
}

const replaces = (bound: Bound, last: Bound) => bound.field === last.field || takes(last.field, bound);

/** A value that names no field can stand for one that it fits: "six" is no bolt pattern. */
const takes = (field: FieldId | undefined, bound: Bound) =>
  bound.field === undefined && (field === undefined || fits(field, bound.value));
const keep = (last: Bound, bound: Bound) => ({
  where: { ...last.where, ...bound.where },
  ...(last.field ? { field: last.field } : {}),
  start: last.start,
});
const merged = (bound: Bound, denied: Bound): Bound => (bound.field || !denied.field ? bound : { ...bound, field: denied.field });

function intentOf({ bound, not, correct }: Settled, tokens: readonly Token[], expects: Expects | undefined): Intent {
  const span = spanOf(tokens, Math.min(bound.start, not?.start ?? bound.start), Math.max(bound.end, not?.end ?? bound.end));
  const fault = faultOf(bound, expects);
  if (fault) return problem(bound.field ?? 'quantity', fault, tokens, span);
  const said = saidOf(bound, expects, correct);
  const common = { ...said, ...bound.where, ...(bound.maker ? { origin: 'maker' as const } : {}), span };
  if (not && not === bound) return { kind: 'command', name: 'deny', said, span };
  if (correct) {
    const denied = not && saidOf(not, expects, true).value;
    return {
      kind: 'correct',
      ...common,
      ...(bound.field ? { field: bound.field } : {}),
      ...(denied ? { not: denied } : {}),
    } satisfies CorrectIntent;
  }
  const also = bound.also ? { also: bound.also } : {};
  if (bound.field) return { kind: 'measure', field: bound.field, ...common, ...also } satisfies MeasureIntent;
  return { kind: 'quantity', ...common } satisfies QuantityIntent;
}

function problem(about: string, message: string, tokens: readonly Token[], span: Span): ProblemIntent {
  const inside = tokens.filter(({ span: [start] }) => start >= span[0] && start < span[1]);
  return { kind: 'problem', about, message, text: inside.map(({ word }) => word).join(' '), span };
}

/** What is wrong with a value, in one plain sentence, or nothing. */
function faultOf(bound: Bound, expects: Expects | undefined): string | undefined {
  if (bound.value.is === 'stamp') return bound.value.stamp.problem;
  if (bound.value.is !== 'number') return undefined;
  const { number, unit } = bound.value.quantity;
  const part = number.part;
  const measured = bound.field !== undefined || (expects?.fields.length ?? 0) > 0;
  if (!part || !measured) return undefined;
  const { denominator, numerator } = part;
  if (numerator >= denominator)
    return `${numerator}/${denominator} is no part of one. Say the whole and then the part, such as one and an eighth.`;
  const onTape = (denominator & (denominator - 1)) === 0 && denominator <= 64;
  const decimal = denominator === 10 || denominator === 100 || denominator % 1000 === 0;
  const inches = unit === undefined || unit === 'in';
  if (!inches || onTape || decimal || !lengthField(bound.field)) return undefined;
  return `No tape is marked in parts of ${denominator}. Say halves, quarters, eighths, sixteenths, thirty-seconds or sixty-fourths.`;
}

const lengthField = (field: FieldId | undefined) => field === undefined || fieldOf(field).unit === 'in';

function saidOf(bound: Bound, expects: Expects | undefined, correct: boolean): Said {
  const { value } = bound;
  if (value.is === 'choice') return { value: value.choice };
  if (value.is === 'stamp') {
    const { unit, unitSaid, value: text } = value.stamp;
    return unit ? { value: text, unit, unitSaid: unitSaid ?? false } : { value: text };
  }
  const row = bound.field ? fieldOf(bound.field) : undefined;
  if (row && (holds(row.id) === 'bearing' || holds(row.id) === 'serial')) return { value: partNumber(value) ?? '' };
  return numberSaid(value.quantity, row, bound, expects, correct);
}

function numberSaid(
  quantity: QuantityReading,
  row: Field | undefined,
  bound: Bound,
  expects: Expects | undefined,
  correct: boolean,
): Said {
  const { unit, factor } = unitOf(quantity, row, expects, correct);
  const scale = (value: Fraction) => (factor ? value.mul(factor) : value);
  const text = (value: Fraction) => scale(bound.negative && value.s > 0n ? value.neg() : value).toFraction();
  const others = quantity.soundsLike.map(scale);
  const likely = row ? others.filter((value) => isPlausible(row, value, unit)) : others;
  const alternatives = [...new Set([...likely, ...others].map((value) => value.toFraction()))];
  return {
    value: text(quantity.value),
    unit,
    unitSaid: quantity.unit !== undefined,
    ...(quantity.hedge ? { hedge: quantity.hedge } : {}),
    ...(quantity.to ? { to: text(quantity.to) } : {}),
    ...(quantity.plusMinus ? { plusMinus: text(quantity.plusMinus) } : {}),
    ...(quantity.resolution ? { resolution: quantity.resolution } : {}),
    ...(alternatives.length > 0 ? { alternatives } : {}),
  };
}

const mils = new Set(['mil', 'mils', 'mill', 'mills']);

/** The unit meant; "mil" is a thousandth of an inch where a gauge reads thousandths, else a millimetre. */
function unitOf(
  quantity: QuantityReading,
  row: Field | undefined,
  expects: Expects | undefined,
  correct: boolean,
): { unit: UnitId; factor?: string } {
  const waited = row ?? (expects?.fields[0] ? fieldOf(expects.fields[0]) : undefined);
  if (mils.has(quantity.unitWord ?? '') && waited?.unit === 'in' && waited.step === '1/1000')
    return { unit: 'in', factor: '1/1000' };
  if (quantity.unit) return { unit: row ? (meantUnit(row, quantity.unit) ?? quantity.unit) : quantity.unit };
  if (row) return { unit: row.unit ?? '1' };
  if (quantity.number.shop && quantity.value.compare(1000) >= 0) return { unit: 'lb' };
  return { unit: correct && isTapePart(quantity) ? 'in' : '1' };
}

const isTapePart = ({ value }: QuantityReading) => value.d > 1n && value.d <= 64n && (value.d & (value.d - 1n)) === 0n;
