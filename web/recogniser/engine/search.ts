// Beam search over the grammar, scored by the model's own log-probabilities. All hypotheses go through the decoder as one batch.
import { type Lexicon, type Position, textOf, type Words } from './lexicon.ts';
import type { Model, Row, Stepped } from './model.ts';

const endToken = 2;

export interface SearchOptions {
  readonly beam: number;
  /** How much of what the model expects of a word anyhow, before it hears anything, is taken off while ranking: it has read much
   * more talk than it has shop talk. */
  readonly discount: number;
  /** Added while ranking for each word token up to `expected`: long and short sentences must be able to compete, and no sentence
   * may win by growing longer than the sound. */
  readonly reward: number;
  readonly expected: number;
  /** Running hypotheses this far behind the best finished one are given up. */
  readonly margin: number;
  /** And those this far behind the best running one: in clear speech few are left. */
  readonly spread: number;
  /** Other figures for the first steps. */
  readonly opening?: { readonly steps: number; readonly beam: number; readonly spread: number };
  readonly maxTokens: number;
  /** Asked of words that were said twice in a row: may that be? */
  readonly mayRepeat: (text: string) => boolean;
  /** Asked between steps; false gives the search up. */
  readonly goOn?: () => Promise<boolean>;
}

export interface Candidate {
  readonly text: string;
  /** Sum of log-probabilities above what was expected anyhow, by the discount; the end of sentence included, and what went to nothing
   * having been said given back. */
  readonly gain: number;
  /** How seldom it is said, in nats. */
  readonly cost: number;
  /** Tokens, the end of sentence not included. */
  readonly tokens: number;
  /** What the search ranked by. */
  readonly score: number;
}

interface Running {
  readonly parent: number;
  readonly token: number;
  readonly at: readonly Position[];
  readonly gain: number;
  readonly cost: number;
  readonly tokens: number;
  /** Tokens of words. */
  readonly counted: number;
  readonly score: number;
}

/** The model after the start of a sentence: of what was said, once for each way the sound was played to it, and of silence. */
export interface Beginnings {
  readonly heard: readonly Stepped[];
  readonly silent: Stepped;
}

/** Best first; each text once. Empty when given up. */
export async function search(model: Model, from: Beginnings, words: Lexicon, options: SearchOptions): Promise<Candidate[]> {
  const { margin, maxTokens, mayRepeat, goOn, opening } = options;
  const done = new Map<string, Candidate>();
  let { heard, silent } = from;
  let made: readonly Stepped[] = [];
  let rows = together(heard);
  const gain = unheard(rows[0]);
  let running: readonly Running[] = [{ parent: 0, token: 0, at: [words.start], gain, cost: 0, tokens: 0, counted: 0, score: 0 }];
  for (let length = 0; ; length += 1) {
    finish(running, rows, words, done, mayRepeat);
    const best = Math.max(...[...done.values()].map(({ score }) => score));
    const kept = opening && length < opening.steps ? { ...options, ...opening } : options;
    const next =
      length < maxTokens ? grow(running, rows, silent.rows, words, kept).filter(({ score }) => score > best - margin) : [];
    if (next.length === 0) break;
    if (goOn && !(await goOn())) {
      done.clear();
      break;
    }
    heard = await inTurn(heard, (one) => stepWith(model, one, next));
    silent = await stepWith(model, silent, next);
    for (const one of made) one.free();
    made = [...heard, silent];
    rows = together(heard);
    running = next;
  }
  for (const one of made) one.free();
  return [...done.values()].sort((a, b) => b.score - a.score);
}

/** The mean of what the model holds of each token, over the ways it heard the sound. */
function together([first, ...others]: readonly Stepped[]): readonly Row[] {
  if (!first || others.length === 0) return first?.rows ?? [];
  return first.rows.map((row, index) => {
    const all = [row, ...others.flatMap(({ rows }) => rows[index] ?? [])];
    return (token) => all.reduce((sum, one) => sum + one(token), 0) / all.length;
  });
}

export async function inTurn<T, U>(list: readonly T[], make: (one: T) => Promise<U>): Promise<U[]> {
  const made: U[] = [];
  for (const one of list) made.push(await make(one));
  return made;
}

/** In nats: of a "done" the model takes up to this for nothing having been said, of mere noise more. */
const mostUnheard = 2.5;

/** Of a single short word the model often holds that nothing was said. What that took from what was said, as far as it is given back. */
const unheard = (row: Row | undefined): number =>
  -Math.log(Math.max(Math.exp(-mostUnheard), 1 - Math.exp(row?.(endToken) ?? Number.NEGATIVE_INFINITY)));

const stepWith = (model: Model, { memory }: Stepped, next: readonly Running[]) =>
  model.step(
    memory,
    next.map(({ parent }) => parent),
    next.map(({ token }) => token),
  );

function finish(
  running: readonly Running[],
  rows: readonly Row[],
  words: Lexicon,
  done: Map<string, Candidate>,
  mayRepeat: SearchOptions['mayRepeat'],
): void {
  running.forEach(({ at, gain, cost, tokens, score }, index) => {
    const ending = rows[index]?.(endToken) ?? Number.NEGATIVE_INFINITY;
    for (const position of at) {
      const whole = words.ending(position);
      if (!whole || stutters(whole.words, mayRepeat)) continue;
      const text = textOf(whole.words);
      const candidate = { text, gain: gain + ending, cost: cost + whole.cost, tokens, score: score + ending - whole.cost };
      if (candidate.score > (done.get(text)?.score ?? Number.NEGATIVE_INFINITY)) done.set(text, candidate);
    }
  });
}

/** What the model expects less than this it does not expect at all: how much less tells nothing. */
const leastExpected = -12;

function grow(
  running: readonly Running[],
  rows: readonly Row[],
  silentRows: readonly Row[],
  words: Lexicon,
  options: SearchOptions,
): Running[] {
  const { beam, spread, mayRepeat } = options;
  let all: Running[] = [];
  running.forEach((from, parent) => {
    const [row, silentRow] = [rows[parent], silentRows[parent]];
    if (!row || !silentRow) return;
    const floor = Math.max(
      (all[0]?.score ?? Number.NEGATIVE_INFINITY) - spread,
      all[2 * beam]?.score ?? Number.NEGATIVE_INFINITY,
    );
    all.push(...grown(from, parent, row, silentRow, words, options, floor));
    all.sort((a, b) => b.score - a.score);
    all = all.slice(0, 2 * beam + 1);
  });
  const top = all[0]?.score ?? 0;
  const next: Running[] = [];
  for (const each of all) {
    if (next.length === beam || each.score <= top - spread) break;
    if (!each.at.every((position) => stutters(position.words, mayRepeat))) next.push(each);
  }
  return next;
}

/** What may come next, a token each with all places where it leads, as far as it scores above `floor`. */
function grown(
  from: Running,
  parent: number,
  row: Row,
  silentRow: Row,
  words: Lexicon,
  { discount, reward, expected }: SearchOptions,
  floor: number,
): Running[] {
  const ways = new Map<number, Way>();
  const earned = reward * Math.min(1, Math.max(0, expected - from.counted));
  for (const position of from.at) {
    words.follow(position, (token, node, said, closed, cost, counts) => {
      const known = ways.get(token);
      if (known) {
        known.at.push({ node, words: said, closed });
        known.cost = Math.min(known.cost, cost);
        return;
      }
      const gain = row(token) - (counts ? discount * Math.max(leastExpected, silentRow(token)) : 0);
      const score = from.score + gain + (counts ? earned : 0);
      if (score > floor) ways.set(token, { at: [{ node, words: said, closed }], gain, score, cost, counts });
    });
  }
  return [...ways].map(([token, { at, gain, score, cost, counts }]) => ({
    parent,
    token,
    at,
    gain: from.gain + gain,
    cost: from.cost + cost,
    tokens: from.tokens + 1,
    counted: from.counted + (counts ? 1 : 0),
    score: score - cost,
  }));
}

interface Way {
  readonly at: Position[];
  readonly gain: number;
  /** But for what it costs. */
  readonly score: number;
  cost: number;
  readonly counts: boolean;
}

/** Into silence the model likes to say its sentence again. */
function stutters(words: Words | undefined, mayRepeat: SearchOptions['mayRepeat']): boolean {
  const said = textOf(words).split(' ');
  for (let size = 2; size * 2 <= said.length; size += 1) {
    const last = said.slice(-size).join(' ');
    if (said.slice(-2 * size, -size).join(' ') === last && !mayRepeat(last)) return true;
  }
  return false;
}
