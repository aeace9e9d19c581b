// The recogniser's grammar, from the same tables that the parser reads: walked, listed, printed, sampled.
import { lazy, type Phrase, partsOf } from '../phrase.ts';
import type { Expects } from '../types.ts';
import { type Automaton, automaton } from './automaton.ts';
import { jsgfOf } from './jsgf.ts';
import { type Sample, sampleOf } from './sample.ts';
import { sentences } from './sentences.ts';

export type { Automaton, Sample };

const phrases = new Map<string, Phrase>();
const automata = new Map<string, Automaton>();
/** Each takes some twenty megabytes once it has been walked. */
const mostKept = 6;

const keyOf = (expects: Expects | undefined) =>
  expects ? JSON.stringify([expects.yesNo, expects.fields, expects.offered ?? []]) : '';

/** Made once, as long as it is among the latest asked for. */
function latest<T>(kept: Map<string, T>, key: string, make: () => T): T {
  const found = kept.get(key) ?? make();
  kept.delete(key);
  kept.set(key, found);
  for (const old of [...kept.keys()].slice(0, -mostKept)) kept.delete(old);
  return found;
}

const phraseFor = (expects: Expects | undefined): Phrase => latest(phrases, keyOf(expects), () => lazy(() => sentences(expects)));

/**
 * The grammar as an automaton over lower-case words without punctuation ("seventy", "two", "u", "bolt", "psi"; letters are single).
 * States are numbers, made lazily and kept while the grammar is in use; `next` is a map look-up after its first call.
 * With `expects.fields` the bare values of those fields may be said too; all else stays reachable.
 */
export function grammar(expects?: Expects): Automaton {
  return latest(automata, keyOf(expects), () => automaton(phraseFor(expects)));
}

/** Every word the grammar can say, sorted. Walks all phrases once. */
export function wordList(expects?: Expects): readonly string[] {
  const words = new Set<string>();
  const seen = new Set<Phrase>();
  const visit = (of: Phrase): void => {
    if (seen.has(of)) return;
    seen.add(of);
    if (of.kind === 'word') words.add(of.word);
    partsOf(of).forEach(visit);
  };
  visit(phraseFor(expects));
  return [...words].sort();
}

/** The grammar as JSGF text. */
export function jsgf(expects?: Expects): string {
  return jsgfOf(phraseFor(expects));
}

/** A random sentence and what it means; `random` gives numbers in [0, 1). */
export function sample(random: () => number, expects?: Expects): Sample {
  return sampleOf(phraseFor(expects), random);
}
