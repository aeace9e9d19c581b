// What was read at a place in a list of tokens hangs on the list: many rules ask for the same number.
import type { Token } from './tokens.ts';

type Tokens = readonly Token[];

const kept = Symbol('what was read, by place and reader');

interface Kept {
  [kept]?: unknown[][];
}

let readers = 0;

/** Wraps a reader so that each place of a token list is read once. All readers are made before anything is read. */
export function remembered<T>(read: (tokens: Tokens, at: number) => T): (tokens: Tokens, at: number) => T {
  const reader = readers;
  readers += 1;
  return (tokens, at) => {
    const list = tokens as Kept;
    list[kept] ??= [];
    const places = list[kept];
    places[at] ??= new Array(readers);
    const place = places[at];
    const known = place[reader];
    if (known !== undefined) return known as T;
    const found = read(tokens, at);
    place[reader] = found;
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
