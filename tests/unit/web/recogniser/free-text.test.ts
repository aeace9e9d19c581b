import { describe, expect, it } from 'vitest';
import { gather } from '../../../../web/recogniser/free-text.ts';

const guess = (transcript: string, confidence = 0.9) => ({ transcript, confidence });

describe('free text of the browser', () => {
  it('joins the pieces and keeps the other guesses at the last one', () => {
    expect(gather([[guess('hub face ')], [guess(' seventy two', 0.8), guess('seventy 2'), guess('seventy two')]])).toEqual({
      ok: true,
      text: 'hub face seventy two',
      confidence: 0.8,
      alternatives: ['hub face seventy 2'],
      band: 'take',
    });
  });

  it('asks where the browser is in doubt, and takes where it cannot say', () => {
    expect(gather([[guess('hub face fifteen', 0.4)]])?.band).toBe('ask');
    expect(gather([[guess('hub face fifteen', 0)]])?.band).toBe('take');
  });

  it('is nothing where nothing was said', () => {
    expect(gather([])).toBeUndefined();
    expect(gather([[guess(' ')]])).toBeUndefined();
  });
});
