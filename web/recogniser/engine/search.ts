// Beam search over the grammar, scored by the model's own log-probabilities. All hypotheses go through the decoder as one batch.

import type * as Ort from 'onnxruntime-web/wasm';
import { type Lexicon, type Position, textOf, type Words } from './lexicon.ts';
import type { Memory, Model, Row } from './model.ts';

const endToken = 2;

export interface SearchOptions {
  readonly beam: number;
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
  /** Sum of log-probabilities, the end of sentence included. */
  readonly logProb: number;
  /** Tokens, the end of sentence not included. */
  readonly tokens: number;
  /** What the search ranked by. */
  readonly score: number;
}

interface Running {
  readonly parent: number;
  readonly token: number;
  readonly at: readonly Position[];
  readonly logProb: number;
  readonly tokens: number;
  /** Tokens of words. */
  readonly counted: number;
  readonly score: number;
}

/** Best first; each text once. Empty when given up. */
export async function search(model: Model, frames: Ort.Tensor, words: Lexicon, options: SearchOptions): Promise<Candidate[]> {
  const { margin, maxTokens, mayRepeat, goOn, opening } = options;
  const done = new Map<string, Candidate>();
  let { memory, rows } = await model.begin(frames);
  let running: readonly Running[] = [{ parent: 0, token: 0, at: [words.start], logProb: 0, tokens: 0, counted: 0, score: 0 }];
  for (let length = 0; ; length += 1) {
    finish(running, rows, words, done, mayRepeat);
    const best = Math.max(...[...done.values()].map(({ score }) => score));
    const kept = opening && length < opening.steps ? { ...options, ...opening } : options;
    const next = length < maxTokens ? grow(running, rows, words, kept).filter(({ score }) => score > best - margin) : [];
    if (next.length === 0) break;
    if (goOn && !(await goOn())) return [];
    ({ memory, rows } = await stepWith(model, memory, next));
    running = next;
  }
  return [...done.values()].sort((a, b) => b.score - a.score);
}

const stepWith = (model: Model, memory: Memory, next: readonly Running[]) =>
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
  running.forEach(({ at, logProb, tokens, score }, index) => {
    const ending = rows[index]?.(endToken) ?? Number.NEGATIVE_INFINITY;
    for (const position of at) {
      const whole = words.ending(position);
      if (!whole || stutters(whole.words, mayRepeat)) continue;
      const candidate = { text: textOf(whole.words), logProb: logProb + ending, tokens, score: score + ending - whole.cost };
      if (candidate.score > (done.get(candidate.text)?.score ?? Number.NEGATIVE_INFINITY)) done.set(candidate.text, candidate);
    }
  });
}

interface Way {
  readonly at: Position[];
  boost: number;
  counts: boolean;
}

function grow(
  running: readonly Running[],
  rows: readonly Row[],
  words: Lexicon,
  { beam, reward, expected, spread, mayRepeat }: SearchOptions,
): Running[] {
  const all = running.flatMap((from, parent) => {
    const row = rows[parent];
    if (!row) return [];
    return [...waysFrom(from, words)].map(([token, { at, boost, counts }]): Running => {
      const logProb = row(token);
      const gain = boost + (counts ? reward * Math.min(1, Math.max(0, expected - from.counted)) : 0);
      const counted = from.counted + (counts ? 1 : 0);
      return {
        parent,
        token,
        at,
        logProb: from.logProb + logProb,
        tokens: from.tokens + 1,
        counted,
        score: from.score + logProb + gain,
      };
    });
  });
  all.sort((a, b) => b.score - a.score);
  const top = all[0]?.score ?? 0;
  const next: Running[] = [];
  for (const each of all) {
    if (next.length === beam || each.score <= top - spread) break;
    if (!each.at.every((position) => stutters(position.words, mayRepeat))) next.push(each);
  }
  return next;
}

/** By token, all places where it leads. */
function waysFrom({ at }: Running, words: Lexicon): Map<number, Way> {
  const ways = new Map<number, Way>();
  for (const position of at) {
    words.follow(position, (token, to, boost, counts) => {
      const way = ways.get(token) ?? { at: [], boost, counts };
      ways.set(token, way);
      way.at.push(to);
      way.boost = Math.max(way.boost, boost);
      way.counts ||= counts;
    });
  }
  return ways;
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
