// The beam search on a grammar of a few words, with a model that is a table: what it expects is known beforehand.
import { describe, expect, it } from 'vitest';
import type { Automaton } from '#intents/grammar';
import { lexicon, type Spellings } from '../../../../web/recogniser/engine/lexicon.ts';
import type { Memory, Model, Row, Stepped } from '../../../../web/recogniser/engine/model.ts';
import { search } from '../../../../web/recogniser/engine/search.ts';

const end = 2;
const comma = 3;
const hyphen = 4;
const period = 5;
const question = 6;
const vocabulary = ['fifteen', 'fifty', 'hub', 'face', 'radio'] as const;
const tokenOf = (word: string): number => 10 + vocabulary.indexOf(word as (typeof vocabulary)[number]);
const spellings: Spellings = {
  of: (word) => ({ mid: [[tokenOf(word)]], start: [], joined: [] }),
  comma,
  hyphen,
  period,
  question,
};

/** Any number of "hub face" with a number each. */
const grammar = {
  start: 0,
  next: (state: number): ReadonlyMap<string, number> =>
    new Map(
      state === 0 || state === 3 ? [['hub', 1]] : state === 1 ? [['face', 2]] : ['fifteen', 'fifty'].map((word) => [word, 3]),
    ),
  accepts: (state: number) => state === 3,
  cost: () => 0,
  endCost: (state: number) => (state === 3 ? 0 : Number.POSITIVE_INFINITY),
};

type Odds = Readonly<Record<string, number>>;
const speech = {} as Memory['frames'];
const silence = {} as Memory['frames'];

/** Steps that were not given back. */
const kept = { steps: 0 };

/** Gives at each step the log-probabilities written down for it; what is not written is as good as impossible. Of silence it
 * expects the same at each step. */
function modelOf(steps: readonly Odds[], anyhow: Odds): Model {
  const row = (at: number): Row => rowOf(steps[Math.min(at, steps.length - 1)] ?? {});
  const rowOf = (odds: Odds): Row => {
    const out = new Float32Array(20).fill(-30);
    for (const [word, logProb] of Object.entries(odds))
      out[word === 'end' ? end : word === ',' ? comma : tokenOf(word)] = logProb;
    return (token) => out[token] ?? Number.NEGATIVE_INFINITY;
  };
  const at = (memory: Memory): number => memory.size;
  const stepped = (frames: Memory['frames'], step: number, rows: number): Stepped => {
    let isFree = false;
    const whileKept =
      (of: Row): Row =>
      (token) => {
        if (isFree) throw new TypeError('looked at after it was given back');
        return of(token);
      };
    kept.steps += 1;
    return {
      memory: { size: step, frames, crossed: {}, past: {} },
      rows: Array.from({ length: rows }, () => whileKept(frames === silence ? rowOf(anyhow) : row(step))),
      free() {
        if (isFree) throw new TypeError('given back twice');
        isFree = true;
        kept.steps -= 1;
      },
    };
  };
  return {
    encode: async () => speech,
    begin: async (frames) => stepped(frames, 0, 1),
    step: async (memory, _parents, tokens) => stepped(memory.frames, at(memory) + 1, tokens.length),
    free: async () => undefined,
  };
}

/** As likely as each other. */
const level: Odds = { hub: -2, face: -2, fifteen: -2, fifty: -2 };
const options = { beam: 4, discount: 0.5, reward: 1, expected: 3, margin: 9, spread: 12, maxTokens: 12, mayRepeat: () => true };
async function find(steps: readonly Odds[], more: object = {}, anyhow = level, sentences: Automaton = grammar) {
  const model = modelOf(steps, anyhow);
  const from = { heard: [await model.begin(speech)], silent: await model.begin(silence) };
  return search(model, from, lexicon(sentences, spellings), { ...options, ...more });
}

const clear: readonly Odds[] = [{ hub: -0.1, radio: -0.01 }, { face: -0.1 }, { fifty: -0.7, fifteen: -0.9 }, { end: -0.1 }];

describe('the search', () => {
  it('finds the likeliest sentence of the grammar, and its rival', async () => {
    const found = await find(clear);
    expect(found.map(({ text }) => text)).toEqual(['hub face fifty', 'hub face fifteen']);
    expect(found[0]?.gain).toBeCloseTo(-0.1 - 0.1 - 0.7 - 0.1 + 0.5 * 6);
    expect(found[0]?.tokens).toBe(3);
  });

  it('gives each step back that it made, and none twice, also when it is given up', async () => {
    const own = 2;
    const before = kept.steps;
    await find(clear);
    expect(kept.steps - before).toBe(own);
    let asked = 0;
    const goOn = async (): Promise<boolean> => {
      asked += 1;
      return asked < 3;
    };
    expect(await find(clear, { goOn })).toEqual([]);
    expect(kept.steps - before).toBe(2 * own);
  });

  it('goes by the mean of several hearings', async () => {
    const mistaken: readonly Odds[] = [...clear.slice(0, 2), { fifty: -3, fifteen: -0.2 }, { end: -0.1 }];
    const [one, other] = [modelOf(clear, level), modelOf(mistaken, level)];
    const second = {} as Memory['frames'];
    const both: Model = {
      ...one,
      begin: (frames) => (frames === second ? other : one).begin(frames),
      step: (memory, ...rest) => (memory.frames === second ? other : one).step(memory, ...rest),
    };
    const heard = [await both.begin(speech), await both.begin(second)];
    const found = await search(both, { heard, silent: await both.begin(silence) }, lexicon(grammar, spellings), options);
    expect(found.map(({ text }) => text)).toEqual(['hub face fifteen', 'hub face fifty']);
    expect(found[0]?.gain).toBeCloseTo(-0.1 - 0.1 - (0.9 + 0.2) / 2 - 0.1 + 0.5 * 6);
  });

  it('never leaves the grammar, however sure the model is', async () => {
    const found = await find([{ radio: -0.001, hub: -9 }, { face: -9 }, { fifty: -1 }, { end: -0.1 }]);
    expect(found[0]?.text).toBe('hub face fifty');
  });

  it('takes off what the model expects anyhow, in the rank and in the gain', async () => {
    const [best] = await find(clear, {}, { ...level, fifty: -1, fifteen: -6 });
    expect(best?.text).toBe('hub face fifteen');
    expect(best?.gain).toBeCloseTo(-0.1 - 0.1 - 0.9 - 0.1 + 0.5 * (2 + 2 + 6));
  });

  it('gives back, in the gain, what went to nothing having been said, and not all of it where that is all but sure', async () => {
    const [plain] = await find(clear);
    const [, ...later] = clear;
    const [half] = await find([{ ...clear[0], end: Math.log(0.5) }, ...later]);
    const [all] = await find([{ ...clear[0], end: -0.0001 }, ...later]);
    expect((half?.gain ?? 0) - (plain?.gain ?? 0)).toBeCloseTo(Math.log(2));
    expect((all?.gain ?? 0) - (plain?.gain ?? 0)).toBeCloseTo(2.5);
    expect(half?.score).toBeCloseTo(plain?.score ?? 0);
  });

  it('tells nothing from how much less than nothing a word is expected', async () => {
    const [best] = await find(clear, {}, { ...level, fifty: -12, fifteen: -29 });
    expect(best?.text).toBe('hub face fifty');
  });

  it('holds what is seldom said back, in the rank and not in the gain', async () => {
    const seldom = { ...grammar, cost: (_state: number, word: string) => (word === 'fifty' ? 2 : 0) };
    const [best, other] = await find(clear, {}, level, seldom);
    expect(best?.text).toBe('hub face fifteen');
    expect(other?.gain).toBeCloseTo(-0.1 - 0.1 - 0.7 - 0.1 + 0.5 * 6);
  });

  const twice: readonly Odds[] = [
    ...clear.slice(0, 3),
    { end: -3, hub: -0.1, ',': -9 },
    { face: -0.1 },
    { fifty: -0.1, fifteen: -7 },
    { end: -0.1 },
  ];

  it('does not let a sentence be said twice where that may not be', async () => {
    expect((await find(twice, { expected: 6 }))[0]?.text).toBe('hub face fifty hub face fifty');
    const found = await find(twice, { expected: 6, mayRepeat: () => false });
    expect(found.map(({ text }) => text)).not.toContain('hub face fifty hub face fifty');
    expect(found[0]?.text).toMatch(/^hub face fif\w+( hub face fif\w+)?$/);
  });

  it('gives up when told to', async () => {
    expect(await find(clear, { goOn: async () => false })).toEqual([]);
  });

  it('stops at the longest that the sound can hold', async () => {
    const endless: readonly Odds[] = [{ hub: -0.1, face: -0.1, fifty: -0.1, fifteen: -0.2, end: -20 }];
    for (const { tokens } of await find(endless, { maxTokens: 7, expected: 100 })) expect(tokens).toBeLessThanOrEqual(7);
  });
});
