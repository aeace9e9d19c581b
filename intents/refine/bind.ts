// Cells -> bound values: the field, side, axle and stage that each value belongs to.
import { type FieldId, fieldOf } from '#data';
import type { Item, Place } from '../items.ts';
import type { AxlePosition, Side, Where } from '../types.ts';
import type { Cell, ValueItem } from './cells.ts';
import { isPlausibleFor } from './compatible.ts';
import { fieldFor, nextBy } from './field-for.ts';

export type Value = Exclude<ValueItem, { is: 'same' }>;

/** A value with everything that was found to belong to it; `start..end` are tokens. */
export interface Bound {
  readonly value: Value;
  readonly field: FieldId | undefined;
  readonly where: Where;
  readonly maker: boolean;
  readonly denied: boolean;
  readonly corrects: boolean;
  readonly negative: boolean;
  readonly also?: { readonly field: FieldId; readonly value: string };
  readonly start: number;
  readonly end: number;
}

/**
 * Binds cells in the order said; what one leaves unsaid (axle, stage, the field of "left four, right six") the next may inherit.
 * `before` is the place that was told before the first.
 */
export function bind(cells: readonly Cell[], before: Where = {}): Bound[] {
  const found: Bound[] = [];
  for (const [at, cell] of cells.entries()) {
    const where = inherited(found.at(-1)?.where ?? before, placesOf(cell.around, found.at(-1)));
    const { value } = cell;
    const last = found.at(-1);
    if (value.is === 'same') sameAgain(cell, where, found);
    else for (const place of axlesOf(cell, where)) found.push(one(cell, value, place, last, namedBefore(cells, at)));
  }
  return sideBySide(withRiders(namedAfter(found, cells)), cells).map(withSharedUnit);
}

/** "Two and a quarter by five and a half U-bolts": the name comes after both sizes. */
function namedAfter(found: readonly Bound[], cells: readonly Cell[]): readonly Bound[] {
  return found.map((bound, at): Bound => {
    const [first, second] = [found[at - 1], found[at + 1]];
    const by = (index: number) =>
      found.length === cells.length && cells[index]?.lead.length === 1 && cells[index]?.lead[0]?.is === 'by';
    if (!bound.field && second?.field && by(at + 1) && nextBy[second.field] && isPlausibleFor(bound.value, second.field))
      return { ...bound, field: second.field };
    const next = bound.field && first && !first.field && by(at) ? nextBy[bound.field] : undefined;
    return next && isPlausibleFor(bound.value, next) && bound.field && isPlausibleFor(first?.value ?? bound.value, bound.field)
      ? { ...bound, field: next }
      : bound;
  });
}

/** A kind that rides with a size said beside it: "seven by one and a quarter electric", "three inch round tube". */
const riders: readonly { readonly kind: FieldId; readonly size: FieldId }[] = [
  { kind: 'brakeType', size: 'brakeSize' },
  { kind: 'beamShape', size: 'beamDiameter' },
  { kind: 'brakeType', size: 'capacity' },
  { kind: 'loadRange', size: 'tyreSize' },
  { kind: 'loadIndex', size: 'tyreSize' },
];

function withRiders(found: readonly Bound[]): Bound[] {
  const kept: Bound[] = [];
  for (let at = 0; at < found.length; at += 1) {
    const [bound, next] = [found[at], found[at + 1]];
    if (!bound) break;
    const pair = (next && ride(bound, next)) ?? (next && ride(next, bound));
    kept.push(pair ?? bound);
    if (pair) at += 1;
  }
  return kept;
}

function ride(size: Bound, kind: Bound): Bound | undefined {
  const beside = size.end === kind.start || (kind.end === size.start && size.start === size.value.start);
  const isSized = (field: FieldId) =>
    size.field === field || (size.field === undefined && isPlausibleFor(size.value, field) && saysUnit(size.value, field));
  const row = riders.find((rider) => rider.kind === kind.field && isSized(rider.size));
  if (!row || !beside || kind.value.is !== 'choice') return undefined;
  const [start, end] = [Math.min(size.start, kind.start), Math.max(size.end, kind.end)];
  return { ...size, field: row.size, start, end, also: { field: kind.value.field, value: kind.value.choice } };
}

/** A capacity is known by its pounds; a size may leave its inches out. */
const saysUnit = (value: Value, field: FieldId) =>
  field !== 'capacity' || (value.is === 'number' && (value.quantity.unit !== undefined || value.quantity.number.shop));

/** The cell before; a choice with no name of its own leaves the word to the one before it. */
function namedBefore(cells: readonly Cell[], at: number): Cell | undefined {
  const before = cells[at - 1];
  const nameless = before?.value.is === 'choice' && before.lead.length === 0 && before.trail.length === 0;
  return nameless ? (cells[at - 2] ?? before) : before;
}

function one(cell: Cell, value: Value, where: Where, last: Bound | undefined, before: Cell | undefined): Bound {
  const field = fieldFor(cell, value, where, last, before);
  const { around } = cell;
  const has = (is: Item['is']) => around.some((item) => item.is === is);
  const lead = (is: Item['is']) =>
    cell.lead.some((item) => item.is === is) || (before?.trail.at(-1)?.is === is && before !== undefined);
  // "toe front 71, rear 71 1/8": the word chose the field; the axle stays unsaid.
  const chose = (field === 'toeFront' || field === 'toeRear') && !around.some(({ is }) => is === 'names');
  const placed = chose ? withoutAxle(where) : where;
  const kept = field && placed.side && !saysSide(cell) && !fieldOf(field).perSide ? without(placed) : placed;
  return {
    value,
    where: kept,
    maker: has('maker'),
    denied: lead('not'),
    corrects: lead('correct') || lead('change'),
    negative: has('minus'),
    start: Math.min(value.start, around.find(isSaid)?.start ?? value.start),
    end: Math.max(value.end, around.findLast(isSaid)?.end ?? value.end),
    field,
  };
}

const isSaid = ({ is }: Item) => is !== 'stop' && is !== 'and';

function withoutAxle({ axle: _axle, ...where }: Where): Where {
  return where;
}

function without({ side: _side, ...where }: Where): Where {
  return where;
}

const placeIn = (item: Item): Place | undefined => (item.is === 'place' || item.is === 'names' ? item.place : undefined);

function saysSide(cell: Cell): boolean {
  return cell.around.some((item) => {
    const place = placeIn(item);
    return place !== undefined && 'side' in place;
  });
}

/** The place that these parts tell. */
export const wherePlaced = (items: readonly Item[]): Where => placesOf(items, undefined);

/** Places said; "the other side" is the one not said last. */
function placesOf(items: readonly Item[], last: Bound | undefined): Where {
  let where: Where = {};
  for (const item of items) {
    const place = placeIn(item);
    if (!place) continue;
    if ('side' in place) {
      const side = place.side === 'other' ? opposite(last?.where.side) : place.side;
      where = side ? { ...where, side: bothOr(where.side, side) } : { ...where, otherSide: true };
    } else where = { ...where, ...place };
  }
  return where;
}

/** "front and rear drums ten inches": one value at two axles. */
function axlesOf(cell: Cell, where: Where): Where[] {
  const axles: AxlePosition[] = [];
  for (const item of cell.around) {
    const place = placeIn(item);
    if (place && 'axle' in place && !axles.includes(place.axle)) axles.push(place.axle);
  }
  return axles.length > 1 ? axles.map((axle) => ({ ...where, axle })) : [where];
}

const opposite = (side: Side | undefined): Side | undefined => (side === 'left' ? 'right' : side === 'right' ? 'left' : side);
const bothOr = (first: Side | undefined, second: Side): Side => (first && first !== second ? 'both' : second);

/** Axle and stage hold until another is said; so does the side, for what has sides. */
function inherited(last: Where, where: Where): Where {
  const { side, ...kept } = last;
  const newAxle = where.axle !== undefined && where.axle !== last.axle;
  return side === undefined || newAxle || where.side !== undefined ? { ...kept, ...where } : { ...last, ...where };
}

/** "rear axle the same", "right the same": what was said last, at another place. "The other side too" makes both of a side unsaid. */
function sameAgain(cell: Cell, where: Where, found: Bound[]): void {
  const places = cell.around.filter((item) => item.is === 'place');
  const last = found.at(-1);
  if (places.length === 0 || !last) return;
  const other = places.some(({ place }) => 'side' in place && place.side === 'other');
  if (other && last.where.side === undefined) {
    found[found.length - 1] = { ...last, where: { ...last.where, side: 'both' }, end: cell.value.end };
    return;
  }
  const byAxle = places.some(({ place }) => 'axle' in place);
  const from = byAxle ? found.filter((bound) => bound.where.axle === last.where.axle) : [last];
  const start = Math.min(...places.map((item) => item.start));
  found.push(
    ...from.map((bound) => ({ ...bound, where: { ...bound.where, ...placed(where, byAxle) }, start, end: cell.value.end })),
  );
}

/** "Left three and right four thou", "hub face 1830 mm, spring centre 1475": a unit is given once where the bare number cannot be. */
function withSharedUnit(bound: Bound, at: number, all: readonly Bound[]): Bound {
  const { field, value } = bound;
  if (!field || value.is !== 'number' || value.quantity.unit || isPlausibleFor(value, field)) return bound;
  for (const beside of [all[at - 1]?.value, all[at + 1]?.value]) {
    if (beside?.is !== 'number' || !beside.quantity.unit || beside.quantity.number.value.n === 0n) continue;
    const { unit, unitWord = '', number } = beside.quantity;
    const size = value.quantity.value.mul(beside.quantity.value).div(number.value);
    const shared: Value = { ...value, quantity: { ...value.quantity, value: size, unit, unitWord } };
    if (isPlausibleFor(shared, field)) return { ...bound, value: shared };
  }
  return bound;
}

const placed = (where: Where, byAxle: boolean): Where => (byAxle && where.axle ? { axle: where.axle } : where);

/** Two bare lengths side by side are how a beam is called out: hub face, then spring centre. */
function sideBySide(found: readonly Bound[], cells: readonly Cell[]): Bound[] {
  const [first, second] = found;
  if (found.length !== 2 || !first || !second || cells.length !== 2) return [...found];
  if (second.field || (first.field && first.field !== 'hubFace')) return [...found];
  if (second.start !== first.end || saysAnything(second) || first.corrects || first.denied) return [...found];
  if (!isPlausibleFor(first.value, 'hubFace') || !isPlausibleFor(second.value, 'springCentre')) return [...found];
  const narrower =
    first.value.is === 'number' &&
    second.value.is === 'number' &&
    first.value.quantity.value.compare(second.value.quantity.value) > 0;
  return narrower
    ? [
        { ...first, field: 'hubFace' },
        { ...second, field: 'springCentre' },
      ]
    : [...found];
}

const saysAnything = ({ where, corrects, denied }: Bound) =>
  corrects || denied || where.side !== undefined || where.axle !== undefined;
