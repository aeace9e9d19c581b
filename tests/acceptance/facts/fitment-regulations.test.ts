// Worked examples of the regulations, each beside its source. Stored copies of the rules, 2000 to 2026.
import { describe, expect, test } from 'vitest';
import {
  brakesRequired,
  loadOfIndex,
  quantity,
  surgeBrakesAllowed,
  tableRules,
  tyreLoad,
  tyresAgainstRating,
  verdictOf,
} from '#core';
import { axle, readings, rightAxle, wholeTrailer } from '../../support/readings.ts';

const lb = (value: string | number) => quantity(value, 'lb');

describe('49 CFR 571.120 S5.1.2: the tyres of an axle carry its rating; a passenger-car tyre counts divided by 1.10', () => {
  test.each([
    ['TL1', 3500, 1820, 3640, 140],
    ['TL2', 3500, 1760, 3520, 20],
    ['TL3', 3500, 1710, 3420, -80],
  ])('%s: rating %i, two tyres of %i lb', (_case, rating, load, sum, margin) => {
    const found = tyresAgainstRating(lb(load), 2, lb(rating));
    expect([found.sum.value.valueOf(), found.margin.value.valueOf(), found.ok]).toEqual([sum, margin, margin >= 0]);
  });
  test.each([
    ['TL4', 'P215/65R15 94H', 2700, -14.5, false],
    ['TL5', 'P215/65R15 94H', 2600, 85.5, true],
    ['TL6 as ST', 'ST215/75R14 100M', 3500, 27.4, true],
    ['TL6 as passenger', 'P215/75R14 100M', 3500, -293.3, false],
  ])('%s: %s', (_case, size, rating, margin, ok) => {
    const tyre = tyreLoad(size);
    const found = tyresAgainstRating(tyre?.counted ?? lb(0), 2, lb(rating));
    // The printed pounds of an index are rounded to one.
    expect(Math.abs(found.margin.value.valueOf() - margin)).toBeLessThan(2);
    expect(found.ok).toBe(ok);
  });
  test('TL7: dual tyres count by their dual rating, NHTSA interpretation aiam0583', () => {
    expect(tyresAgainstRating(lb(3550), 4, lb(17500)).sum.value.valueOf()).toBe(14200);
    expect(tyreLoad('LT235/85R16 120/116R', true)?.load.value.valueOf()).toBeCloseTo(1250 / 0.45359237, 9);
  });
});

describe('49 CFR 393.42(b)(3), (4): light trailers without brakes', () => {
  test.each([
    ['BR1', 2800, 2480, 6200, false],
    ['BR2', 2800, 2481, 6200, true],
    ['BR3', 3000, 2600, 6500, false],
    ['BR4', 3001, 1, 100000, true],
    ['BR5', 3000, 3000, 3400, true],
  ])('%s: gross %i, axles %i, towing axles %i', (_case, gross, onAxles, towing, required) => {
    expect(brakesRequired({ gross: lb(gross), onAxles: lb(onAxles), towing: lb(towing) }, tableRules)).toBe(required);
  });
});

describe('49 CFR 393.48(d): surge brakes', () => {
  test.each([
    ['BR6', 10500, 6000, true],
    ['BR6', 10501, 6000, false],
    ['BR7', 11500, 6572, true],
    ['BR7', 11500, 6571, false],
    ['BR8', 18750, 15000, true],
    ['BR8', 18751, 15000, false],
    ['BR9', 12000, 6857, false],
    ['BR9', 12000, 6858, true],
    ['BR10', 20001, 100000, false],
  ])('%s: trailer %i behind %i', (_case, trailer, towing, allowed) => {
    expect(surgeBrakesAllowed(lb(trailer), lb(towing))).toBe(allowed);
  });
});

describe('23 CFR 658.15: 102 in or 2.6 m wide', () => {
  const width = (overall: string) => {
    // Wheels whose tyre middles stand on the hub face, 203.2 mm (8 in) wide; no fender to be in the way.
    const { fenderWidth: _none, ...open } = { ...wholeTrailer, tyreSize: '20.5x8.0-10' };
    return verdictOf(readings(open), axle({ ...rightAxle.values, hubFace: overall })).rows.find(
      ({ check }) => check === 'overallWidth',
    )?.result;
  };
  test.each([
    ['102 in over the tyres', '94', 'fits'],
    ['2600 mm over the tyres', '11984/127', 'fits'],
    ['a hundredth of an inch more than 2.6 m', '94.373', 'doesNotFit'],
    ['102.5 in over the tyres', '94.5', 'doesNotFit'],
  ])('%s', (_name, hubFace, result) => expect(width(hubFace)).toBe(result));
});

// Load index table as published by two tyre sellers (barretire.com, info.kaltire.com); kg exact, printed pounds within one.
test.each([
  [60, 250, 551],
  [71, 345, 761],
  [79, 437, 963],
  [87, 545, 1201],
  [94, 670, 1477],
  [100, 800, 1764],
  [107, 975, 2149],
  [112, 1120, 2470],
  [119, 1360, 2999],
  [121, 1450, 3197],
  [130, 1900, 4189],
])('load index %i is %i kg, about %i lb', (index, kg, pounds) => {
  const load = loadOfIndex(index);
  expect(load).toEqual(quantity(kg, 'kg'));
  expect(Math.abs(kg / 0.45359237 - pounds)).toBeLessThanOrEqual(1.2);
});
