// Every word that can be said has its tokens, written in each way in which the model writes it.
import tokenizer from 'llama-tokenizer-js';
import { describe, expect, it } from 'vitest';
import { grammar } from '#intents/grammar';
import { spellWords } from '../../../../web/build/words.ts';
import { read, vocabulary } from '../../../../web/recogniser/engine/language.ts';
import { spellingsFrom } from '../../../../web/recogniser/engine/spellings.ts';

const table = spellWords(vocabulary());
const spellings = spellingsFrom(table);
const written = (tokens: readonly number[]): string => tokenizer.decode([...tokens], false, false).trim();
const waits = { fields: ['hubFace' as const], yesNo: false };

/** Is this in the grammar? */
function canBeSaid(text: string): boolean {
  const { start, next, accepts } = grammar({ fields: [], yesNo: false });
  let state: number | undefined = start;
  for (const word of text.split(' ')) state = state === undefined ? undefined : next(state).get(word);
  return state !== undefined && accepts(state);
}

describe('words in tokens', () => {
  it('spells every word of the grammar', () => {
    const bare = vocabulary().filter((word) => spellings.of(word).mid.length === 0 || spellings.of(word).start.length === 0);
    expect(bare).toEqual([]);
    expect(vocabulary().length).toBeGreaterThan(400);
  });

  it.each([
    ['centre', ['centre', 'center']],
    ['tyre', ['tyre', 'tire']],
    ['two', ['two', 'to', 'too', '2']],
    ['fourteen', ['fourteen', '14']],
    ['psi', ['psi', 'PSI']],
    ['l', ['l', 'L']],
  ])('writes %s as %j', (word, writings) => {
    expect(spellings.of(word).mid.map(written)).toEqual(writings);
  });

  it('begins a sentence with a capital', () => {
    expect(spellings.of('hub').start.map(written)).toEqual(['Hub']);
  });
});

describe('the grammar as heard', () => {
  it.each([
    'hub face seventy two and three eighths',
    'no hub face seventy two',
    'correction left end play five thousandths',
    'no make that seventy two',
    'undo',
    'seventy two',
    'left end play three thou right four thou',
    'about sixty hub face',
    'what is half of seventy two and a quarter',
  ])('has "%s"', (text) => {
    expect(canBeSaid(text)).toBe(true);
  });

  it.each(['no the radio', 'hub face', 'correction', 'seventy two about'])('lacks "%s"', (text) => {
    expect(canBeSaid(text)).toBe(false);
  });
});

describe('how grave a sentence is', () => {
  it.each([
    ['hub face seventy two', 'measure'],
    ['no hub face seventy two', 'measure'],
    ['seventy two', 'bare'],
    ['no make that seventy two', 'bare'],
    ['undo', 'grave'],
    ['scratch that', 'grave'],
    ['next', 'command'],
  ])('"%s" is %s', (text, kind) => {
    expect(read(text, waits).kind).toBe(kind);
  });

  it('means the same in other words, and something else with another value', () => {
    const key = (text: string) => read(text, waits).key;
    expect(key('hub face is seventy two')).toBe(key('hub face seventy two'));
    expect(key('hub face fifteen')).not.toBe(key('hub face fifty'));
    expect(key('what do the lug nuts get')).toBe(key('what do the wheel nuts get'));
    expect(key('what do the lug nuts get')).not.toBe(key('what do the u bolts get'));
    expect(key('twice nine and a half')).toBe(key('what is twice nine and a half'));
    expect(key('twice nine and a half')).not.toBe(key('twice five and a half'));
    expect(key('what was the hub face on the left')).not.toBe(key('what was the hub face on the right'));
  });
});
