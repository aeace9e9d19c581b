// What was read at a place in a list of tokens is kept for as long as the list: many rules ask for the same number.
import type { Token } from '../tokens.ts';

/** Wraps a reader so that each place of a token list is read once. */
export function remembered<T>(read: (tokens: readonly Token[], at: number) => T): (tokens: readonly Token[], at: number) => T {
  const kept = new WeakMap<readonly Token[], T[]>();
  return (tokens, at) => {
    const places = kept.get(tokens) ?? [];
    if (places.length === 0) kept.set(tokens, places);
    const known = places[at];
    if (known !== undefined) return known;
    const found = read(tokens, at);
    places[at] = found;
    return found;
  };
}
