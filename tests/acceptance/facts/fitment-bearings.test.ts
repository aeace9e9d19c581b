import { describe, expect, test } from 'vitest';
import {
  conesFor,
  cupsFor,
  Fraction,
  identifyByNumber,
  identifyBySize,
  interchange,
  numbersOf,
  packVolume,
  pairing,
  sealsFor,
  setsFor,
} from '#core';
import { bearings } from '#data';

// General inch-series bearing tables (public repository ArtemFilin1990/Mar), bore and outside in inches and millimetres.
describe('the tables agree with themselves', () => {
  test('inches and millimetres of every row are within 0.02 mm', () => {
    expect(bearings.length).toBeGreaterThanOrEqual(49);
    for (const { id, bore, od, boreMm, odMm } of bearings) {
      expect(Math.abs(Number(bore) * 25.4 - Number(boreMm)), id).toBeLessThanOrEqual(0.02);
      expect(Math.abs(Number(od) * 25.4 - Number(odMm)), id).toBeLessThanOrEqual(0.02);
      expect(Number(od)).toBeGreaterThan(Number(bore));
    }
  });
  test.each([
    ['L44649/L44610', '1.0625', '1.9800'],
    ['L68149/L68111', '1.3775', '2.3612'],
    ['LM48548/LM48510', '1.3750', '2.5625'],
    ['25580/25520', '1.7500', '3.2650'],
    ['25580/25521', '1.7500', '3.2700'],
    ['15123/15245', '1.2500', '2.4409'],
    ['14125A/14276', '1.2500', '2.7170'],
    ['LM67048/LM67010', '1.2500', '2.3280'],
    ['387A/382A', '2.2500', '3.8125'],
  ])('%s: bore %s, outside %s', (id, bore, od) => {
    expect(bearings.find((row) => row.id === id)).toMatchObject({ bore, od });
  });
});

describe('what runs with what', () => {
  test('one cup serves several cones, one cone several cups', () => {
    expect(new Set(conesFor('L44610'))).toEqual(new Set(['L44640', 'L44643', 'L44649']));
    expect(cupsFor('L68149')).toEqual(['L68110', 'L68111']);
    expect(cupsFor('LM12749')).toEqual(['LM12710', 'LM12711']);
  });
  test('the same outside and width is no pair: LM48510 and LM29710', () => {
    expect(pairing('LM48548', 'LM29710')).toEqual({
      code: 'notAPair',
      cupsForCone: ['LM48510'],
      conesForCup: ['LM29748', 'LM29749'],
    });
    expect(pairing('LM48548', 'lm-48510').code).toBe('pair');
    expect(pairing('LM48548', 'XX1')).toEqual({ code: 'unknown', which: ['XX1'] });
  });
  test('interchange wants bore, outside and width alike', () => {
    const row = bearings.find(({ id }) => id === 'LM29749/LM29710');
    expect(row && interchange(row).map(({ id }) => id)).toEqual(['LM29748/LM29710']);
  });
});

describe('which one is it', () => {
  test('a worn digit lists what it may be', () => {
    expect(numbersOf(identifyByNumber('L44?49'))).toEqual(['L44649']);
    expect(new Set(numbersOf(identifyByNumber('L4464?')))).toEqual(new Set(['L44640', 'L44643', 'L44649']));
  });
  test('one character misheard is offered, never taken', () => {
    expect(identifyByNumber('L44648').every(({ off }) => off === 1)).toBe(true);
    expect(identifyByNumber('L44648').length).toBeGreaterThan(1);
    expect(identifyByNumber('ZZ')).toEqual([]);
  });
  test('1.250 in does not tell 15123, 14125A, LM67048, 02475 and 2580 apart; the outside does', () => {
    const by = (size: Record<string, Fraction>) => identifyBySize(size, new Fraction('0.002')).map(({ cone }) => cone);
    expect(new Set(by({ bore: new Fraction('1.25') }))).toEqual(new Set(['15123', '14125A', 'LM67048', '02475', '2580']));
    expect(by({ bore: new Fraction('1.25'), od: new Fraction('2.717') })).toEqual(['14125A']);
  });
  test('1.375 and 1.3775 are two bearings: a thousandth tells them, a sixty-fourth does not', () => {
    const at = (tolerance: string) =>
      new Set(identifyBySize({ bore: new Fraction('1.375') }, new Fraction(tolerance)).map(({ cone }) => cone));
    expect(at('0.001').has('L68149')).toBe(false);
    expect(at('1/64').has('L68149')).toBe(true);
  });
});

test('sets are a suggestion by capacity, settled by a number', () => {
  expect(setsFor({ capacity: new Fraction(3500) }).map(({ inner, outer }) => [inner, outer])).toEqual([
    ['L68149/L68111', 'L44649/L44610'],
  ]);
  expect(setsFor({ inner: '25580', outer: '14125A' }).map(({ capacity }) => capacity)).toEqual(['7000']);
  expect(setsFor({})).toEqual([]);
});

test('a seal goes by journal and bore', () => {
  const found = (journal?: string, bore?: string) =>
    sealsFor(journal ? new Fraction(journal) : undefined, bore ? new Fraction(bore) : undefined, new Fraction('0.01'));
  expect(found('2.25', '3.376').map(({ inside }) => inside)).toEqual(['2.25']);
  expect(found(undefined, '3.376')).toHaveLength(2);
  expect(found('2.25', '1.983')).toEqual([]);
  expect(found()).toEqual([]);
});

test('grease grows with the bearing', () => {
  const of = (id: string) => bearings.find((row) => row.id === id) ?? bearings[0];
  const [small, large] = [of('L44649/L44610'), of('25580/25520')];
  if (!small || !large) throw new Error('two rows');
  expect(packVolume(large, large)).toBeGreaterThan(packVolume(small, small));
  // A third of the ring pi/4 (1.98^2 - 1.0625^2) 0.56, twice.
  expect(packVolume(small, small)).toBeCloseTo((2 / 3) * (Math.PI / 4) * (1.98 ** 2 - 1.0625 ** 2) * 0.56, 9);
});
