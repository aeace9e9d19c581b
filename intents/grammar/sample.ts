// A random sentence of a phrase, with the intents that it means.
import Fraction from 'fraction.js';
import { type FieldId, fieldOf } from '#data';
import type { Meaning, Phrase } from '../phrase.ts';
import { vinFault } from '../stamped/vin.ts';
import type { Intent } from '../types.ts';

export interface Sample {
  readonly text: string;
  /** Only what the sentence decides: kind, field, value, unit, side, axle, stage, name, topic. */
  readonly intents: readonly Readonly<Record<string, unknown>>[];
}

interface Draft {
  number?: Fraction;
  /** What the number is: the value, or what follows it. */
  as: string;
  negative: boolean;
  characters: string;
  set: Record<string, string>;
}

/** `random` gives numbers from 0 up to but not including 1. */
export function sampleOf(of: Phrase, random: () => number): Sample {
  const words: string[] = [];
  const meanings: Meaning[] = [];
  speak(of, random, words, meanings);
  return { text: words.join(' '), intents: intentsFrom(meanings) };
}

function speak(of: Phrase, random: () => number, words: string[], meanings: Meaning[]): void {
  switch (of.kind) {
    case 'word':
      words.push(of.word);
      return;
    case 'seq':
      for (const part of of.parts) speak(part, random, words, meanings);
      return;
    case 'oneOf': {
      const one = drawn(of.of, random);
      if (one) speak(one, random, words, meanings);
      return;
    }
    case 'maybe':
      if (random() < 0.5 * weightOf(of.of)) speak(of.of, random, words, meanings);
      return;
    case 'seldom':
      speak(of.of, random, words, meanings);
      return;
    case 'means':
      speak(of.of, random, words, meanings);
      meanings.push(of.meaning);
      return;
    case 'lazy':
      speak(of.get(), random, words, meanings);
      return;
    case 'slot':
      throw new TypeError(`sample() cannot speak the slot <${of.name}>`);
  }
}

/** As often as it is said. */
const weightOf = (of: Phrase): number => (of.kind === 'seldom' ? Math.exp(-of.cost) : 1);

function drawn(ways: readonly Phrase[], random: () => number): Phrase | undefined {
  let left = random() * ways.reduce((sum, way) => sum + weightOf(way), 0);
  return ways.find((way) => {
    left -= weightOf(way);
    return left < 0;
  });
}

const empty: Draft = { as: 'value', negative: false, characters: '', set: {} };

function intentsFrom(meanings: readonly Meaning[]): Sample['intents'] {
  const intents: Readonly<Record<string, unknown>>[] = [];
  let draft: Draft = { ...empty };
  for (const meaning of meanings) {
    if ('add' in meaning) draft.number = (draft.number ?? new Fraction(0)).add(meaning.add);
    else if ('split' in meaning) draft = { ...empty, as: meaning.split, set: { ...draft.set, [draft.as]: worth(draft) } };
    else if ('negative' in meaning) draft.negative = true;
    else if ('characters' in meaning) draft.characters += meaning.characters;
    else if ('set' in meaning) draft.set = { ...draft.set, ...meaning.set };
    else if ('intent' in meaning) intents.push(meaning.intent satisfies Intent as Readonly<Record<string, unknown>>);
    else {
      intents.push(finished(meaning.end, draft));
      draft = { ...empty };
    }
  }
  return intents;
}

function finished(kind: string, draft: Draft): Readonly<Record<string, unknown>> {
  const { set, as, number } = draft;
  const fault = set.field === 'vin' ? vinFault(draft.characters) : undefined;
  if (fault) return { kind: 'problem', about: 'vin' };
  const unit = number && set.field ? fieldOf(set.field as FieldId).unit : undefined;
  return { kind, ...(unit ? { unit } : {}), ...set, [as]: worth(draft) };
}

const worth = ({ number, negative, characters }: Draft): string =>
  number ? (negative ? number.neg() : number).toFraction() : characters;
