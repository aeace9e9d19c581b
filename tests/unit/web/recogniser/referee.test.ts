// The second opinion: what it is asked of, how much it weighs, and that it knows the voice of numbers that sound alike.
import { describe, expect, it } from 'vitest';
import { openVoice, voiceRate } from '../../../../server/voice/flite.ts';
import { dictionary, refereeFile } from '../../../../web/build/referee.ts';
import type { Reading } from '../../../../web/recogniser/engine/hear.ts';
import { vocabulary } from '../../../../web/recogniser/engine/language.ts';
import { loadReferee } from '../../../../web/recogniser/engine/referee.ts';
import { refereed } from '../../../../web/recogniser/engine/refereed.ts';

const candidate = (text: string, score: number) => ({ text, score, gain: score, cost: 0, tokens: 2 });
/** The meaning of these texts is their last word. */
const read = (text: string): Reading => ({ key: text.split(' ').at(-1) ?? '', kind: 'bare' });

describe('what the referee is asked of', () => {
  const found = [candidate('is fifty', 9), candidate('fifty', 8.5), candidate('fifteen', 8), candidate('sixteen', 2)];

  it('turns the order where it is sure and the search is not', () => {
    const asked: string[] = [];
    const said = refereed(found, read, (text) => {
      asked.push(text);
      return text === 'fifteen' ? -4000 : -4600;
    });
    expect(asked).toEqual(['is fifty', 'fifteen']);
    expect(said.map(({ text }) => text)).toEqual(['fifteen', 'is fifty', 'fifty', 'sixteen']);
  });

  it('lets no text gain of which it was not asked', () => {
    const said = refereed(found, read, (text) => (text === 'fifteen' ? -5000 : -4000));
    const scoreOf = (text: string) => said.find((each) => each.text === text)?.score;
    expect(scoreOf('is fifty')).toBe(9);
    expect(scoreOf('fifty')).toBe(8.5);
    expect(scoreOf('fifteen')).toBeCloseTo(5);
    expect(scoreOf('sixteen')).toBeCloseTo(-1);
  });

  it('is not asked where there is one meaning, or where the rest is far behind', () => {
    const never = () => {
      throw new Error('asked');
    };
    expect(refereed(found.slice(0, 2), read, never)).toEqual(found.slice(0, 2));
    expect(refereed([candidate('fifty', 9), candidate('sixteen', 2)], read, never)).toHaveLength(2);
    expect(refereed([], read, never)).toEqual([]);
  });

  it('leaves the order as it was where it has no opinion', () => {
    expect(refereed(found, read, () => undefined)).toEqual(found);
  });
});

describe('how our words are said', () => {
  it('has the words that the dictionary lacks, each way on a line', () => {
    expect(dictionary(['psi', 'either', 'hub'])).toBe('psi P IY EH S AY\neither IY DH ER\neither(2) AY DH ER\nhub HH AH B\n');
  });

  it('names the words nobody told how to say', () => {
    expect(() => dictionary(['hub', 'blorb', 'snarp'])).toThrow('blorb, snarp');
  });
});

describe('the referee', () => {
  it('finds what was said likelier than what sounds like it', { timeout: 30_000 }, async () => {
    const [voice, referee] = await Promise.all([openVoice(), loadReferee(refereeFile(vocabulary()))]);
    expect(voiceRate).toBe(16_000);
    const spoken = (text: string) => Float32Array.from(voice.say(text), (sample) => sample / 32_768);
    const pairs = [
      ['four hundred fifteen', 'four hundred fifty'],
      ['four hundred fifty', 'four hundred fifteen'],
      ['thirty two psi', 'thirty two thou'],
      ['hub face seventy two and three eighths', 'hub face seventy two and five eighths'],
    ] as const;
    for (const [said, other] of pairs) {
      const [own, wrong] = [said, other].map((text) => referee.likelihood(spoken(said), text));
      expect({ said, own }).toEqual({ said, own: expect.any(Number) });
      expect(own).toBeGreaterThan(wrong ?? 0);
    }
    const tooShort = new Float32Array(800);
    expect(referee.likelihood(tooShort, 'hub face seventy two and three eighths')).toBeUndefined();
    expect(referee.likelihood(spoken('fifty'), 'fifty')).toEqual(expect.any(Number));
  });

  it('says so when its file is not whole', { timeout: 30_000 }, async () => {
    await expect(loadReferee(refereeFile(vocabulary()).subarray(0, 3_000_000))).rejects.toThrow();
  });
});
