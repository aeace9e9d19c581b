// What the recogniser's grammar lets be said, and how seldom it takes it to be.
import { expect, it } from 'vitest';
import type { Expects } from '#intents';
import { grammar } from '#intents/grammar';
import { costOf } from '../../support/walk.ts';

const cost = (text: string, expects?: Expects): number => costOf(grammar(expects), text.split(' '));
const waitingFor = (...fields: Expects['fields']): Expects => ({ fields, yesNo: false });

it('expects the answers that are offered before all else, digit by digit too', () => {
  const expects: Expects = {
    ...waitingFor('wheelNutTorque'),
    yesNo: true,
    offered: ['ninety-two foot pounds', 'nine two', 'twenty-two foot pounds', 'two two'],
  };
  for (const text of ['ninety two', 'ninety two foot pounds', 'nine two', 'twenty two']) expect(cost(text, expects)).toBe(0);
  for (const text of ['three ninety two', 'ninety three']) expect(cost(text, expects)).toBeGreaterThanOrEqual(3);
});

it('expects a number of something else less while it waits for one', () => {
  expect(cost('two point six volts', waitingFor('endPlay'))).toBeGreaterThan(cost('two point six volts', waitingFor()) + 2);
  expect(cost('five thou', waitingFor('endPlay'))).toBe(0);
});

it('expects a yes or a no less while nothing is asked', () => {
  for (const text of ['yes', 'no'])
    expect(cost(text, waitingFor('endPlay'))).toBeGreaterThanOrEqual(3 + cost(text, { ...waitingFor('endPlay'), yesNo: true }));
  expect(cost('done', waitingFor('endPlay'))).toBe(0);
});

it.each([
  'new job hub service on a single axle trailer',
  'start a new job axle replacement',
  'skip the spring centre',
  'skip that step for now',
  'odometer eleven thousand four hundred',
  'resume the hub job',
])('lets be said: %s', (text) => {
  expect(cost(text)).toBeLessThan(6);
});
