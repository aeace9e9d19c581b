import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { axleRpm, compareTyres, parseTyre, quantity, speedOf, turnsPerMile, tyreFigures } from '#core';

const math = create(all ?? {});

// Worked from D = 2 W A / 100 + 25.4 rim, to the printed places. Metric sizes have H in mm, D in mm, D in inches.
describe('metric sizes', () => {
  test.each([
    ['145/80-12', 116.0, 536.8, 21.134],
    ['175/80-13', 140.0, 610.2, 24.024],
    ['185/80-13', 148.0, 626.2, 24.654],
    ['205/75-14', 153.75, 663.1, 26.106],
    ['215/75-14', 161.25, 678.1, 26.697],
    ['205/75-15', 153.75, 688.5, 27.106],
    ['225/75-15', 168.75, 718.5, 28.287],
    ['235/80-16', 188.0, 782.4, 30.803],
    ['235/85-16', 199.75, 805.9, 31.728],
    ['205/65-10', 133.25, 520.5, 20.492],
    ['165/65-8', 107.25, 417.7, 16.445],
  ])('%s', (size, height, diameter, inches) => {
    const figures = tyreFigures(size);
    expect((figures?.sidewall?.value.valueOf() ?? 0) * 25.4).toBeCloseTo(height, 9);
    expect((figures?.overall?.value.valueOf() ?? 0) * 25.4).toBeCloseTo(diameter, 9);
    expect(figures?.overall?.value.valueOf()).toBeCloseTo(inches, 3);
  });
  // A retailer's chart: 205/75R15 is 8.070 in wide, 6.053 in the side, 27.106 in tall.
  test("a retailer's chart for 205/75R15", () => {
    const { width, sidewall, overall } = tyreFigures('205/75R15') ?? {};
    expect([width, sidewall, overall].map((one) => one?.value.valueOf().toFixed(3))).toEqual(['8.071', '6.053', '27.106']);
  });
});

// Retailer chart: overall diameters of inch sizes and the metric size of old letters (petestirestore.com, cerka.ca).
test('inch and letter sizes come from a table, never from a formula', () => {
  expect(tyreFigures('4.80-12')?.overall).toEqual(expect.objectContaining({ value: quantity('20.5', 'in').value }));
  expect(tyreFigures('4.80/4.00-8')?.overall?.value.valueOf()).toBe(16.1);
  expect(tyreFigures('5.30-12 C')?.overall?.value.valueOf()).toBe(21.9);
  expect(tyreFigures('7.00-14')?.overall).toBeUndefined();
  expect(tyreFigures('F78-14ST')?.replacedBy).toBe('ST205/75R14');
  expect(tyreFigures('20.5x8.0-10')?.overall?.value.valueOf()).toBe(20.5);
});

test.each([
  ['ST205/75R15', { form: 'metric', use: 'ST', aspect: 75, construction: 'R' }],
  ['P215/65R15 95H', { use: 'P', index: 95, speed: 'H' }],
  ['LT235/85R16 120/116R', { use: 'LT', index: 120, dualIndex: 116, speed: 'R' }],
  ['T145/80D18 103M', { use: 'T', construction: 'D', index: 103, speed: 'M' }],
  ['215/65R15 96H', { use: 'none', index: 96 }],
  ['4.80-12 C', { form: 'inch', loadRange: 'C' }],
  ['4.80/4.00-8', { form: 'inch' }],
  ['31x10.50R15LT', { form: 'flotation', use: 'LT' }],
  ['F78-14ST', { form: 'letter', letter: 'F', aspect: 78, use: 'ST' }],
  ['st205/75r15 load range d', { use: 'ST', loadRange: 'D' }],
])('%s is read', (text, parts) => {
  expect(parseTyre(text)).toMatchObject(parts);
});

test.each(['', 'tyre', '205', '205/75', '205/75R99', '999/75R15', '10x8-12', 'ST205/75R15 banana'])('"%s" is no tyre', (text) => {
  expect(parseTyre(text)).toBeUndefined();
});

// Speed symbols as in six public code tables; H stands between U and V.
test('speed symbols', () => {
  const speeds = ['A1', 'A8', 'M', 'U', 'H', 'V'].map((symbol) => speedOf(symbol)?.value.valueOf());
  expect(speeds).toEqual([5, 40, 130, 200, 210, 240]);
});

test('turns a mile and a minute agree with a reference library', () => {
  const overall = tyreFigures('ST205/75R15')?.overall ?? quantity(1, 'in');
  const turns = math.divide(math.unit(1, 'mile'), math.multiply(math.pi, math.unit(overall.value.valueOf(), 'inch')));
  expect(turnsPerMile(overall)).toBeCloseTo(math.number(turns as never), 6);
  expect(axleRpm(overall, 60)).toBeCloseTo(turnsPerMile(overall), 9);
});

test('a taller tyre raises the axle by half the difference and narrows the room by half the width', () => {
  const [now, next] = [tyreFigures('205/75R15'), tyreFigures('225/75R15')];
  if (!now || !next) throw new Error('two sizes');
  const { rideHeight, sideRoom, sameRim } = compareTyres(now, next);
  expect(rideHeight?.value.valueOf()).toBeCloseTo(30 / 2 / 25.4, 9);
  expect(sideRoom?.value.valueOf()).toBeCloseTo(-10 / 25.4, 9);
  expect(sameRim).toBe(true);
});
