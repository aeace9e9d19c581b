// Word sequences -> meanings, found longest first. For phrases without slots; slots are read by read.ts.
import { type Phrase, phrase } from './phrase.ts';
import type { Token } from './tokens.ts';
import { wordTable } from './wordbook.ts';

interface Found<T> {
  readonly end: number;
  readonly meaning: T;
}

interface Node<T> {
  readonly next: Map<string, Node<T>>;
  meaning?: T;
}

export interface Lexicon<T> {
  /** The longest entry that begins at `at`. */
  longest(tokens: readonly Token[], at: number): Found<T> | undefined;
  /** True when an entry begins with this token. */
  begins(token: Token | undefined): boolean;
  /** Every word that occurs in an entry. */
  readonly vocabulary: ReadonlySet<string>;
  /** True when an entry of two or more words begins with this token. */
  leads(token: Token | undefined): boolean;
}

/** Earlier rows win where two say the same. */
export function lexicon<T>(rows: Iterable<readonly [T, readonly string[]]>): Lexicon<T> {
  const root: Node<T> = { next: new Map() };
  const vocabulary = new Set<string>();
  for (const [meaning, templates] of rows)
    for (const template of templates) for (const node of grown([root], phrase(template), vocabulary)) node.meaning ??= meaning;
  const begins = wordTable(root.next);
  return {
    vocabulary,
    longest: (tokens, at) => longest(begins(tokens[at]), tokens, at + 1),
    begins: (token) => begins(token) !== undefined,
    leads: (token) => (begins(token)?.next.size ?? 0) > 0,
  };
}

function longest<T>(first: Node<T> | undefined, tokens: readonly Token[], at: number): Found<T> | undefined {
  let node = first;
  let end = 0;
  let meaning: T | undefined;
  for (let next = at; node; next += 1) {
    if (node.meaning !== undefined) {
      meaning = node.meaning;
      end = next;
    }
    const word: string | undefined = node.next.size > 0 ? tokens[next]?.word : undefined;
    node = word === undefined ? undefined : node.next.get(word);
  }
  return meaning === undefined ? undefined : { end, meaning };
}

/** Where the trie is after the phrase, from each of these places; what is not there yet is made. */
function grown<T>(from: readonly Node<T>[], of: Phrase, vocabulary: Set<string>): readonly Node<T>[] {
  switch (of.kind) {
    case 'word':
      vocabulary.add(of.word);
      return from.map(({ next }) => {
        const node: Node<T> = next.get(of.word) ?? { next: new Map() };
        next.set(of.word, node);
        return node;
      });
    case 'maybe':
      return [...new Set([...from, ...grown(from, of.of, vocabulary)])];
    case 'oneOf':
      return [...new Set(of.of.flatMap((one) => grown(from, one, vocabulary)))];
    case 'seq':
      return of.parts.reduce((places, part) => grown(places, part, vocabulary), from);
    case 'means':
    case 'seldom':
      return grown(from, of.of, vocabulary);
    case 'lazy':
      return grown(from, of.get(), vocabulary);
    case 'slot':
      throw new TypeError(`lexicon() takes phrases without slots, got <${of.slot}>`);
  }
}

/** All word sequences of a phrase. @throws TypeError for slots, which have no end. */
export function sequencesOf(of: Phrase): string[][] {
  switch (of.kind) {
    case 'word':
      return [[of.word]];
    case 'maybe':
      return [[], ...sequencesOf(of.of)];
    case 'oneOf':
      return of.of.flatMap(sequencesOf);
    case 'seq':
      return of.parts.reduce<string[][]>(
        (left, part) => left.flatMap((words) => sequencesOf(part).map((more) => [...words, ...more])),
        [[]],
      );
    case 'means':
    case 'seldom':
      return sequencesOf(of.of);
    case 'lazy':
      return sequencesOf(of.get());
    case 'slot':
      throw new TypeError(`sequencesOf() expected a phrase without slots, got a ${of.kind}`);
  }
}
