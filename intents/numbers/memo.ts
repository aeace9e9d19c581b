// What was read at a place in a list of tokens is kept for as long as the list: many rules ask for the same number.
import type { Token } from '../tokens.ts';

type Tokens = readonly Token[];

/** For each list of tokens, what each reader found at each place. */
const kept = new WeakMap<Tokens, unknown[][]>();
let readers = 0;
/** The list asked about last, so that most questions need no look-up. */
let last: { readonly tokens: Tokens; readonly byReader: unknown[][] } | undefined;

function byReader(tokens: Tokens): unknown[][] {
  if (last?.tokens === tokens) return last.byReader;
  const found = kept.get(tokens) ?? [];
  if (found.length === 0) kept.set(tokens, found);
  last = { tokens, byReader: found };
  return found;
}

/** Wraps a reader so that each place of a token list is read once. */
export function remembered<T>(read: (tokens: Tokens, at: number) => T): (tokens: Tokens, at: number) => T {
  const reader = readers;
  readers += 1;
  return (tokens, at) => {
    const all = byReader(tokens);
    const places = (all[reader] ?? []) as T[];
    if (places.length === 0) all[reader] = places;
    const known = places[at];
    if (known !== undefined) return known;
    const found = read(tokens, at);
    places[at] = found;
    return found;
  };
}
