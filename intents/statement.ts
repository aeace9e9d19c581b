// The statement being heard: its parts so far, and what they call for next. Kept up part by part, so that cost stays linear.
import type { FieldId } from '#data';
import type { Calling, Item } from './items.ts';
import { isValue, type ValueItem } from './refine/cells.ts';
import { compatible } from './refine/compatible.ts';
import type { Token } from './tokens.ts';
import type { Expects } from './types.ts';
import { interjections } from './words/fillers.ts';

export interface Statement {
  readonly items: readonly Item[];
  /** Nothing but fillers since the last stop. */
  readonly fresh: boolean;
  /** Nothing but "okay", "so" and their like since the last stop. */
  readonly opening: boolean;
  /** A question was looked for in vain since the last stop: fewer words will not make one. */
  asksNothing: boolean;
  add(item: Item): void;
  /** The fields that the words since the last value call for; before any, what the dialogue waits for. */
  calling(): Calling;
}

export function statement(tokens: readonly Token[], expects: Expects | undefined): Statement {
  const items: Item[] = [];
  let named: readonly FieldId[] | undefined;
  /** The value just before, where no name led it: "3500 pound axle" names it afterwards. */
  let nameless: ValueItem | undefined;
  const state = { items, fresh: true, opening: true };
  let asksNothing = false;

  const noteName = (fields: readonly FieldId[]) => {
    if (nameless && compatible(fields, nameless)) named = undefined;
    else named = fields;
    nameless = undefined;
  };

  const noteValue = (value: ValueItem) => {
    nameless = named ? undefined : value;
    named = undefined;
  };

  return {
    get items() {
      return state.items;
    },
    get fresh() {
      return state.fresh;
    },
    get opening() {
      return state.opening;
    },
    get asksNothing() {
      return asksNothing;
    },
    set asksNothing(value) {
      asksNothing = value;
    },
    add(item) {
      if (item.is === 'stop') asksNothing = false;
      items.push(item);
      const idle = item.is === 'filler' || item.is === 'and';
      state.fresh = item.is === 'stop' || (state.fresh && idle);
      state.opening =
        item.is === 'stop' || (state.opening && (item.is === 'and' || (idle && isInterjection(tokens[item.start]))));
      if (isValue(item)) noteValue(item);
      else if (item.is === 'names') noteName(item.fields);
      else if (item.is !== 'filler') nameless = undefined;
    },
    calling: () => (named ? { fields: named, implied: false } : { fields: expects?.fields ?? [], implied: true }),
  };
}

const isInterjection = (token: Token | undefined) => interjections.has(token?.word ?? '');
