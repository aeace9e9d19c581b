// From grammar states to token tries: which tokens may come next, and what word they spell.
import type { Automaton } from '#intents/grammar';

/** How a word is spelt in tokens: after a space, at the start of a sentence, joined to the word before. */
export interface Spelling {
  readonly mid: readonly (readonly number[])[];
  readonly start: readonly (readonly number[])[];
  readonly joined: readonly (readonly number[])[];
}

export interface Spellings {
  of(word: string): Spelling;
  readonly comma: number;
  readonly hyphen: number;
  readonly period: number;
  readonly question: number;
}

export interface Node {
  next: Map<number, Node>;
  readonly ends: { readonly word: string; readonly to: number }[];
  /** How seldom the commonest of its words is said here; told by the first token of a word. */
  cost: number;
}

export interface Words {
  readonly word: string;
  readonly before: Words | undefined;
}

/** A place in the tries, with the words spelt so far. `closed`: those words are whole and the sentence may end here. */
export interface Position {
  readonly node: Node;
  readonly words: Words | undefined;
  readonly closed: boolean;
}

/** The place where `token` leads comes in its parts: most are looked at and dropped. `counts` is false for punctuation: it earns no
 * reward for length. */
export type Follow = (
  token: number,
  node: Node,
  words: Words | undefined,
  closed: boolean,
  cost: number,
  counts: boolean,
) => void;

export interface Lexicon {
  readonly start: Position;
  /** Calls back with each token that may come next. */
  follow(at: Position, each: Follow): void;
  /** The words, where the utterance may end here, and how seldom it does. */
  ending(at: Position): { readonly words: Words | undefined; readonly cost: number } | undefined;
}

const placesOf = { mid: ['mid'], start: ['start', 'mid'], joined: ['joined'] } as const;
type Place = keyof typeof placesOf;

/** Words that a writer joins to the next by a hyphen: "seventy-two", "three-eighths", "U-bolt", "eye-to-eye". */
const joins =
  /^(twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|one|two|three|five|seven|nine|eleven|thirteen|fifteen|u|eye|to|foot|double|over|under|run)$/;

export function lexicon(grammar: Automaton, spellings: Spellings): Lexicon {
  const roots = new Map<number, Partial<Record<Place, Node>>>();

  function root(state: number, place: Place): Node {
    const known = roots.get(state) ?? {};
    roots.set(state, known);
    known[place] ??= build(state, place);
    return known[place];
  }

  function build(state: number, place: Place): Node {
    const top = node();
    for (const [word, to] of grammar.next(state)) {
      const spelling = spellings.of(word);
      const cost = grammar.cost(state, word);
      for (const tokens of placesOf[place].flatMap((kind) => spelling[kind])) add(top, tokens, { word, to }, cost);
    }
    return top;
  }

  function afterWord(word: string, to: number, words: Words, each: Follow): void {
    const endCost = grammar.endCost(to);
    const whole = Number.isFinite(endCost);
    const mid = root(to, 'mid');
    for (const [token, child] of mid.next) each(token, child, words, false, child.cost, true);
    each(spellings.comma, mid, words, whole, 0, false);
    if (joins.test(word)) each(spellings.hyphen, root(to, 'joined'), words, false, 0, false);
    if (!whole) return;
    each(spellings.period, root(to, 'start'), words, true, endCost, false);
    each(spellings.question, leaf, words, true, endCost, false);
  }

  return {
    start: { node: root(grammar.start, 'start'), words: undefined, closed: false },
    follow({ node: { next, ends }, words }, each) {
      for (const [token, child] of next) each(token, child, words, false, child.cost, true);
      for (const { word, to } of ends) afterWord(word, to, { word, before: words }, each);
    },
    ending({ node: { ends }, words, closed }) {
      if (closed) return { words, cost: 0 };
      const end = ends.find(({ to }) => grammar.accepts(to));
      return end && { words: { word: end.word, before: words }, cost: grammar.endCost(end.to) };
    },
  };
}

/** Most nodes end a word and lead nowhere: they share this. */
const nowhere = new Map<number, Node>();

const node = (): Node => ({ next: nowhere, ends: [], cost: Number.POSITIVE_INFINITY });

/** Nothing follows. */
const leaf = node();

function add(top: Node, tokens: readonly number[], end: { word: string; to: number }, cost: number): void {
  let at = top;
  tokens.forEach((token, index) => {
    const next = at.next.get(token) ?? node();
    next.cost = Math.min(next.cost, index === 0 ? cost : 0);
    if (at.next === nowhere) at.next = new Map();
    at.next.set(token, next);
    at = next;
  });
  if (at !== top) at.ends.push(end);
}

export function textOf(words: Words | undefined): string {
  const list: string[] = [];
  for (let at = words; at; at = at.before) list.unshift(at.word);
  return list.join(' ');
}
