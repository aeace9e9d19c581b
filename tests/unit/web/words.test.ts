import { expect, it } from 'vitest';
import { stepWords } from '../../../web/review/words.ts';
import { when } from '../../../web/shared/when.ts';

it.each([
  ['makeSafe/park', 'make safe: park'],
  ['hubBearing/packInner@front.left', 'hub bearing: pack inner, front left'],
])('names the step %s in words', (step, words) => expect(stepWords(step)).toBe(words));

it('names the year of a time that is not of this year, and nothing for no time', () => {
  expect(when('2019-11-25T12:00:00Z')).toContain('2019');
  expect(when(new Date().toISOString())).not.toContain(String(new Date().getFullYear()));
  expect(when('')).toBe('');
});
