// Phrases as values. One definition, read three ways: parsed (read.ts), walked as the recogniser's grammar and sampled (grammar/).
//
// A template is a phrase in one line: words, (this|that other), [maybe], and <slots>.
//   phrase('change <field> to <quantity>')

import type { Intent } from './types.ts';

/** What a slot stands for; each reader knows how to fill it. `rest` is free text to the end and stays out of the grammar. */
export type SlotName = 'field' | 'rest';

export type Phrase =
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'seq'; readonly parts: readonly Phrase[] }
  | { readonly kind: 'oneOf'; readonly of: readonly Phrase[] }
  | { readonly kind: 'maybe'; readonly of: Phrase }
  | { readonly kind: 'slot'; readonly slot: SlotName; readonly name: string }
  /** Built when first needed: a field's thousands of numbers. */
  | { readonly kind: 'lazy'; readonly get: () => Phrase }
  /** Said less often than its neighbours: `cost` is taken off its log-probability when listening and drawing. */
  | { readonly kind: 'seldom'; readonly of: Phrase; readonly cost: number }
  /** What the words mean, for sampling; reading and walking pass through. */
  | { readonly kind: 'means'; readonly of: Phrase; readonly meaning: Meaning };

/** A piece of an intent that some words of a phrase stand for. Numbers add up; characters follow one another. */
export type Meaning =
  | { readonly add: string }
  | { readonly negative: true }
  | { readonly characters: string }
  | { readonly set: Readonly<Record<string, string>> }
  /** The number so far is the value; the next is this of it. */
  | { readonly split: 'not' | 'to' }
  | { readonly end: 'measure' | 'quantity' | 'correct' }
  | { readonly intent: Intent };

const wordsKnown = new Map<string, Phrase>();

/** One phrase for each word: the numbers of all fields share theirs. */
export function word(text: string): Phrase {
  const known: Phrase = wordsKnown.get(text) ?? { kind: 'word', word: text };
  wordsKnown.set(text, known);
  return known;
}

export const seq = (...parts: readonly Phrase[]): Phrase => (parts.length === 1 && parts[0] ? parts[0] : { kind: 'seq', parts });
export const oneOf = (...of: readonly Phrase[]): Phrase => (of.length === 1 && of[0] ? of[0] : { kind: 'oneOf', of });
export const maybe = (of: Phrase): Phrase => ({ kind: 'maybe', of });
const slot = (name: SlotName, as: string): Phrase => ({ kind: 'slot', slot: name, name: as });
export const seldom = (of: Phrase, cost: number): Phrase => ({ kind: 'seldom', of, cost });
export const means = (of: Phrase, meaning: Meaning): Phrase => ({ kind: 'means', of, meaning });

export function lazy(build: () => Phrase): Phrase {
  let built: Phrase | undefined;
  return {
    kind: 'lazy',
    get: () => {
      built ??= build();
      return built;
    },
  };
}

/** The phrases that a phrase is made of; none for a word or a slot. */
export function partsOf(of: Phrase): readonly Phrase[] {
  switch (of.kind) {
    case 'word':
    case 'slot':
      return [];
    case 'seq':
      return of.parts;
    case 'oneOf':
      return of.of;
    case 'lazy':
      return [of.get()];
    default:
      return [of.of];
  }
}

/** Reads a template. @throws TypeError when a bracket is left open. */
export function phrase(template: string): Phrase {
  const tokens = template.match(/[()[\]|]|<[a-z]+(?::[a-zA-Z]+)?>|[^\s()[\]|<>]+/g) ?? [];
  let at = 0;
  const alternatives = (close: string | undefined): Phrase => {
    const branches: Phrase[] = [];
    let parts: Phrase[] = [];
    for (; at < tokens.length && tokens[at] !== close; at += 1) {
      const token = tokens[at] ?? '';
      if (token === '|') {
        branches.push(seq(...parts));
        parts = [];
      } else parts.push(element(token));
    }
    if (close !== undefined && at >= tokens.length) throw new TypeError(`phrase() found no '${close}' in "${template}"`);
    return oneOf(...branches, seq(...parts));
  };
  const element = (token: string): Phrase => {
    if (token === '(' || token === '[') {
      at += 1;
      const inner = alternatives(token === '(' ? ')' : ']');
      return token === '(' ? inner : maybe(inner);
    }
    const [, slotName, as] = /^<([a-z]+)(?::([a-zA-Z]+))?>$/.exec(token) ?? [];
    return slotName === undefined ? word(token) : slot(slotName as SlotName, as ?? slotName);
  };
  return alternatives(undefined);
}

/** Several templates for one meaning. */
export const anyOf = (templates: readonly string[]): Phrase => oneOf(...templates.map(phrase));
