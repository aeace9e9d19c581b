// A phrase walked word by word: states are sets of what may still follow, made when first asked for and kept.
import type { Phrase } from '../phrase.ts';

/** `next` gives the words allowed in a state and where each leads; `accepts` tells whether the sentence may end there. */
export interface Automaton {
  readonly start: number;
  next(state: number): ReadonlyMap<string, number>;
  accepts(state: number): boolean;
}

/** What is still to be said: a phrase, then the rest. */
interface Frame {
  readonly id: number;
  readonly phrase: Phrase;
  readonly then: Frame | undefined;
}

interface Step {
  readonly word: string;
  readonly to: Frame | undefined;
}

export function automaton(of: Phrase): Automaton {
  const frames = new Map<Phrase, Map<Frame | undefined, Frame>>();
  const steps = new Map<Frame, { readonly steps: readonly Step[]; readonly ends: boolean }>();
  const states: { readonly frames: readonly (Frame | undefined)[]; next?: Map<string, number> }[] = [];
  const byKey = new Map<string, number>();
  let made = 0;

  const frame = (phrase: Phrase, then: Frame | undefined): Frame => {
    const known = frames.get(phrase) ?? new Map<Frame | undefined, Frame>();
    frames.set(phrase, known);
    const found = known.get(then);
    if (found) return found;
    made += 1;
    const fresh = { id: made, phrase, then };
    known.set(then, fresh);
    return fresh;
  };

  /** First words of a frame; `ends` when it may be passed over in silence. */
  const open = (at: Frame): { readonly steps: readonly Step[]; readonly ends: boolean } => {
    const known = steps.get(at);
    if (known) return known;
    const found: Step[] = [];
    let ends = false;
    const seen = new Set<Frame>();
    const visit = (here: Frame | undefined): void => {
      if (!here) {
        ends = true;
        return;
      }
      if (seen.has(here)) return;
      seen.add(here);
      expand(here, visit, found);
    };
    visit(at);
    const opened = { steps: found, ends };
    steps.set(at, opened);
    return opened;
  };

  const expand = ({ phrase, then }: Frame, visit: (frame: Frame | undefined) => void, found: Step[]): void => {
    switch (phrase.kind) {
      case 'word':
        found.push({ word: phrase.word, to: then });
        return;
      case 'seq':
        visit(phrase.parts.reduceRight<Frame | undefined>((rest, part) => frame(part, rest), then));
        return;
      case 'oneOf':
        for (const one of phrase.of) visit(frame(one, then));
        return;
      case 'maybe':
        visit(frame(phrase.of, then));
        visit(then);
        return;
      case 'many':
        visit(frame(phrase.of, frame(againOf(phrase), then)));
        return;
      case 'means':
        visit(frame(phrase.of, then));
        return;
      case 'lazy':
        visit(frame(phrase.get(), then));
        return;
      case 'slot':
        throw new TypeError(`automaton() cannot walk the slot <${phrase.name}>`);
    }
  };

  const again = new Map<Phrase, Phrase>();
  const againOf = (phrase: Phrase): Phrase => {
    const known = again.get(phrase) ?? { kind: 'maybe', of: phrase };
    again.set(phrase, known);
    return known;
  };

  const state = (all: readonly (Frame | undefined)[]): number => {
    const unique = [...new Map(all.map((one) => [one?.id ?? 0, one])).entries()].sort(([a], [b]) => a - b);
    const key = unique.map(([id]) => id).join(' ');
    const known = byKey.get(key);
    if (known !== undefined) return known;
    byKey.set(key, states.length);
    states.push({ frames: unique.map(([, one]) => one) });
    return states.length - 1;
  };

  const follow = (of: readonly (Frame | undefined)[]): Map<string, number> => {
    const targets = new Map<string, (Frame | undefined)[]>();
    for (const one of of) {
      if (!one) continue;
      for (const { word, to } of open(one).steps) {
        const list = targets.get(word);
        if (list) list.push(to);
        else targets.set(word, [to]);
      }
    }
    return new Map([...targets].map(([word, list]) => [word, state(list)]));
  };

  const at = (id: number) => {
    const found = states[id];
    if (!found) throw new TypeError(`automaton has no state ${id}`);
    return found;
  };

  return {
    start: state([frame(of, undefined)]),
    next(id) {
      const found = at(id);
      found.next ??= follow(found.frames);
      return found.next;
    },
    accepts: (id) => at(id).frames.some((one) => one === undefined || open(one).ends),
  };
}
