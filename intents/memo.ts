// What was read at a place in a list of tokens is kept for as long as the list: many rules ask for the same number.
import type { Token } from './tokens.ts';

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

const partsFrom = remembered((_tokens, _from): Map<number, Tokens> => new Map());

/** The tokens from one place to another; the same part is the same list, so that what was read in it is known. */
export function part(tokens: Tokens, from: number, to: number): Tokens {
  if (from === 0 && to >= tokens.length) return tokens;
  const known = partsFrom(tokens, from);
  const found = known.get(to) ?? tokens.slice(from, to);
  known.set(to, found);
  return found;
}
