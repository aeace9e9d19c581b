// Wheel nuts and U-bolts against the documents that print them; tightening orders against the rule they follow.
import { describe, expect, test } from 'vitest';
import {
  Fraction,
  type Range,
  retorqueReminders,
  tighteningOrder,
  uBoltTorque,
  type WheelNutTorque,
  wheelNutTorque,
} from '#core';
import { tighteningOrders } from '#data';

const ends = ({ low, high }: Range) => [low.valueOf(), high.valueOf()];
const rangeOf = (torque: WheelNutTorque) => ('range' in torque ? ends(torque.range) : torque.code);
const stagesOf = (torque: WheelNutTorque) =>
  'stages' in torque ? torque.stages.steps.map(({ low, high }) => [low.valueOf(), high.valueOf()]) : torque.code;

describe('wheel nuts', () => {
  // generator-trailer manual, manualsdir.com 569014 p. 40, and cerka.ca wheel torque page (50 to 65 and 50 to 60: both allow 50 to 60)
  test('half inch stud, 13 inch wheel: 20-25, 35-40, 50-60', () => {
    const torque = wheelNutTorque({ thread: '1/2-20', wheelDiameter: '13', wheelType: 'steel' });
    expect(stagesOf(torque)).toEqual([
      [20, 25],
      [35, 40],
      [50, 60],
    ]);
  });

  // manualsdir.com 569014 p. 40; cerka.ca
  test('half inch stud, 15 inch wheel: 20-25, 50-60, 90-120', () => {
    const torque = wheelNutTorque({ thread: '1/2-20', wheelDiameter: '15', wheelType: 'steel' });
    expect(stagesOf(torque)).toEqual([
      [20, 25],
      [50, 60],
      [90, 120],
    ]);
  });

  // recstuff.com aluminium wheel page
  test.each([
    ['1/2-20', [90, 120]],
    ['5/8-18', [140, 160]],
  ])('aluminium, %s: %o', (thread, want) => {
    expect(rangeOf(wheelNutTorque({ thread, wheelType: 'aluminium', wheelDiameter: '15' }))).toEqual(want);
  });

  // cerka.ca: 17.5 in hub-piloted 5/8 flange nut
  test('five eighths on a 17.5 inch wheel: 275 to 325', () => {
    expect(rangeOf(wheelNutTorque({ thread: '5/8-18', wheelType: 'steel', wheelDiameter: '17.5' }))).toEqual([275, 325]);
  });

  // azmanual.top 225108 p. 15 against recstuff.com: 275-325 and 140-160 for one stud
  test('documents that differ are not averaged: it asks for what would tell them apart', () => {
    const torque = wheelNutTorque({ thread: '5/8-18', wheelDiameter: '16' });
    expect(torque.code).toBe('documentsDiffer');
    expect(torque.code === 'documentsDiffer' && torque.missing).toEqual(['wheelType']);
    expect(torque.ranges.map(ends)).toEqual([
      [140, 160],
      [275, 325],
    ]);
  });

  test('half inch stud and no wheel known: light and larger wheels differ, the diameter is asked for', () => {
    const torque = wheelNutTorque({ thread: '1/2-20', wheelType: 'steel' });
    expect(torque.code === 'documentsDiffer' && torque.missing).toEqual(['wheelDiameter']);
  });

  test("the maker's value stands before every document", () => {
    const maker = {
      low: { value: new Fraction(100), unit: 'lbf.ft' },
      high: { value: new Fraction(100), unit: 'lbf.ft' },
    } as const;
    const torque = wheelNutTorque({ thread: '1/2-20', wheelDiameter: '13', maker });
    expect([torque.code, rangeOf(torque)]).toEqual(['maker', [100, 100]]);
  });

  test('a metric stud has no published row and no guess', () => {
    expect(wheelNutTorque({ thread: 'M12x1.5' }).code).toBe('nonePublished');
  });
});

describe('U-bolts', () => {
  // cityspring.com U-bolt torque page; grade 8 rows autoandtrucksprings.com. Highest, plated and unplated, ft-lb.
  test.each([
    ['3/8-24', [21, 26]],
    ['7/16-20', [33, 44]],
    ['1/2-20', [52, 64, 70, 87]],
    ['9/16-18', [75, 93, 100, 124]],
    ['5/8-18', [107, 132, 143, 177]],
    ['3/4-16', [190, 234, 253, 313]],
  ])('%s: at most %o by grade and plating', (thread, want) => {
    const found = uBoltTorque({ thread });
    expect(found.ranges.map(({ high }) => high.valueOf()).toSorted((a, b) => a - b)).toEqual(want);
    expect(found.code === 'published' && found.highest.high.valueOf()).toBe(want[0]);
  });

  // autoandtrucksprings.com prints 107/143 for 9/16 grade 5, its own 5/8 line; cityspring.com has 75/100
  test('9/16 grade 5 is not given the 5/8 line', () => {
    const found = uBoltTorque({ thread: '9/16-18', grade: '5' });
    expect(found.ranges.map(({ high }) => high.valueOf())).toEqual([75, 100]);
  });
});

describe('tightening orders', () => {
  test.each(tighteningOrders)('$studs studs: every hole once; opposites in pairs, or steps of two', ({ studs, order }) => {
    expect(order.toSorted((a, b) => a - b)).toEqual(Array.from({ length: studs }, (_, at) => at + 1));
    const apart = (a = 0, b = 0) => Math.min((a - b + studs) % studs, (b - a + studs) % studs);
    const pairs = order.flatMap((hole, at) => (at === 0 ? [] : [apart(order[at - 1], hole)]));
    if (studs % 2 === 1) expect(new Set(pairs)).toEqual(new Set([2]));
    else expect(pairs.filter((_, at) => at % 2 === 0)).toEqual(Array.from({ length: studs / 2 }, () => studs / 2));
    if (studs > 4) expect(pairs.every((step) => step > 1)).toBe(true);
  });

  // TM 10-4320-344-24 para 2.23.1: five clamps, every other one
  test('five: 1 3 5 2 4', () => {
    const found = tighteningOrder(5);
    expect(found.code === 'order' && found.order).toEqual([1, 3, 5, 2, 4]);
  });

  test('seven studs: no order, and the known counts are named', () => {
    expect(tighteningOrder(7)).toEqual({ code: 'noOrder', studs: 7, known: [4, 5, 6, 8, 10] });
  });
});

describe('re-torque', () => {
  // cerka.ca wheel torque page; azmanual.top 225108: after 10, 25 and 50 miles
  test('wheel nuts at 10, 25 and 50 miles from the odometer', () => {
    const due = retorqueReminders('wheelNutTorque', '2026-11-25T09:00:00Z', '1200').map(({ dueMiles }) => dueMiles);
    expect(due).toEqual(['1210', '1225', '1250']);
  });

  // lhrods.com (100 miles); TM 9-2330-358-14&P para 5-9 (1,000 miles, then every three months)
  test('U-bolts at 100 and 1,000 miles and after three months', () => {
    const due = retorqueReminders('uBoltTorque', '2026-11-30T09:00:00Z').map(({ dueMiles, dueAt }) => dueMiles ?? dueAt);
    expect(due).toEqual(['100', '1000', '2027-02-28']);
  });
});
