// Work told as done in a step's own words: "chocked it", "cotter's in". Every word must belong; one strange word and nothing was told.
import { told } from '#data';
import { itemAt, mayBePlace } from '../items.ts';
import { sequencesOf } from '../lexicon.ts';
import { phrase } from '../phrase.ts';
import { wherePlaced } from '../refine/bind.ts';
import { spanOf } from '../refine/intents.ts';
import type { Token } from '../tokens.ts';
import type { CommandIntent, Where } from '../types.ts';
import type { Hearing } from '../understand.ts';
import { wordList } from '../wordbook.ts';
import { separators } from '../words/fillers.ts';
import { denyingWords, openingWords, planWords, smallWords } from '../words/told.ts';
import { auxiliaries } from './question.ts';
import { isRemark } from './remark.ts';

type Acts = readonly string[];

/** "Wheel's" and "wheels" are the wheel. */
const plain = (word: string): string => (word.endsWith('s') ? word.replace(/'s$/, '').replace(/^(.{2,}[^su])s$/, '$1') : word);

/** "Chocking", "chocked" and "chock" alike: for what is not done yet. */
const stem = (word: string): string =>
  word.endsWith('d') || word.endsWith('g') || word.endsWith('s')
    ? plain(word).replace(/^(.{3,}?)(?:(.)\2)?(?:ed|ing)$/, '$1$2')
    : word;

const keyOf = (words: readonly string[], form: (word: string) => string) =>
  words
    .filter((word) => !smallWords.has(word))
    .map(form)
    .join(' ');

/** The acts that each wording tells, by the words that count. */
function tableBy(form: (word: string) => string): ReadonlyMap<string, Acts> {
  const acts = new Map<string, Acts>();
  for (const { id, said } of told)
    for (const words of said.flatMap((template) => sequencesOf(phrase(template)))) {
      const key = keyOf(words, form);
      acts.set(key, [...new Set([...(acts.get(key) ?? []), id])]);
    }
  return acts;
}

const done = tableBy(plain);
const undone = tableBy(stem);
const openers = new Set([...done.keys()].map((key) => key.split(' ')[0]));
const longest = Math.max(...[...done.keys()].map((key) => key.split(' ').length));

/** What a template of data/told.json tells, as the parser reads it. */
export const actsTold = (words: string): readonly Acts[] => [done.get(keyOf(words.split(' '), plain)) ?? []];

interface Read {
  readonly intents: readonly CommandIntent[];
  readonly end: number;
}

/** What is told from `at` on, clause by clause as long as each tells something; so too what is told as not done yet. */
export function toldAt({ tokens, stops }: Hearing, at: number): Read | undefined {
  if (at > 0 && !separators.has(tokens[at - 1]?.word ?? '')) return undefined;
  let end = at;
  let where: Where = {};
  const acts: Acts[] = [];
  for (let from = at; from < tokens.length; from = end + 1) {
    const stop = stops[from] ?? tokens.length;
    const clause = clauseOf(tokens, from, stop);
    const found = clause && actsIn(clause.words);
    if (!found) break;
    acts.push(...found);
    where = { ...where, ...clause.where };
    end = stop;
    if (tokens[stop]?.word !== ',') break;
  }
  if (acts.length > 0) return read(tokens, at, end, { name: 'told', acts, ...where });
  const stop = stops[at] ?? tokens.length;
  const clause = clauseOf(tokens, at, stop);
  const meant = clause && notYet(clause.words);
  if (!meant || isRemark(tokens, at, stop)) return undefined;
  return read(tokens, at, stop, { name: 'notYet', acts: [meant], ...clause.where });
}

const read = (tokens: readonly Token[], at: number, end: number, intent: Omit<CommandIntent, 'kind' | 'span'>): Read => ({
  end,
  intents: [{ kind: 'command', ...intent, span: spanOf(tokens, at, end) }],
});

const isSmall = wordList(smallWords);
const isOpening = wordList(openingWords);
const isJoint = wordList([...denyingWords, ...planWords, 'and']);
const wordsIn = (acts: ReadonlyMap<string, Acts>) => new Set([...acts.keys()].flatMap((key) => key.split(' ')));
const [doneWords, undoneWords] = [wordsIn(done), wordsIn(undone)];

/** True of a word that some wording has. */
const belongs = (token: Token): boolean =>
  isJoint(token) || doneWords.has(plain(token.word)) || undoneWords.has(stem(token.word));

const mostWords = 14;

/** The words that count and the place they were told of; undefined for a question, for a strange word, and for what is too long to be told. */
function clauseOf(tokens: readonly Token[], at: number, stop: number): { words: readonly string[]; where: Where } | undefined {
  if (stop - at > mostWords || tokens[stop]?.word === '?' || auxiliaries.has(tokens[at]?.word ?? '')) return undefined;
  const words: string[] = [];
  const places = [];
  for (let from = at; from < stop; ) {
    const token = tokens[from];
    const small = isSmall(token) || (words.length === 0 && isOpening(token));
    const item = !small && mayBePlace(tokens, from) ? itemAt(tokens, from) : undefined;
    if (item?.is === 'place') places.push(item);
    else if (token && !small) {
      if (!belongs(token)) return undefined;
      words.push(token.word);
    }
    from = item?.is === 'place' ? item.end : from + 1;
  }
  return { words, where: wherePlaced(places) };
}

/** Wordings one after the other, "and" between them; undefined where a word is left over. */
function actsIn(words: readonly string[]): readonly Acts[] | undefined {
  if (!openers.has(plain(words[0] ?? ''))) return undefined;
  const plainWords = words.map(plain);
  const found: Acts[] = [];
  for (let at = 0; at < plainWords.length; ) {
    if (plainWords[at] === 'and' && found.length > 0) at += 1;
    const length = lengths.find((size) => at + size <= plainWords.length && done.has(plainWords.slice(at, at + size).join(' ')));
    if (length === undefined) return undefined;
    found.push(done.get(plainWords.slice(at, at + length).join(' ')) ?? []);
    at += length;
  }
  return found.length > 0 ? found : undefined;
}

const lengths = Array.from({ length: longest }, (_, at) => longest - at);

/** Planned, being done, or denied; a defect of a part is none of these. */
function notYet(words: readonly string[]): Acts | undefined {
  const denied = words.some((word) => denyingWords.has(word));
  const planned = words.some((word) => planWords.has(word)) || words[0]?.endsWith('ing');
  const rest = words.filter((word) => !denyingWords.has(word) && !planWords.has(word));
  if (rest.length === 0 && words.includes('yet')) return [];
  if (planned) return undone.get(rest.map(stem).join(' '));
  return denied ? done.get(rest.map(plain).join(' ')) : undefined;
}
