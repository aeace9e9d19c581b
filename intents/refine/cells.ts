// Statement -> cells: one value each, with the words before and after it that describe it.
import type { Item } from '../items.ts';
import { compatible } from './compatible.ts';

export type ValueItem = Extract<Item, { is: 'number' | 'stamp' | 'choice' | 'same' }>;
type Names = Extract<Item, { is: 'names' }>;

export interface Cell {
  readonly value: ValueItem;
  readonly lead: readonly Item[];
  readonly trail: readonly Item[];
  /** Both together. */
  readonly around: readonly Item[];
}

export const isValue = (item: Item): item is ValueItem =>
  item.is === 'number' || item.is === 'stamp' || item.is === 'choice' || item.is === 'same';

/** Each item between two values goes to one of them. */
export function cellsOf(items: readonly Item[]): Cell[] {
  const values: number[] = [];
  for (let at = 0; at < items.length; at += 1) if (isValueAt(items, at)) values.push(at);
  const trailing = placesTrail(items, values);
  const cells: Cell[] = [];
  let from = 0;
  for (let index = 0; index < values.length; index += 1) {
    const [at = 0, next = items.length] = [values[index], values[index + 1]];
    const value = items[at];
    if (!value || !isValue(value)) continue;
    const lead = items.slice(from, at);
    const between = items.slice(at + 1, next);
    const split =
      index === values.length - 1 ? between.length : trailing ? placesFirst(between) : splitBetween(value, lead, between);
    const trail = between.slice(0, split);
    cells.push({ value, lead, trail, around: lead.concat(trail) });
    from = at + 1 + split;
  }
  return cells;
}

const isValueAt = (items: readonly Item[], at: number) => items[at] !== undefined && isValue(items[at]);
const isPlace = ({ is }: Item) => is === 'place' || is === 'position';

/** "three thou left, four thou right": with no place before the first value and one after the last, each follows its value. */
function placesTrail(items: readonly Item[], values: readonly number[]): boolean {
  const [first, last] = [values[0], values.at(-1)];
  if (first === undefined || last === undefined || first === last) return false;
  const follows = values.every((at) => isPlaceAt(items, at + 1));
  return follows && !items.slice(0, first).some(isPlace);
}

const isPlaceAt = (items: readonly Item[], at: number) => items[at] !== undefined && isPlace(items[at]);

function placesFirst(between: readonly Item[]): number {
  const other = between.findIndex((item) => !isPlace(item));
  return other < 0 ? between.length : other;
}

/** How many of the items between two values describe the first. */
function splitBetween(value: ValueItem, lead: readonly Item[], between: readonly Item[]): number {
  const separator = between.findIndex(
    ({ is }) => is === 'stop' || is === 'and' || is === 'correct' || is === 'change' || is === 'not',
  );
  const open = separator < 0 ? between : between.slice(0, separator);
  if (open[0]?.is === 'names' && open[0].qualifies === 'before') return 1;
  const led = lead.findLast((item) => item.is === 'names');
  if (open[0]?.is === 'names' && open[0].mirrors && led?.is === 'names' && narrows(open[0], led)) return 1;
  const names = open.findIndex(({ is }) => is === 'names');
  const first = open[names];
  const name = lead.findLast((item) => item.is === 'names');
  const named = name?.is === 'names';
  const place = open.findIndex(isPlace);
  // A part number says what it is; a name after it and before another value is that one's.
  const tells = value.is === 'stamp' && lead.length > 0 && separator < 0;
  const takesName =
    !tells &&
    first?.is === 'names' &&
    compatible(first.fields, value) &&
    (!named || (separator >= 0 && place < 0 && narrows(first, name)));
  const beforeName = names < 0 || place < names;
  if (separator >= 0 && !(takesName || (place >= 0 && beforeName))) return names < 0 ? separator : 0;
  if (takesName) return describing(open, names + 1);
  if (separator >= 0) return names < 0 ? separator : place + 1;
  if (place < 0) return 0;
  const described = lead.some(({ is }) => is === 'place' || is === 'position');
  const backwards =
    beforeName && !described && (isSaidAt(open, place) || (!named && names < 0 && lead.length === 0) || isBoth(open[place]));
  return backwards ? place + 1 : 0;
}

/** "springs are 25 1/4 eye to eye": another name of what was named already says which of its sizes. */
const narrows = (name: Names, of: Names) => name.fields !== of.fields && name.fields.some((field) => of.fields.includes(field));

/** After a name bound backwards, a prepositional place still belongs to it: "spindle on the left". */
function describing(open: readonly Item[], from: number): number {
  const place = open.findIndex((item, at) => at >= from && (item.is === 'place' || item.is === 'position'));
  const names = open.findIndex((item, at) => at >= from && item.is === 'names');
  return place >= 0 && (names < 0 || place < names) && isSaidAt(open, place) ? place + 1 : from;
}

/** "on the left", "at the outer": something stands between the value and the place. */
const isSaidAt = (open: readonly Item[], place: number) => open[place - 1]?.is === 'filler';
const isBoth = (item: Item | undefined) => item?.is === 'place' && 'side' in item.place && item.place.side === 'both';
