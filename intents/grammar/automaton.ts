// A phrase walked word by word: states are sets of what may still follow, made when first asked for and kept.
import type { Phrase } from '../phrase.ts';

/** `next` gives the words allowed in a state and where each leads; `accepts` tells whether the sentence may end there. */
export interface Automaton {
  readonly start: number;
  next(state: number): ReadonlyMap<string, number>;
  accepts(state: number): boolean;
  /** How seldom this word is said here, in nats; 0 for the commonest. */
  cost(state: number, word: string): number;
  /** The same of ending the sentence here; infinite where it may not. */
  endCost(state: number): number;
}

/** What is still to be said: a phrase, then the rest. */
interface Frame {
  readonly id: number;
  readonly phrase: Phrase;
  readonly then: Frame | undefined;
}

/** A frame, or the end, and what it costs beyond the cheapest of its state. */
interface Place {
  readonly frame: Frame | undefined;
  readonly cost: number;
}

interface Opened {
  readonly steps: readonly { readonly word: string; readonly to: Place }[];
  /** Of passing over it in silence. */
  readonly endCost: number;
}

interface Followed {
  readonly to: number;
  readonly cost: number;
}

/** More than there can be: a phrase and a frame make one number. */
const mostFrames = 2 ** 26;

export function automaton(of: Phrase): Automaton {
  const phraseIds = new Map<Phrase, number>();
  const frames = new Map<number, Frame>();
  const openedFrames = new Map<Frame, Opened>();
  const states: { readonly places: readonly Place[]; followed?: Map<string, Followed>; next?: Map<string, number> }[] = [];
  const byKey = new Map<string, number>();

  const phraseId = (phrase: Phrase): number => {
    const id = phraseIds.get(phrase) ?? phraseIds.size;
    phraseIds.set(phrase, id);
    return id;
  };

  const frame = (phrase: Phrase, then: Frame | undefined): Frame => {
    const key = phraseId(phrase) * mostFrames + (then?.id ?? 0);
    const known = frames.get(key) ?? { id: frames.size + 1, phrase, then };
    frames.set(key, known);
    return known;
  };

  /** First words of a frame, and where they lead. */
  const open = (at: Frame): Opened => {
    const known = openedFrames.get(at);
    if (known) return known;
    const steps: { word: string; to: Place }[] = [];
    let endCost = Number.POSITIVE_INFINITY;
    const seen = new Map<Frame, number>();
    const visit = (here: Frame | undefined, cost: number): void => {
      if (!here) {
        endCost = Math.min(endCost, cost);
        return;
      }
      if ((seen.get(here) ?? Number.POSITIVE_INFINITY) <= cost) return;
      seen.set(here, cost);
      if (here.phrase.kind === 'word') steps.push({ word: here.phrase.word, to: { frame: here.then, cost } });
      else for (const [way, more] of ways(here)) visit(way, cost + more);
    };
    visit(at, 0);
    const opened = { steps, endCost };
    openedFrames.set(at, opened);
    return opened;
  };

  /** What a frame may begin with, and at what cost. */
  const ways = ({ phrase, then }: Frame): (readonly [Frame | undefined, number])[] => {
    switch (phrase.kind) {
      case 'word':
        return [];
      case 'seq':
        return [[phrase.parts.reduceRight<Frame | undefined>((rest, part) => frame(part, rest), then), 0]];
      case 'oneOf':
        return phrase.of.map((one) => [frame(one, then), 0] as const);
      case 'maybe':
        return [
          [frame(phrase.of, then), 0],
          [then, 0],
        ];
      case 'means':
        return [[frame(phrase.of, then), 0]];
      case 'seldom':
        return [[frame(phrase.of, then), phrase.cost]];
      case 'lazy':
        return [[frame(phrase.get(), then), 0]];
      case 'slot':
        throw new TypeError(`automaton() cannot walk the slot <${phrase.name}>`);
    }
  };

  const state = (all: readonly Place[]): number => {
    const cheapest = new Map<number, Place>();
    for (const place of all) {
      const id = place.frame?.id ?? 0;
      if (place.cost < (cheapest.get(id)?.cost ?? Number.POSITIVE_INFINITY)) cheapest.set(id, place);
    }
    const sorted = [...cheapest].sort(([a], [b]) => a - b);
    const key = sorted.map(([id, { cost }]) => `${id}:${cost.toFixed(2)}`).join(' ');
    const known = byKey.get(key);
    if (known !== undefined) return known;
    byKey.set(key, states.length);
    states.push({ places: sorted.map(([, place]) => place) });
    return states.length - 1;
  };

  const follow = (places: readonly Place[]): Map<string, Followed> => {
    const targets = new Map<string, Place[]>();
    for (const { frame: from, cost } of places) {
      if (!from) continue;
      for (const { word, to } of open(from).steps) {
        const place = { frame: to.frame, cost: cost + to.cost };
        const list = targets.get(word);
        if (list) list.push(place);
        else targets.set(word, [place]);
      }
    }
    return new Map(
      [...targets].map(([word, list]) => {
        const cost = Math.min(...list.map((place) => place.cost));
        return [word, { to: state(list.map((place) => ({ frame: place.frame, cost: place.cost - cost }))), cost }];
      }),
    );
  };

  const at = (id: number) => {
    const found = states[id];
    if (!found) throw new TypeError(`automaton has no state ${id}`);
    return found;
  };

  const followed = (id: number): Map<string, Followed> => {
    const found = at(id);
    found.followed ??= follow(found.places);
    return found.followed;
  };

  const endCost = (id: number): number =>
    Math.min(...at(id).places.map(({ frame: here, cost }) => cost + (here ? open(here).endCost : 0)));

  return {
    start: state([{ frame: frame(of, undefined), cost: 0 }]),
    next(id) {
      const found = at(id);
      found.next ??= new Map([...followed(id)].map(([word, { to }]) => [word, to]));
      return found.next;
    },
    accepts: (id) => Number.isFinite(endCost(id)),
    cost: (id, word) => followed(id).get(word)?.cost ?? Number.POSITIVE_INFINITY,
    endCost,
  };
}
