// The statement being heard: its parts so far, and what they call for next. Kept up part by part, so that cost stays linear.
import type { FieldId } from '#data';
import { holds } from './fields.ts';
import type { Item } from './items.ts';
import { isValue, type ValueItem } from './refine/cells.ts';
import { compatible } from './refine/compatible.ts';
import type { Token } from './tokens.ts';
import type { Expects } from './types.ts';
import type { Calling } from './value-at.ts';
import { interjections } from './words/fillers.ts';

export interface Statement {
  readonly items: Item[];
  /** A value was heard. */
  measures: boolean;
  /** Nothing but fillers since the last stop. */
  fresh: boolean;
  /** Nothing but "okay", "so" and their like since the last stop. */
  opening: boolean;
  /** A question was looked for in vain since the last stop: fewer words will not make one. */
  asksNothing: boolean;
  /** Fields named since the last value. */
  named: readonly FieldId[] | undefined;
  /** Fields named before the last value, of which a new place tells more: "left four, right six". */
  carried: readonly FieldId[] | undefined;
  /** A place was told since the last value. */
  placed: boolean;
  /** The value just before, where no name led it: "3500 pound axle" names it afterwards. */
  nameless: ValueItem | undefined;
}

export const newStatement = (): Statement => ({
  items: [],
  measures: false,
  fresh: true,
  opening: true,
  asksNothing: false,
  named: undefined,
  carried: undefined,
  placed: false,
  nameless: undefined,
});

export function addItem(to: Statement, item: Item, tokens: readonly Token[]): void {
  to.items.push(item);
  const stops = item.is === 'stop';
  const idle = item.is === 'filler' || item.is === 'by' || item.is === 'and';
  to.fresh = stops || (to.fresh && idle);
  to.opening = stops || (to.opening && (item.is === 'and' || (idle && interjections.has(tokens[item.start]?.word ?? ''))));
  if (stops) to.asksNothing = false;
  if (isValue(item)) {
    to.measures = true;
    to.nameless = to.named || to.placed ? undefined : item;
    to.carried = to.named ?? (to.placed ? to.carried : undefined);
    to.named = undefined;
    to.placed = false;
  } else if (item.is === 'names') {
    to.named = to.nameless && compatible(item.fields, to.nameless) ? undefined : item.fields;
    to.nameless = undefined;
  } else if (item.is !== 'filler') to.nameless = undefined;
  to.placed ||= item.is === 'place' || item.is === 'position';
}

/** The fields that the words since the last value call for; before any, what the dialogue waits for. */
export function callingOf({ named, carried, placed }: Statement, expects: Expects | undefined): Calling {
  const fields = named ?? (placed && carried?.every((field) => holds(field) === 'number') ? carried : undefined);
  return fields ? { fields, implied: false } : { fields: expects?.fields ?? [], implied: true };
}
