// The printed grammar, read back by a reader that knows nothing of our phrases (the JSpeech Grammar Format, W3C Note of 5 June 2000).
import { describe, expect, it } from 'vitest';
import type { Expects } from '#intents';
import { grammar, jsgf, wordList } from '#intents/grammar';
import { costOf } from '../../support/walk.ts';

type Node =
  | { readonly word: string }
  | { readonly rule: string }
  | { readonly any: readonly (readonly Node[])[]; readonly optional: boolean; readonly repeats: boolean };

function read(text: string): ReadonlyMap<string, readonly Node[]> {
  const rules = new Map<string, readonly Node[]>();
  for (const line of text.split('\n').slice(2).filter(Boolean)) {
    const [, name, body] = /^(?:public )?(<\w+>) = (.+);$/.exec(line) ?? [];
    if (!name || !body) throw new TypeError(`not a rule: ${line.slice(0, 80)}`);
    rules.set(name, nodes(body.match(/<\w+>|[()[\]|+]|[^\s()[\]|+<>]+/g) ?? []));
  }
  return rules;
}

function nodes(tokens: readonly string[]): readonly Node[] {
  let at = 0;
  const alternatives = (close?: string): (readonly Node[])[] => {
    const all: Node[][] = [[]];
    for (; at < tokens.length && tokens[at] !== close; at += 1) {
      const token = tokens[at] ?? '';
      if (token === '|') all.push([]);
      else if (token === '(' || token === '[') all.at(-1)?.push(group(token));
      else if (token !== '<NULL>') all.at(-1)?.push(token.startsWith('<') ? { rule: token } : { word: token });
    }
    if (close !== undefined && tokens[at] !== close) throw new TypeError(`no ${close}`);
    return all;
  };
  const group = (open: string): Node => {
    at += 1;
    const any = alternatives(open === '(' ? ')' : ']');
    const repeats = tokens[at + 1] === '+';
    if (repeats) at += 1;
    return { any, optional: open === '[', repeats };
  };
  return [{ any: alternatives(), optional: false, repeats: false }];
}

function say(rules: ReadonlyMap<string, readonly Node[]>, of: readonly Node[], random: () => number): string[] {
  return of.flatMap((node) => {
    if ('word' in node) return [node.word];
    if ('rule' in node) return say(rules, rules.get(node.rule) ?? [], random);
    if (node.optional && random() < 0.5) return [];
    const times = node.repeats && random() < 0.3 ? 2 : 1;
    return Array.from({ length: times }, () => say(rules, node.any[Math.floor(random() * node.any.length)] ?? [], random)).flat();
  });
}

/** Park and Miller's generator (CACM 31, 1988), so that a run can be repeated. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

describe.each<[string, Expects | undefined]>([
  ['whole', undefined],
  ['narrowed to a hub face', { fields: ['hubFace'], yesNo: true }],
])('the grammar printed, %s', (_, expects) => {
  const rules = read(jsgf(expects));

  it('says only what the recogniser may hear', () => {
    const random = generator(565);
    for (let round = 0; round < 2000; round += 1) {
      const words = say(rules, rules.get('<sentence>') ?? [], random);
      expect(Number.isFinite(costOf(grammar(expects), words)), words.join(' ')).toBe(true);
    }
  });

  it('names every rule it uses, and has all the words', () => {
    const words = new Set<string>();
    const used = new Set<string>();
    const look = (of: readonly Node[]): void => {
      for (const node of of) {
        if ('word' in node) words.add(node.word);
        else if ('rule' in node) used.add(node.rule);
        else node.any.forEach(look);
      }
    };
    for (const body of rules.values()) look(body);
    expect([...used].filter((name) => !rules.has(name))).toEqual([]);
    expect([...words].sort()).toEqual(wordList(expects));
  });
});
