// Reads a phrase against tokens: the first of a phrase's three readings.
import type { FieldId } from '#data';
import { fieldNames } from './fields.ts';
import { type Phrase, phrase } from './phrase.ts';
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

/** A place in a phrase, by what may come next: a word, a field's name, free text, or its end. */
interface Step {
  readonly words: Map<string, Step[]>;
  readonly field: Step[];
  readonly rest: Step[];
  isEnd: boolean;
}

const newStep = (): Step => ({ words: new Map(), field: [], rest: [], isEnd: false });

/** What may come next in a phrase, worked out once: then reading it costs a step a word, however many ways it has. */
function stepsOf(of: Phrase): Step {
  const first = newStep();
  for (const last of laid(of, [first])) last.isEnd = true;
  return first;
}

/** Lays a phrase behind steps; the steps that it may end with, in the order of its alternatives. */
function laid(of: Phrase, behind: readonly Step[]): readonly Step[] {
  const next = newStep();
  switch (of.kind) {
    case 'word':
      for (const step of behind) step.words.set(of.word, [...(step.words.get(of.word) ?? []), next]);
      return [next];
    case 'slot':
      for (const step of behind) step[of.slot].push(next);
      return [next];
    case 'maybe':
      return [...laid(of.of, behind), ...behind];
    case 'oneOf':
      return of.of.flatMap((one) => laid(one, behind));
    case 'seq':
      return of.parts.reduce((steps, part) => laid(part, steps), behind);
    case 'means':
    case 'seldom':
      return laid(of.of, behind);
    case 'lazy':
      return laid(of.get(), behind);
  }
}

/** Every way the phrase fits from `at`, in the order of its alternatives. `stop` is where the statement ends. */
export function readerOf(of: Phrase): (tokens: readonly Token[], at: number, stop: number) => readonly Match[] {
  const first = [stepsOf(of)];
  return (tokens, at, stop) => readFrom(first, tokens, at, stop);
}

function readFrom(steps: readonly Step[], tokens: readonly Token[], at: number, stop: number): Match[] {
  const found: Match[] = [];
  for (const step of steps) walk(step, tokens, at, stop, nothing, found);
  return found;
}

const nothing: Caught = {};

function walk(from: Step, tokens: readonly Token[], at: number, stop: number, caught: Caught, found: Match[]): void {
  const word = at < stop ? tokens[at]?.word : undefined;
  const next = word === undefined ? undefined : from.words.get(word);
  if (next) for (const step of next) walk(step, tokens, at + 1, stop, caught, found);
  if (from.field.length > 0) {
    const name = fieldNames.longest(tokens, at);
    if (name) for (const step of from.field) walk(step, tokens, name.end, stop, { ...caught, field: name.meaning }, found);
  }
  if (at < stop) for (const step of from.rest) walk(step, tokens, stop, stop, { ...caught, rest: [at, stop] }, found);
  if (from.isEnd) found.push({ end: at, caught });
}

/** Phrases found by their first word, so that a long table costs nothing. */
export interface Table<T> {
  /** The longest phrase that fits from `at`; earlier rows win ties. */
  best(tokens: readonly Token[], at: number, stop: number): (Match & { readonly meaning: T }) | undefined;
}

/** @throws TypeError for a phrase that begins with a slot or may be empty. */
export function table<T>(rows: Iterable<readonly [T, readonly string[]]>): Table<T> {
  const byFirst = new Map<string, { readonly meaning: T; readonly steps: readonly Step[] }[]>();
  for (const [meaning, said] of rows) {
    for (const template of said) {
      const { words, field, rest, isEnd } = stepsOf(phrase(template));
      if (field.length > 0 || rest.length > 0 || isEnd) throw new TypeError(`table() found no first word in "${template}"`);
      for (const [word, steps] of words) byFirst.set(word, [...(byFirst.get(word) ?? []), { meaning, steps }]);
    }
  }
  const beginning = wordTable(byFirst);
  return {
    best(tokens, at, stop) {
      const entries = at < stop ? beginning(tokens[at]) : undefined;
      let best: (Match & { meaning: T }) | undefined;
      for (const { meaning, steps } of entries ?? []) {
        for (const match of readFrom(steps, tokens, at + 1, stop)) {
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
