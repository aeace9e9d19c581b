// Fields by their spoken names, and whether a value can belong to one.
import Fraction from 'fraction.js';
import { type Field, type FieldId, fieldOf, fields, type UnitId, units } from '#data';
import { lexicon } from './lexicon.ts';

/** What a field holds: a number with a unit, a trade token, or one of its choices. */
export type Holds = 'number' | 'choice' | 'boltPattern' | 'brakeSize' | 'tyre' | 'thread' | 'bearing' | 'serial' | 'vin';

const tokenFields: Readonly<Partial<Record<FieldId, Holds>>> = {
  boltPattern: 'boltPattern',
  brakeSize: 'brakeSize',
  tyreSize: 'tyre',
  studThread: 'thread',
  uBoltThread: 'thread',
  spindleThread: 'thread',
  innerBearing: 'bearing',
  outerBearing: 'bearing',
  innerCup: 'bearing',
  outerCup: 'bearing',
  bearing: 'bearing',
  cup: 'bearing',
  seal: 'bearing',
  serial: 'serial',
  vin: 'vin',
};

const held = new Map(fields.map(({ id, choices }): [FieldId, Holds] => [id, tokenFields[id] ?? (choices ? 'choice' : 'number')]));

export const holds = (field: FieldId): Holds => held.get(field) ?? 'number';

/** One name may belong to several fields ("tyres": pressure, size); the value then decides. */
const byName = new Map<string, FieldId[]>();
for (const { id, said } of fields) {
  for (const name of said) byName.set(name, [...(byName.get(name) ?? []), id]);
}

/** Spoken name -> the fields it may mean, in the order of the table. */
export const fieldNames = lexicon([...byName].map(([name, ids]) => [ids as readonly FieldId[], [name]] as const));

const dimension = new Map(units.map((row) => [row.id, row.dimension]));
const scale = new Map(units.map((row) => [row.id, new Fraction(row.factor)]));
const offset = new Map(units.map((row) => [row.id, new Fraction(row.offset ?? '0')]));

/** True when a unit said can be meant for this field: pounds said of a torque are foot pounds. */
export function fitsUnit(field: Field, unit: UnitId | undefined): boolean {
  if (!unit || !field.unit) return true;
  return meantUnit(field, unit) !== undefined;
}

/** The unit that is meant when this one is said of a field. */
export function meantUnit(field: Field, said: UnitId): UnitId | undefined {
  const own = field.unit;
  if (!own) return said;
  if (dimension.get(own) === dimension.get(said)) return said;
  if (said === 'lb' && (own === 'lbf.ft' || own === 'psi')) return own;
  if (said === 'deg' && own === 'degF') return own;
  return undefined;
}

/** The same by the field's id. Undefined where none can be meant. */
export const unitMeant = (field: FieldId, said: UnitId): UnitId | undefined => meantUnit(fieldOf(field), said);

/** Whether a field takes this value, in lowest terms: what is counted is counted whole, five and a half are no studs. */
export function wholeIfCounted(field: FieldId, value: string): boolean {
  const { unit, step } = fieldOf(field);
  return unit !== '1' || step !== '1' || !value.includes('/');
}

const exact = (text: string | undefined) => (text === undefined ? undefined : new Fraction(text));
const bands = new Map(fields.map(({ id, min, max }) => [id, { min: exact(min), max: exact(max) }]));

/** True inside the field's plausible band; a field without one takes anything. */
export function isPlausible(field: Field, value: Fraction, unit: UnitId | undefined): boolean {
  const { min, max } = bands.get(field.id) ?? {};
  if (!min || !max || !field.unit) return true;
  const own = inOwn(field, field.unit, value, unit);
  return own !== undefined && own.compare(min) >= 0 && own.compare(max) <= 0;
}

/** True above the field's plausible band, or where it can't be measured in that unit. */
export function isBeyond(field: Field, value: Fraction, unit: UnitId | undefined): boolean {
  const max = bands.get(field.id)?.max;
  if (!max || !field.unit) return false;
  const own = inOwn(field, field.unit, value, unit);
  return own === undefined || own.compare(max) > 0;
}

/** The value in the field's own unit, where that can be meant. */
function inOwn(field: Field, own: UnitId, value: Fraction, unit: UnitId | undefined): Fraction | undefined {
  const meant = meantUnit(field, unit && unit !== '1' ? unit : own);
  if (!meant || meant === own) return meant && value;
  return inBase(value, meant)
    .sub(offset.get(own) ?? 0)
    .div(scale.get(own) ?? 1);
}

const inBase = (value: Fraction, unit: UnitId) => value.mul(scale.get(unit) ?? 1).add(offset.get(unit) ?? 0);
