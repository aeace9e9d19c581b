// Halves of a hub face: the second of them, whichever it is, tells aloud how the beam stands.
import { expect, it } from 'vitest';
import { say, silent, type Talk } from '../../support/dialogue.ts';

const spoken = ({ events }: Talk): string => {
  const body = events.at(-1)?.body;
  return body?.kind === 'replied' ? body.speak : '';
};
const opened = say(silent, 'new job axle replacement');
const [left, right] = ['half hub face left thirty-six and a half', 'half hub face right thirty-five and seven eighths'];

it.each([
  [left, right],
  [right, left],
])('%s, then %s', (first, second) => {
  const half = say(opened, first);
  expect(spoken(half)).not.toMatch(/beam/);
  expect(spoken(say(half, second))).toMatch(/five eighths.* apart: the beam stands five sixteenths.* to the left, shifted/);
});

it('says nothing more of halves that are alike within a tape', () => {
  const alike = say(say(opened, left), 'half hub face right thirty-six and seven sixteenths');
  expect(spoken(alike)).not.toMatch(/beam/);
});
