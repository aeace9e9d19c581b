import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import {
  axleForShare,
  balance,
  camberDegrees,
  centreOf,
  chordOf,
  circleOf,
  convert,
  Fraction,
  fromHalves,
  fromTongue,
  identifyPattern,
  movedForward,
  quantity,
  readTrailer,
  rideOf,
  tableRules,
  tandemShare,
  type UnitId,
  uBoltFor,
} from '#core';
import { units } from '#data';
import { readings } from '../../support/readings.ts';

const math = create(all ?? {});
const f = (value: string | number) => new Fraction(value);

describe('bolt circles', () => {
  // Independent: holes laid out by coordinates, distance by the reference library's own hypotenuse.
  const between = (studs: number, circle: number, steps: number) => {
    const hole = (k: number) =>
      math.multiply(circle / 2, [
        math.cos((2 * math.pi * k) / studs),
        math.sin((2 * math.pi * k) / studs),
      ] as never) as unknown as number[];
    return math.distance(hole(0), hole(steps)) as number;
  };
  // Studs, circle in; next hole and skip-one as computed to four places.
  test.each([
    [4, 4, 2.8284, 4],
    [5, 4.5, 2.645, 4.2798],
    [5, 4.75, 2.792, 4.5175],
    [5, 5, 2.9389, 4.7553],
    [5, 5.5, 3.2328, 5.2308],
    [6, 5.5, 2.75, 4.7631],
    [8, 6.5, 2.4874, 4.5962],
  ])('%i on %d', (studs, circle, next, skip) => {
    expect(chordOf(circle, studs, 1)).toBeCloseTo(next, 4);
    expect(chordOf(circle, studs, 2)).toBeCloseTo(skip, 4);
    for (let steps = 1; steps <= studs / 2; steps++) {
      expect(chordOf(circle, studs, steps)).toBeCloseTo(between(studs, circle, steps), 9);
      expect(circleOf(between(studs, circle, steps), studs, steps)).toBeCloseTo(circle, 9);
    }
  });

  const at = (studs: number, steps: number, value: string, unit: UnitId, mark: string) =>
    identifyPattern({ studs, steps, between: quantity(value, unit), resolution: quantity(mark, unit) });

  test('2 5/8 in next to each other is 5 on 4 1/2 (engineerfix.com)', () => {
    expect(at(5, 1, '21/8', 'in', '1/16')).toMatchObject({ ok: true, best: { pattern: { id: '5x9/2' } } });
  });
  test('5 on 4 1/2 and 4 3/4 lie 0.147 in apart hole to hole: a sixteenth tells them, an eighth does not', () => {
    const names = (mark: string) => {
      const found = at(5, 1, '21/8', 'in', mark);
      return found.ok ? found.alike.map(({ pattern }) => pattern.id) : [];
    };
    expect(names('1/16')).not.toContain('5x19/4');
    expect(names('1/8')).toContain('5x19/4');
  });
  test('112 mm and 4 1/2 in are too near for a tape', () => {
    const found = at(5, 1, '65.83', 'mm', '1');
    expect(found).toMatchObject({ ok: true, best: { pattern: { id: '5x112 mm' } } });
    expect(found.ok && found.alike.map(({ pattern }) => pattern.id)).toContain('5x9/2');
  });
  test.each([
    [2, 1, '2', 'badCount'],
    [5, 3, '2', 'badMeasure'],
    [5, 1, '0', 'badMeasure'],
    [5, 1, '7', 'noStandard'],
  ])('%i studs, %i steps, %s in: %s', (studs, steps, value, code) => {
    expect(at(studs, steps, value, 'in', '1/16')).toMatchObject({ ok: false, code });
  });
});

describe('statics', () => {
  // R = W x / D about the coupler, worked by hand.
  test.each([
    ['P01', 3500, 132, 150, 3080, 420, '12'],
    ['P02', 7000, 198, 220, 6300, 700, '10'],
    ['P03', 2500, 88, 100, 2200, 300, '12'],
  ])('%s', (_case, weight, centre, axle, onAxle, onTongue, percent) => {
    const found = balance(f(weight), f(centre), f(axle));
    expect([found.axle.valueOf(), found.tongue.valueOf(), found.tonguePercent.toFraction()]).toEqual([onAxle, onTongue, percent]);
    expect(centreOf(f(weight), f(onTongue), f(axle)).valueOf()).toBe(centre);
  });
  test('P11, trailer-bodybuilders.com: 80 lb of tongue and 1,700 lb at 88 of 100 in make 284 lb, 11.36 percent', () => {
    const tongue = f(80).add(balance(f(1700), f(88), f(100)).tongue);
    expect(tongue.valueOf()).toBe(284);
    expect(fromTongue(f(2500), tongue).tonguePercent.valueOf()).toBeCloseTo(11.36, 9);
  });
  test.each([
    ['P10, humphreyshitchandtrailerparts.com', 8225, 1025, 264, 256.78],
    ['P10, the tongue too light', 8500, 300, 264, 282.98],
  ])('%s: the axle for ten percent, exactly', (_case, weight, tongue, axle, wanted) => {
    expect(axleForShare(centreOf(f(weight), f(tongue), f(axle)), f(10)).valueOf()).toBeCloseTo(wanted, 2);
  });
  test('P13: 500 lb moved 24 in forward of 150 puts 80 lb on the tongue', () => {
    expect(movedForward(f(500), f(24), f(150)).valueOf()).toBe(80);
  });
  test('P15: arms of 3 and 2 3/4 share 47.8 to 52.2', () => {
    const { front, rear } = tandemShare(f(100), f(3), f('11/4'));
    expect([front.valueOf().toFixed(1), rear.valueOf().toFixed(1)]).toEqual(['47.8', '52.2']);
  });
});

test('hub face by halves: whole, shift, and straight within what is allowed', () => {
  const inch = (value: string) => quantity(value, 'in');
  expect(fromHalves(inch('145/4'), inch('289/8'), inch('1/8'))).toMatchObject({
    straight: true,
    toLeft: inch('1/16'),
    whole: inch('579/8'),
  });
  expect(fromHalves(inch('73/2'), inch('287/8'), inch('1/8')).straight).toBe(false);
});

test.each([
  [3, 2.875, 15],
  [2.5, 2.53, 13],
])('camber by a plumb line, top %d, bottom %d over %d in: the same angle by the reference library', (top, bottom, rim) => {
  const theirs = math.unit(math.asin((bottom - top) / rim) as number, 'rad').toNumber('deg');
  expect(camberDegrees(top, bottom, rim)).toBeCloseTo(theirs, 9);
});

test('springs from under the beam to over it: the stack between the two places of the beam, added up by the reference library', () => {
  const on = readTrailer(readings({ beamDiameter: '19/8', springPack: '3/2', slung: 'underSlung' }));
  // Spring and axle middles are half a pack, a seat and half a beam apart, before and after, on opposite sides.
  const apart = math.evaluate('(1.5 / 2 + 0.1875 + 2.375 / 2) * 2') as number;
  expect(rideOf(on, tableRules).bySwap?.value.valueOf()).toBeCloseTo(apart, 12);
});

// 2.375 + 3/16 + 1 + 1/4 + 1/2 + 1/4 = 4.5625; the next quarter inch is 4 3/4.
test('the leg of a U-bolt is the stack it goes through', () => {
  const { leg, order, insideWidth } = uBoltFor({
    beam: f('19/8'),
    seat: f('3/16'),
    springPack: f(1),
    plate: f('1/4'),
    nut: f('1/2'),
    showing: f('1/4'),
  });
  expect([leg, order, insideWidth].map(({ value }) => value.toFraction())).toEqual(['73/16', '19/4', '19/8']);
});

describe('every unit against a reference library', () => {
  const names: Partial<Record<UnitId, string>> = {
    in: 'inch',
    mm: 'mm',
    cm: 'cm',
    m: 'm',
    ft: 'ft',
    lb: 'lb',
    kg: 'kg',
    'lbf.ft': 'lbf ft',
    'lbf.in': 'lbf inch',
    'N.m': 'N m',
    psi: 'psi',
    kPa: 'kPa',
    bar: 'bar',
    degF: 'degF',
    degC: 'degC',
    mi: 'mile',
    km: 'km',
    mph: 'mile/hour',
    kmh: 'km/hour',
    deg: 'deg',
    V: 'V',
    A: 'A',
    ohm: 'ohm',
  };
  const told = units.filter(({ id }) => names[id] !== undefined);
  test.each(told.map(({ id, dimension }) => [id, dimension] as const))('%s', (id, dimension) => {
    for (const { id: other } of told.filter((row) => row.dimension === dimension)) {
      const theirs = math.unit(7, names[id] ?? '').toNumber(names[other] ?? '');
      const ours = convert(quantity(7, id), other).value.valueOf();
      // mathjs carries the pound-force and the psi to seven places.
      expect(Math.abs(ours / theirs - 1)).toBeLessThan(1e-7);
    }
  });
  test('no unit with a size is left out', () => {
    expect(units.map(({ id }) => id).filter((id) => names[id] === undefined)).toEqual(['mo', '1']);
  });
});
