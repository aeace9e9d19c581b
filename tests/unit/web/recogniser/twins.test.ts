// A sentence and those that noise makes of it, walked along a grammar, so that a twin which nothing there means is not offered.
import { describe, expect, it } from 'vitest';
import type { Automaton } from '#intents/grammar';
import { automaton } from '../../../../intents/grammar/automaton.ts';
import { oneOf, phrase, seldom } from '../../../../intents/phrase.ts';
import { beside, hasTwins, underrated } from '../../../../web/recogniser/engine/twins.ts';

const sentences = automaton(
  oneOf(
    phrase('pressure (fifteen|fifty [(five|nine)])'),
    seldom(phrase('face fifty'), 2),
    phrase('left (a|two) hundred'),
    phrase('(a|two) inch'),
  ),
);

function sentencesOf(of: Automaton, state = of.start, said: readonly string[] = []): string[] {
  const here = of.accepts(state) ? [said.join(' ')] : [];
  return [...here, ...[...of.next(state)].flatMap(([word, to]) => sentencesOf(of, to, [...said, word]))];
}

const besides = (text: string): string[] => sentencesOf(beside(sentences, text)).sort();

describe('beside', () => {
  it('gives the sentence and each way its numbers may be mistaken', () => {
    expect(besides('pressure fifty')).toEqual(['pressure fifteen', 'pressure fifty']);
  });

  it('keeps to what the grammar allows', () => {
    // "Fifteen five" is no number, and no face is fifteen.
    expect(besides('pressure fifty five')).toEqual(['pressure fifty five', 'pressure fifty nine']);
    expect(besides('face fifty')).toEqual(['face fifty']);
  });

  it('knows twins of several words', () => {
    expect(besides('left a hundred')).toEqual(['left a hundred', 'left two hundred']);
    expect(besides('two inch')).toEqual(['two inch']);
  });

  it('costs what the grammar says', () => {
    const some = beside(sentences, 'face fifty');
    expect(some.cost(some.start, 'face')).toBe(2);
  });
});

describe('hasTwins', () => {
  it('asks only where there is something to mistake', () => {
    expect(hasTwins('hub face seventy two')).toBe(true);
    expect(hasTwins('left a hundred ten')).toBe(true);
    expect(hasTwins('two inches')).toBe(false);
    expect(hasTwins('next')).toBe(false);
  });
});

describe('underrated', () => {
  it('is "a hundred" behind a side, where the model is for "two"', () => {
    expect(underrated('coupler to spindle left a hundred fifty five')).toBeGreaterThan(0);
    expect(underrated('coupler to spindle left two hundred fifty five')).toBe(0);
    expect(underrated('hub a hundred five degrees')).toBe(0);
  });
});
