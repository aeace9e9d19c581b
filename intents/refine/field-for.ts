// Which field a value belongs to: by the names around it, by what it says of itself, or by what went before.
import { type FieldId, fieldOf } from '#data';
import { isPlausible } from '../fields.ts';
import type { Item } from '../items.ts';
import type { Where } from '../types.ts';
import type { Position } from '../words/where.ts';
import type { Bound, Value } from './bind.ts';
import type { Cell } from './cells.ts';
import { bestField, fits, isPlausibleFor, partNumber } from './compatible.ts';

export function fieldFor(
  cell: Cell,
  value: Value,
  where: Where,
  last: Bound | undefined,
  before: Cell | undefined,
): FieldId | undefined {
  const beside = last?.field ? [last.field] : [];
  const lead = namesIn(cell.lead, beside);
  const trail = namesIn(cell.trail, lead.length > 0 ? lead.flat() : beside);
  const position = cell.around.find((item) => item.is === 'position')?.position;
  const names = [...lead, ...trail];
  const by = sizedBy(cell, value, last);
  if (by && (names.length === 0 || names.some((fields) => fields.includes(by)))) return by;
  const other = names.length === 0 ? counterpart(last?.field, position, where) : undefined;
  if (other && fits(other, value)) return other;
  const orders = [...common(lead, trail), ...lead.toReversed(), ...trail].map((fields) =>
    akinFirst(sidedFirst(positioned(fields, position), where), last?.field),
  );
  // "Which axles have a seventy-two hub face": what stands beside the number before what was named far off.
  const far = lead.length > 0 && trail.length > 0 && value.start - (cell.lead.findLast(({ is }) => is === 'names')?.end ?? 0) > 2;
  if (far && cell.trail[0]?.is === 'names') orders.unshift(...trail);
  const fitting: FieldId[] = [];
  for (const fields of orders) {
    const field = bestField(fields, value);
    if (field && isSized(field, cell) && !isOfThing(field, cell)) fitting.push(field);
  }
  const plausible = fitting.length > 1 ? fitting.find((field) => isPlausibleFor(value, field)) : undefined;
  const named = plausible ?? fitting[0];
  const narrower = named && fitting.find((field) => Object.values(byPosition[named] ?? {}).includes(field));
  // "Fifteen hundred on the left wheel": a name that only comes after must be able to be it.
  const astray = named && lead.length === 0 && value.is === 'number' && !value.quantity.unit && !isPlausibleFor(value, named);
  if (named && !(astray && value.quantity.number.shop)) return narrower ?? named;
  return implied(cell, value, position, where) ?? continued(cell, value, last) ?? alsoNamed(value, before);
}

/** "long", "width" by themselves tell a size only of what is named before them, or else was measured last. */
function namesIn(items: readonly Item[], last: readonly FieldId[]): (readonly FieldId[])[] {
  const named: (readonly FieldId[])[] = [];
  for (const item of items) {
    if (item.is !== 'names') continue;
    const beside = named.length > 0 ? named.flat() : item.qualifies === 'after' ? [...last, ...properNames(items)] : last;
    const fields = item.qualifies ? item.fields.filter((field) => beside.some((other) => sharesName(field, other))) : item.fields;
    if (fields.length > 0) named.push(fields);
  }
  return named;
}

const properNames = (items: readonly Item[]): readonly FieldId[] =>
  items.flatMap((item) => (item.is === 'names' && !item.qualifies ? item.fields : []));

/** "The axle is ninety-five long", "beam length seventy-two": a size word that is not this field's own lets pass only what the field may measure. */
function isSized(field: FieldId, { around, value }: Cell): boolean {
  const size = around.find((item) => item.is === 'names' && item.qualifies);
  if (size?.is !== 'names' || size.fields.includes(field)) return true;
  return fieldOf(field).unit === 'in' && isPlausibleFor(value, field);
}

/** "The axle is ninety-five": no rating, and no other size of it was named. */
function isOfThing(field: FieldId, { lead, trail, value }: Cell): boolean {
  const names = [...lead, ...trail].filter((item) => item.is === 'names' && item.fields.includes(field));
  const only = names.length > 0 && names.every((item) => item.is === 'names' && item.isThing);
  return only && value.is === 'number' && value.quantity.unit === undefined && !isPlausibleFor(value, field);
}

/** What was measured last, or is another size of it, comes first: "wheel diameter fifteen, width six", "left magnet three ohms, right magnet three". */
function akinFirst(fields: readonly FieldId[], last: FieldId | undefined): readonly FieldId[] {
  if (!last || fields.length < 2) return fields;
  const rank = (field: FieldId) => (field === last ? 0 : sharesName(field, last) ? 1 : 2);
  return [...fields].sort((a, b) => rank(a) - rank(b));
}

/** "Left magnet three two": of what shares a name, what is measured on each side comes first where a side is said. */
function sidedFirst(fields: readonly FieldId[], { side }: Where): readonly FieldId[] {
  if (!side || fields.length < 2) return fields;
  const isSided = (field: FieldId) => fieldOf(field).perSide === true;
  return [...fields.filter(isSided), ...fields.filter((field) => !isSided(field))];
}

const sharesName = (a: FieldId, b: FieldId) => fieldOf(a).said.some((name) => fieldOf(b).said.includes(name));

/** Names that share fields say together what each leaves open: "spring ... eye to eye". */
function common(lead: readonly (readonly FieldId[])[], trail: readonly (readonly FieldId[])[]): FieldId[][] {
  const all = [...lead, ...trail];
  if (all.length < 2) return [];
  const shared = (all.at(-1) ?? []).filter((field) => (all.at(-2) ?? []).includes(field));
  return shared.length > 0 ? [shared] : [];
}

const byPosition: Readonly<Partial<Record<FieldId, Readonly<Record<Position, FieldId>>>>> = {
  journal: { inner: 'innerJournal', outer: 'outerJournal' },
  bearing: { inner: 'innerBearing', outer: 'outerBearing' },
  cup: { inner: 'innerCup', outer: 'outerCup' },
};

function positioned(fields: readonly FieldId[], position: Position | undefined): readonly FieldId[] {
  return position ? fields.map((field) => byPosition[field]?.[position] ?? field) : fields;
}

/** What a value says of itself, without a field's name. */
function implied(cell: Cell, value: Value, position: Position | undefined, where: Where): FieldId | undefined {
  if (value.is === 'choice') return value.field;
  if (value.is === 'stamp') return positioned([value.stamp.field], position)[0];
  const { number, unit, unitWord } = value.quantity;
  const spokenKilo = number.kilo === true && !value.quantity.typed;
  if (spokenKilo && fits('capacity', value) && isPlausibleFor(value, 'capacity')) return 'capacity';
  if (unitWord === 'pounder' && isPlausibleFor(value, 'capacity')) return 'capacity';
  if (unit === 'deg' && unitWord === 'degree' && value.quantity.value.compare(1) !== 0) return 'startAngle';
  const onAxle = where.axle !== undefined && cell.trail.some((item) => item.is === 'place' && 'axle' in item.place);
  if (onAxle && (unit === 'lb' || unit === 'kg' || (unit === undefined && number.shop))) return 'axleLoad';
  const stamped = position && !unit && (partNumber(value)?.length ?? 0) >= 5;
  if (stamped) return positioned(['bearing'], position)[0];
  const journal = position && positioned(['journal'], position)[0];
  return journal && fits(journal, value) && isPlausible(fieldOf(journal), value.quantity.value, unit) ? journal : undefined;
}

/** "tyre ST205/75R15, 65 psi": the name before may mean another field, and the unit says which. */
function alsoNamed(value: Value, before: Cell | undefined): FieldId | undefined {
  const names = before?.lead.findLast((item) => item.is === 'names');
  if (value.is !== 'number' || value.quantity.unit === undefined || names?.is !== 'names' || before?.value.is === 'number')
    return undefined;
  return bestField(names.fields, value);
}

/** Sizes given one by the other: wheels fifteen by six, U-bolts half inch by two and three eighths by five. */
export const nextBy: Readonly<Partial<Record<FieldId, FieldId>>> = {
  uBoltThread: 'uBoltWidth',
  wheelDiameter: 'wheelWidth',
  uBoltDiameter: 'uBoltWidth',
  uBoltWidth: 'uBoltLength',
};

function sizedBy(cell: Cell, value: Value, last: Bound | undefined): FieldId | undefined {
  const by = cell.lead.length === 1 && cell.lead[0]?.is === 'by' && last?.field ? nextBy[last.field] : undefined;
  return by && fits(by, value) ? by : undefined;
}

/** Fields that differ by a word of place: "toe front 71 rear 71 1/8", "inner cup L68111 outer L44610". */
const innerOuter: readonly (readonly [FieldId, FieldId])[] = [
  ['innerJournal', 'outerJournal'],
  ['innerBearing', 'outerBearing'],
  ['innerCup', 'outerCup'],
];
const frontRear: readonly (readonly [FieldId, FieldId])[] = [['toeFront', 'toeRear']];

function counterpart(last: FieldId | undefined, position: Position | undefined, { axle }: Where): FieldId | undefined {
  const of = (pairs: readonly (readonly [FieldId, FieldId])[]) => pairs.find((pair) => last !== undefined && pair.includes(last));
  if (position) return of(innerOuter)?.[position === 'inner' ? 0 : 1];
  return axle === 'front' || axle === 'rear' ? of(frontRear)?.[axle === 'front' ? 0 : 1] : undefined;
}

/** "left end play four thou right six thou": a new place alone carries the field on; so does "and" where there are two sides. */
function continued(cell: Cell, value: Value, last: Bound | undefined): FieldId | undefined {
  const paired = last?.field && cell.lead.length === 1 && cell.lead[0]?.is === 'and' && fieldOf(last.field).perSide;
  if (paired && last.where.side === undefined && isPlausibleFor(value, last.field)) return last.field;
  const newPlace = cell.around.some((item) => item.is === 'place');
  return last?.field && newPlace && bestField([last.field], value) ? last.field : undefined;
}
