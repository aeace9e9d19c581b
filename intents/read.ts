// Reads a phrase against tokens: the first of a phrase's three readings.
import type { FieldId } from '#data';
import { fieldNames } from './fields.ts';
import { type Phrase, phrase, type SlotName } from './phrase.ts';
import type { Token } from './tokens.ts';
import { wordTable } from './wordbook.ts';

/** What the slots of a phrase caught, by the slot's name. */
interface Caught {
  readonly field?: readonly FieldId[];
  /** Tokens from here to the end of the statement. */
  readonly rest?: readonly [start: number, end: number];
}

export interface Match {
  readonly end: number;
  readonly caught: Caught;
}

type Continue = (end: number, caught: Caught) => void;

/** Every way the phrase fits from `at`, in the order of its alternatives. `stop` is where the statement ends. */
export function matches(of: Phrase, tokens: readonly Token[], at: number, stop: number): Match[] {
  const found: Match[] = [];
  walk(of, tokens, at, stop, {}, (end, caught) => found.push({ end, caught }));
  return found;
}

function walk(of: Phrase, tokens: readonly Token[], at: number, stop: number, caught: Caught, then: Continue): void {
  switch (of.kind) {
    case 'word':
      if (at < stop && tokens[at]?.word === of.word) then(at + 1, caught);
      return;
    case 'maybe':
      walk(of.of, tokens, at, stop, caught, then);
      then(at, caught);
      return;
    case 'oneOf':
      for (const one of of.of) walk(one, tokens, at, stop, caught, then);
      return;
    case 'seq':
      inOrder(of.parts, 0, tokens, at, stop, caught, then);
      return;
    case 'slot':
      slots[of.slot](tokens, at, stop, caught, then);
      return;
    case 'means':
    case 'seldom':
      walk(of.of, tokens, at, stop, caught, then);
      return;
    case 'lazy':
      walk(of.get(), tokens, at, stop, caught, then);
  }
}

function inOrder(
  parts: readonly Phrase[],
  from: number,
  tokens: readonly Token[],
  at: number,
  stop: number,
  caught: Caught,
  then: Continue,
): void {
  const part = parts[from];
  if (!part) {
    then(at, caught);
    return;
  }
  walk(part, tokens, at, stop, caught, (end, more) => inOrder(parts, from + 1, tokens, end, stop, more, then));
}

const slots: Readonly<
  Record<SlotName, (tokens: readonly Token[], at: number, stop: number, caught: Caught, then: Continue) => void>
> = {
  field(tokens, at, _stop, caught, then) {
    const found = fieldNames.longest(tokens, at);
    if (found) then(found.end, { ...caught, field: found.meaning });
  },
  rest(_tokens, at, stop, caught, then) {
    if (at < stop) then(stop, { ...caught, rest: [at, stop] });
  },
};

/** A phrase with the meaning it stands for. */
interface Entry<T> {
  readonly meaning: T;
  readonly phrase: Phrase;
}

/** Phrases found by their first word, so that a long table costs nothing. */
export interface Table<T> {
  readonly entries: readonly Entry<T>[];
  /** The longest phrase that fits from `at`; earlier rows win ties. */
  best(tokens: readonly Token[], at: number, stop: number): (Match & { readonly meaning: T }) | undefined;
}

export function table<T>(rows: Iterable<readonly [T, readonly string[]]>): Table<T> {
  const entries = [...rows].flatMap(([meaning, said]) => said.map((template) => ({ meaning, phrase: phrase(template) })));
  const byFirst = new Map<string, Entry<T>[]>();
  for (const entry of entries) {
    for (const word of firsts(entry.phrase).words) byFirst.set(word, [...(byFirst.get(word) ?? []), entry]);
  }
  const beginning = wordTable(byFirst);
  return {
    entries,
    best(tokens, at, stop) {
      let best: (Match & { meaning: T }) | undefined;
      for (const { meaning, phrase: of } of beginning(tokens[at]) ?? []) {
        for (const match of matches(of, tokens, at, stop)) {
          if (!best || match.end > best.end || (match.end === best.end && restOf(match) < restOf(best)))
            best = { ...match, meaning };
        }
      }
      return best;
    },
  };
}

/** How many words were left to free text: the fewer, the better the phrase fits. */
const restOf = ({ caught }: Match) => (caught.rest ? caught.rest[1] - caught.rest[0] : 0);

/** Words a phrase may begin with. @throws TypeError for a phrase that begins with a slot or may be empty. */
function firsts(of: Phrase): { words: string[]; empty: boolean } {
  switch (of.kind) {
    case 'word':
      return { words: [of.word], empty: false };
    case 'maybe':
      return { words: firsts(of.of).words, empty: true };
    case 'oneOf': {
      const all = of.of.map(firsts);
      return { words: all.flatMap(({ words }) => words), empty: all.some(({ empty }) => empty) };
    }
    case 'seq': {
      const words: string[] = [];
      for (const part of of.parts) {
        const first = firsts(part);
        words.push(...first.words);
        if (!first.empty) return { words: [...new Set(words)], empty: false };
      }
      return { words, empty: true };
    }
    case 'means':
    case 'seldom':
      return firsts(of.of);
    case 'lazy':
      return firsts(of.get());
    case 'slot':
      throw new TypeError(`table() cannot index a phrase that may begin with <${of.name}>`);
  }
}
