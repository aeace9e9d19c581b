// A command hardly heard waits for a yes; a value does not: the dialogue asks about it.
import { describe, expect, it } from 'vitest';
import { type HeardWell, weighed } from '../../../web/bay/doubtful.ts';

const heard = (text: string, more: Partial<HeardWell>): HeardWell => ({
  ok: true,
  text,
  confidence: 0.5,
  alternatives: [],
  band: 'ask',
  kind: 'grave',
  ...more,
});
const done = heard('done', {});
const yes = heard('yes', { answers: 'yes' });
const no = heard('no', { answers: 'no' });

describe('weighed', () => {
  it('asks about what settles something', () => {
    expect(weighed(undefined, done)).toEqual({ ask: done });
    expect(weighed(undefined, { ...done, band: 'take' })).toEqual({ take: { ...done, band: 'take' } });
  });

  it.each(['measure', 'bare', 'command'] as const)('leaves a %s to the dialogue', (kind) => {
    const other = heard('next', { kind });
    expect(weighed(undefined, other)).toEqual({ take: other });
  });

  it('takes a yes and a no for what is asked about, however well they were heard', () => {
    expect(weighed(done, yes)).toEqual({ take: done });
    expect(weighed(done, { ...no, band: 'take' })).toEqual({ drop: done });
  });

  it('takes what is said a second time', () => {
    expect(weighed(done, { ...done, confidence: 0.4 })).toEqual({ take: done });
  });

  it('lets what is asked about go when something else is said', () => {
    const value = heard('hub face seventy two', { kind: 'measure', band: 'take' });
    expect(weighed(done, value)).toEqual({ take: value });
    const skip = heard('skip that', {});
    expect(weighed(done, skip)).toEqual({ ask: skip });
  });

  it('asks about a yes to the dialogue that was hardly heard', () => {
    expect(weighed(undefined, yes)).toEqual({ ask: yes });
    expect(weighed(yes, yes)).toEqual({ take: yes });
  });
});
