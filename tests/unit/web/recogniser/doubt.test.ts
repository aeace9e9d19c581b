// Bands of doubt, and what goes along as an alternative.
import { describe, expect, it } from 'vitest';
import { policy } from '#data';
import { judge } from '../../../../web/recogniser/engine/doubt.ts';
import { weigh } from '../../../../web/recogniser/engine/hear.ts';
import { read } from '../../../../web/recogniser/engine/language.ts';
import thresholds from '../../../../web/recogniser/engine/thresholds.json' with { type: 'json' };
import type { Kind } from '../../../../web/recogniser/types.ts';

const kinds: readonly Kind[] = ['measure', 'bare', 'command', 'grave'];
const order = ['refuse', 'ask', 'take'] as const;

describe('bands', () => {
  it.each(kinds)('%s: no better hearing is ever trusted less', (kind) => {
    const fits = Array.from({ length: 51 }, (_, index) => -1 + index / 10);
    const leads = [0, 0.5, 1, 1.5, 2, 3, 5, 8];
    for (const [index, fit] of fits.entries()) {
      for (const [at, lead] of leads.entries()) {
        const rank = order.indexOf(judge(kind, fit, lead).band);
        const better = [judge(kind, fits[index + 1] ?? fit, lead), judge(kind, fit, leads[at + 1] ?? lead)];
        for (const { band } of better) expect(order.indexOf(band)).toBeGreaterThanOrEqual(rank);
      }
    }
  });

  it.each(kinds)('%s: taken only with the confidence of what is taken', (kind) => {
    for (let fit = -2; fit <= 4; fit += 0.25) {
      for (let lead = 0; lead <= 8; lead += 0.5) {
        const { band, confidence } = judge(kind, fit, lead);
        if (band === 'take') expect(confidence).toBeGreaterThanOrEqual(thresholds.taken);
        if (band === 'ask') expect(confidence).toBeLessThanOrEqual(thresholds.asked);
        expect(confidence).toBeGreaterThanOrEqual(0);
        expect(confidence).toBeLessThanOrEqual(1);
      }
    }
  });

  it('leaves no gap to what the dialogue asks about', () => {
    expect(thresholds.asked).toBeLessThan(policy.confidence);
    expect(thresholds.taken).toBeGreaterThanOrEqual(policy.confidence);
  });

  it('refuses what fits badly and takes what fits well and has no rival', () => {
    for (const kind of kinds) {
      expect(judge(kind, -0.5, 20).band).toBe('refuse');
      expect(judge(kind, 2.5, 12).band).toBe('take');
      expect(judge(kind, 1.5, 0).band).toBe('ask');
    }
  });

  it('asks of a bare number more than of one with its name', () => {
    const { measure, bare } = thresholds.kinds;
    expect(bare.take.fit).toBeGreaterThan(measure.take.fit);
  });

  it('asks of what confirms, strikes or closes more than of another command', () => {
    const leads = Array.from({ length: 61 }, (_, index) => index / 10);
    const leastLead = (kind: Kind, fit: number) => leads.find((lead) => judge(kind, fit, lead).band === 'take') ?? Number.NaN;
    for (const fit of [0.5, 0.8, 1.1, 1.4, 1.7]) expect(leastLead('grave', fit)).toBeGreaterThan(leastLead('command', fit));
    for (let fit = -2; fit <= 4; fit += 0.1)
      for (const lead of leads)
        if (judge('grave', fit, lead).band === 'take') expect(judge('command', fit, lead).band).toBe('take');
  });
});

const none = { fields: [], yesNo: false };
const heard = (...candidates: readonly (readonly [string, number])[]) =>
  weigh(
    candidates.map(([text, score]) => ({ text, score, gain: 14, cost: 0, tokens: 6 })),
    (text) => read(text, none),
  );

describe('what was said', () => {
  it.each([
    ['yes', 'grave', 'yes'],
    ['nope', 'grave', 'no'],
    ['done', 'grave', undefined],
    ['yes done', 'grave', undefined],
    ['close the job', 'grave', undefined],
    ['next', 'command', undefined],
    ['what fits', 'command', undefined],
    ['five thou', 'bare', undefined],
    ['hub face seventy two', 'measure', undefined],
  ])('%s: %s, answers %s', (text, kind, answers) => {
    expect(read(text, none)).toMatchObject({ kind });
    expect(read(text, none).answers).toBe(answers);
  });
});

describe('alternatives', () => {
  it('carry another value, and the closest comes first', () => {
    const { hearing } = heard(
      ['spring centre fifty', -2],
      ['spring centres fifty', -2.2],
      ['spring centre fifteen', -2.4],
      ['spring centre sixty', -5],
    );
    expect(hearing).toMatchObject({ ok: true, band: 'ask', text: 'spring centre fifty' });
    expect(hearing.ok && hearing.alternatives).toEqual(['spring centre fifteen', 'spring centre sixty']);
  });

  it('leave out other words for the same, which do not make it doubtful either', () => {
    const { hearing, lead } = heard(
      ['hub face is seventy two', -2],
      ['hub face at seventy two', -2.1],
      ['hub face seventy two', -2.1],
    );
    expect(hearing).toMatchObject({ ok: true, band: 'take', alternatives: [] });
    expect(lead).toBe(20);
  });

  it('of nothing found is nothing', () => {
    expect(heard().hearing.ok).toBe(false);
  });
});
