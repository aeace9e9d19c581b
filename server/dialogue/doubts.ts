// Why a value is asked about before it counts. Rules are rows of data/policy.json and data/fields.json; nothing here knows words.
import { convert, dimensionOf, gravityOf, isNumber, judgeReading, quantity } from '#core';
import { type FieldId, fieldOf, policy, type UnitId } from '#data';
import type { JobRecord, ValueRecord } from '#log/events';
import { byId, isLive, liveValues } from './values.ts';

export type Doubt =
  | { readonly code: 'soundsLike'; readonly choices: readonly string[] }
  | { readonly code: 'replaces'; readonly old: ValueRecord }
  | { readonly code: 'implausible'; readonly field: FieldId }
  | { readonly code: 'order'; readonly over: ValueRecord; readonly under: ValueRecord }
  | { readonly code: 'sidesApart'; readonly other: ValueRecord }
  | { readonly code: 'outOfLimits' }
  | { readonly code: 'lowConfidence' }
  | { readonly code: 'risk' };

type Amount = { readonly value: string; readonly unit?: UnitId };

/** The amount as a number of `unit`, or undefined where it is a token or of another dimension. */
export function inUnit({ value, unit }: Amount, target: UnitId): ReturnType<typeof quantity>['value'] | undefined {
  const from = unit ?? target;
  if (!/^-?\d+(\/\d+)?$/.test(value) || dimensionOf(from) !== dimensionOf(target)) return undefined;
  return convert(quantity(value, from), target).value;
}

/** Inside the field's band; true where the field has none or the value is a token. */
export function isPlausible(field: FieldId, amount: Amount): boolean {
  const { unit, min, max } = fieldOf(field);
  if (unit === undefined || min === undefined || max === undefined) return true;
  const value = inUnit(amount, unit);
  return value === undefined || (value.compare(min) >= 0 && value.compare(max) <= 0);
}

/** A number without a unit is in the field's own. */
export const meantBy = ({ value, unit, unitSaid }: Amount & { readonly unitSaid?: boolean }): Amount =>
  unit === undefined || (unit === '1' && !unitSaid) ? { value } : { value, unit };

/** What was said can be a value of the field: a number only where it has a band, three digits or more where it is stamped on a part, a unit of its dimension. */
export function unitSuits(field: FieldId, { value, unit }: Amount): boolean {
  const row = fieldOf(field);
  if (row.choices) return row.choices.includes(value);
  const stamped = row.unit === undefined && row.risk === 'asked';
  if (isNumber(value) && row.min === undefined && !(stamped && /^\d{3,}$/.test(value))) return false;
  if (unit === undefined || unit === '1') return true;
  return row.unit !== undefined && dimensionOf(unit) === dimensionOf(row.unit);
}

/** Every reason to ask about a value of the job, the one to speak of first. */
export function doubtsOf(value: ValueRecord, job: JobRecord): readonly Doubt[] {
  return [
    ...soundsLike(value),
    ...replaces(value, job),
    ...(isPlausible(value.field, value) ? [] : [{ code: 'implausible', field: value.field } as const]),
    ...(value.origin === 'maker' ? [] : [...orders(value, job), ...sidesApart(value, job)]),
    ...(isOutOfLimits(value, job) ? [{ code: 'outOfLimits' } as const] : []),
    ...((value.confidence ?? 1) < policy.confidence ? [{ code: 'lowConfidence' } as const] : []),
    ...(fieldOf(value.field).risk === 'asked' ? [{ code: 'risk' } as const] : []),
  ];
}

/** Judged bad by what the trade or the part maker allows. */
export function isOutOfLimits(value: ValueRecord, job: JobRecord): boolean {
  const judgement = judgeReading(value, liveValues(job));
  return judgement !== undefined && gravityOf(judgement) === 'bad';
}

function soundsLike(value: ValueRecord): readonly Doubt[] {
  const alike = (value.alternatives ?? []).filter((other) => isPlausible(value.field, { ...value, value: other }));
  return alike.length > 0 ? [{ code: 'soundsLike', choices: [value.value, ...alike].slice(0, 3) }] : [];
}

function replaces({ supersedes }: ValueRecord, job: JobRecord): readonly Doubt[] {
  const old = supersedes === undefined ? undefined : byId(job, supersedes);
  return old && isLive(old) ? [{ code: 'replaces', old }] : [];
}

function orders(value: ValueRecord, job: JobRecord): readonly Doubt[] {
  return policy.orders.flatMap(({ over, under, strict }) => {
    if (value.field !== over && value.field !== under) return [];
    const other = liveValues(job).findLast(
      ({ field, stage, axle, id, origin }) =>
        origin === undefined &&
        field === (value.field === over ? under : over) &&
        stage === value.stage &&
        axle === value.axle &&
        id !== value.supersedes,
    );
    if (!other) return [];
    const [large, small] = value.field === over ? [value, other] : [other, value];
    const gap = difference(large, small);
    return gap !== undefined && (gap < 0 || (strict && gap === 0)) ? [{ code: 'order' as const, over: large, under: small }] : [];
  });
}

function difference(a: ValueRecord, b: ValueRecord): number | undefined {
  const unit = fieldOf(a.field).unit;
  const [x, y] = unit === undefined ? [] : [inUnit(a, unit), inUnit(b, unit)];
  return x === undefined || y === undefined ? undefined : x.compare(y);
}

function sidesApart(value: ValueRecord, job: JobRecord): readonly Doubt[] {
  const rule = policy.sidesApart.find(({ field }) => field === value.field);
  if (!rule || value.side === undefined) return [];
  const other = liveValues(job).findLast(
    ({ field, stage, axle, side }) =>
      field === value.field && stage === value.stage && axle === value.axle && side !== undefined && side !== value.side,
  );
  const [here, there] = [inUnit(value, rule.unit), other && inUnit(other, rule.unit)];
  if (!other || !here || !there) return [];
  return here.sub(there).abs().compare(rule.apart) > 0 ? [{ code: 'sidesApart', other }] : [];
}
