// The recogniser's grammar, from the same tables that the parser reads: walked, listed, printed, sampled.
import { lazy, type Phrase, partsOf } from '../phrase.ts';
import type { Expects } from '../types.ts';
import { type Automaton, automaton } from './automaton.ts';
import { jsgfOf } from './jsgf.ts';
import { type Sample, sampleOf } from './sample.ts';
import { sentences } from './sentences.ts';

export type { Automaton, Sample };

interface Context {
  readonly phrase: Phrase;
  readonly automaton: Automaton;
}

const contexts = new Map<string, Context>();
/** Each takes some twenty megabytes once it has been walked. */
const mostKept = 3;

/** Made once, as long as it is among the latest asked for. */
function contextOf(expects: Expects | undefined): Context {
  const key = expects ? JSON.stringify([expects.yesNo, expects.fields, expects.offered ?? []]) : '';
  const context = contexts.get(key) ?? contextOver(lazy(() => sentences(expects)));
  contexts.delete(key);
  contexts.set(key, context);
  for (const old of [...contexts.keys()].slice(0, -mostKept)) contexts.delete(old);
  return context;
}

const contextOver = (phrase: Phrase): Context => ({ phrase, automaton: automaton(phrase) });

/**
 * The grammar as an automaton over lower-case words without punctuation ("seventy", "two", "u", "bolt", "psi"; letters are single).
 * States are numbers, made lazily and kept while the grammar is in use; `next` is a map look-up after its first call.
 * With `expects.fields` the bare values of those fields may be said too; all else stays reachable.
 */
export function grammar(expects?: Expects): Automaton {
  return contextOf(expects).automaton;
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
  visit(contextOf(expects).phrase);
  return [...words].sort();
}

/** The grammar as JSGF text. */
export function jsgf(expects?: Expects): string {
  return jsgfOf(contextOf(expects).phrase);
}

/** A random sentence and what it means; `random` gives numbers in [0, 1). */
export function sample(random: () => number, expects?: Expects): Sample {
  return sampleOf(contextOf(expects).phrase, random);
}
