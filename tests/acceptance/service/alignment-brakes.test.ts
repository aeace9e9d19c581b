// Alignment and electric brakes against printed limits, tables and worked arithmetic.
import { describe, expect, test } from 'vitest';
import {
  brakeCurrent,
  breakawayCharge,
  degreesOver,
  expanded,
  Fraction,
  gaugeFor,
  judgeCurrent,
  judgeDrum,
  judgeLining,
  judgeOhms,
  judgeSpacing,
  judgeSquareness,
  judgeToe,
  nextServices,
  readingUncertainty,
  throughWire,
  thrustAngle,
  wireDrop,
  workOut,
} from '#core';

const f = (text: string | number) => new Fraction(text);

describe('squareness', () => {
  // plane geometry: asin((L^2 - R^2) / (2 w D))
  test.each([
    ['150.125', '150', 0.1025],
    ['180.25', '180', 0.203],
  ])('%s against %s over 72 in: %d degrees', (left, right, degrees) => {
    expect(thrustAngle(f(left), f(right), f(72))).toBeCloseTo(degrees, 4);
  });

  test.each([
    ['1/8', '72', 0.0995],
    ['1/8', '60', 0.1194],
    ['1/16', '72', 0.0497],
  ])('%s in over %s in is %d degrees', (offset, width, degrees) => {
    expect(degreesOver(f(offset), f(width))).toBeCloseTo(degrees, 4);
  });

  // TTMA RP 71: 1/8 in; a tape read to 1/16 cannot tell 1/8 from less (GUM, rectangular readings)
  test.each([
    ['145', '145', 'square'],
    ['145 1/16', '145', 'square'],
    ['145 1/8', '145', 'squareUnsure'],
    ['145 3/16', '145', 'notSquare'],
  ])('%s against %s: %s', (left, right, code) => {
    expect(judgeSquareness({ left: f(left), right: f(right) }).code).toBe(code);
  });

  // TM 5-2330-325-13&P WP 0052: move by half the difference, one end forward, the other back
  test('a quarter inch: half at each end; at 58 in spring centres 0.1007 in, one side only 0.201', () => {
    const found = judgeSquareness({ left: f('145.25'), right: f(145), spread: f(72), at: f(58) });
    const move = found.code === 'impossibleDiagonals' ? undefined : found.move;
    expect([move?.side, move?.direction, move?.eachEnd.toFraction()]).toEqual(['left', 'forward', '1/8']);
    expect(move?.eachEndAtSpring?.valueOf()).toBeCloseTo(0.1007, 4);
    expect(move?.oneEndAtSpring?.valueOf()).toBeCloseTo(0.201, 3);
  });

  test('diagonals further apart than the axle is wide are refused', () => {
    expect(judgeSquareness({ left: f(240), right: f(140), spread: f(72) }).code).toBe('impossibleDiagonals');
    // more than an eighth of the spread, seven degrees: common practice, no source; the widest vehicle is 102 in, 23 CFR 658.15
    expect(judgeSquareness({ left: f('180.25'), right: f('102.25') }).code).toBe('impossibleDiagonals');
    expect(judgeSquareness({ left: f(149), right: f(140), spread: f(72) }).code).toBe('notSquare');
    expect(judgeSquareness({ left: f('149.0625'), right: f(140), spread: f(72) }).code).toBe('impossibleDiagonals');
  });

  // u = r/2/sqrt(3) each, k = 2 (NIST TN 1297): 1/32 in -> 0.0255, 1/16 in -> 0.0510
  test.each([
    ['1/32', 0.0255],
    ['1/16', 0.051],
  ])('a difference read to %s in is good to %d', (resolution, want) => {
    const one = readingUncertainty(f(resolution));
    expect(expanded(one, one).valueOf()).toBeCloseTo(want, 3);
  });
});

describe('spacing and toe', () => {
  // TTMA RP 71 1/16 in; TM 9-2330-342-23&P 0.06 in: one reading, two verdicts
  test('a sixteenth passes one document and fails the other', () => {
    const found = judgeSpacing({ left: f('33 1/16'), right: f(33), spread: f(72) });
    expect(Object.fromEntries(found.byDocument.map(({ limit, passes }) => [limit.id, passes]))).toMatchObject({
      spacingRp71: true,
      spacingTm342: false,
    });
    expect(found.scrubDegrees).toBeCloseTo(0.0497, 4);
  });

  test.each([
    ['1/16', '28', 0.1279],
    ['1/8', '28', 0.2558],
    ['1/16', '24', 0.1492],
    ['1/32', '24', 0.0746],
  ])('toe %s in on %s in: %d degrees', (total, diameter, degrees) => {
    const found = judgeToe({ front: f(70), rear: f(70).add(total), diameter: f(diameter) });
    expect(found.totalDegrees).toBeCloseTo(degrees, 4);
    expect([found.way, found.eachSide.mul(2).equals(total)]).toEqual(['in', true]);
  });
});

describe('magnets', () => {
  // retailer's printed totals at 12 V (7, 10 and 12 in drums), checked as n V / R at 3.2 and 3.8 ohm
  test.each([
    [2, '10', 7.5],
    [4, '12', 15.0],
    [6, '10', 22.5],
    [2, '7', 6.32],
    [6, '7', 18.95],
  ])('%d brakes of %s in at 12 V: %d A at most', (brakes, drum, amps) => {
    expect(brakeCurrent(brakes, f(12), drum).total.high.valueOf()).toBeCloseTo(amps, 2);
  });

  test.each([
    [4, 0.8],
    [6, 0.533],
  ])('%d magnets of 3.2 ohm side by side: %d ohm', (brakes, ohms) => {
    expect(brakeCurrent(brakes, f(12), '10').together.valueOf()).toBeCloseTo(ohms, 3);
  });

  test.each([
    ['15', 'currentGood', 0],
    ['11.25', 'currentOneShort', 1],
    ['7.4', 'currentOneShort', 2],
    ['0', 'currentNone', 0],
    ['25', 'currentHigh', 0],
  ])('four 10 in brakes at 12 V drawing %s A: %s', (amps, code, missing) => {
    expect(judgeCurrent(f(amps), brakeCurrent(4, f(12), '10'))).toMatchObject({ code, missing });
  });

  test.each([
    ['3.3', 'magnetGood'],
    ['2.0', 'magnetLow'],
    ['6', 'magnetHigh'],
    ['0.1', 'magnetShorted'],
    ['100', 'magnetOpen'],
  ])('%s ohm on a 10 in drum: %s', (ohms, code) => {
    expect(judgeOhms(f(ohms), '10').code).toBe(code);
  });
});

describe('wire', () => {
  // AWG table of hyperphysics.phy-astr.gsu.edu; drop = I 2L R / 1000
  test.each([
    ['15', '30', '10', 0.9],
    ['15', '30', '12', 1.43],
    ['15', '30', '14', 2.27],
    ['15', '30', '16', 3.61],
    ['7.5', '20', '12', 0.48],
  ])('%s A over %s ft of %s gauge: %d V', (amps, feet, gauge, volts) => {
    const found = wireDrop(f(amps), f(feet), gauge);
    expect(found.code === 'wireDrop' && found.drop.valueOf()).toBeCloseTo(volts, 2);
  });

  test.each([
    ['10', 13.96, 11.16],
    ['14', 12.61, 10.09],
  ])('four magnets behind 30 ft of %s gauge draw %d A and get %d V', (gauge, amps, volts) => {
    const wire = wireDrop(f(1), f(30), gauge);
    const found = wire.code === 'wireDrop' ? throughWire(f(12), f('0.8'), wire.ohms) : undefined;
    expect([found?.amps.valueOf(), found?.atMagnets.valueOf()]).toEqual([expect.closeTo(amps, 1), expect.closeTo(volts, 1)]);
  });

  test('the thinnest wire within a volt at 15 A over 30 ft is ten gauge', () => {
    expect(gaugeFor(f(15), f(30), f(1))?.id).toBe('10');
  });

  test('a gauge that is not in the table is named', () => {
    expect(wireDrop(f(15), f(30), '11')).toMatchObject({ code: 'unknownGauge', gauge: '11' });
  });
});

describe('drums, linings, breakaway', () => {
  // TM 9-2330-389-14&P para 5-1: 12 in drum, discard over 12.090
  test.each([
    ['12.090', 'drumWithin'],
    ['12.091', 'drumWorn'],
    ['14', 'drumLimitUnknown'],
  ])('%s in: %s', (diameter, code) => {
    expect(judgeDrum(f(diameter)).code).toBe(code);
  });

  test('the figure cast in the drum rules', () => {
    expect(judgeDrum(f('12.080'), f('12.060')).code).toBe('drumWorn');
  });

  // 49 CFR Part 396 Appendix A 1.a(6): a sixteenth or less
  test.each([
    ['1/16', 'liningWorn'],
    ['3/32', 'liningGood'],
  ])('lining %s in: %s', (inches, code) => {
    expect(judgeLining(f(inches)).code).toBe(code);
  });

  // 49 CFR 393.43(d), fifteen minutes: I x 0.25 h; a full 5 Ah battery at 15 A lasts 20 minutes
  test('fifteen amps take 3.75 Ah; five Ah last twenty minutes', () => {
    const charge = breakawayCharge(f(15), f(5));
    expect([charge.needed.toFraction(), charge.minutes?.toFraction()]).toEqual(['15/4', '20']);
  });
});

describe('intervals', () => {
  const packed = (at: string, ...places: readonly string[]) => places.map((place) => ({ step: `hubBearing/pack@${place}`, at }));
  const past = [{ steps: packed('2025-11-25', 'left', 'right'), odometer: '10000' }];
  // manualshive 3771233 p. 71: twelve months or twelve thousand miles, the first of the two
  test.each([
    ['2026-10-01', '15000', 'notYet'],
    ['2026-11-01', '15000', 'soon'],
    ['2026-11-25', '15000', 'due'],
    ['2026-01-01', '22000', 'due'],
  ])('on %s at %s miles: %s', (today, odometer, state) => {
    const bearings = nextServices(past, today, odometer).find(({ row }) => row.id === 'bearings');
    expect([bearings?.state, bearings?.dueAt, bearings?.dueMiles?.toFraction()]).toEqual([state, '2026-11-25', '22000']);
  });

  const dueAt = (jobs: Parameters<typeof nextServices>[0]) =>
    nextServices(jobs, '2026-01-01').find(({ row }) => row.id === 'bearings')?.dueAt;

  test('counts from the packing itself, place by place, whatever the job was called', () => {
    expect(dueAt([{ steps: packed('2025-11-25', 'left') }])).toBeUndefined();
    expect(dueAt([{ steps: packed('2025-11-25', 'left') }, { steps: packed('2025-12-20', 'right') }])).toBe('2026-11-25');
    expect(dueAt([...past, { steps: packed('2025-12-20', 'right') }])).toBe('2026-11-25');
    expect(dueAt([...past, { steps: packed('2025-12-20', 'left', 'right') }])).toBe('2026-12-20');
    expect(dueAt([{ steps: [{ step: 'wheelsOn/torque', at: '2025-11-25' }] }])).toBeUndefined();
  });

  test('a tandem has four hubs', () => {
    const front = packed('2025-11-25', 'front.left', 'front.right');
    expect(dueAt([{ steps: front, axleCount: 'tandem' }])).toBeUndefined();
    const all = [...front, ...packed('2025-12-01', 'rear.left', 'rear.right')];
    expect(dueAt([{ steps: all, axleCount: 'tandem' }])).toBe('2026-11-25');
  });
});

describe('sums', () => {
  // exact factors: 25.4 mm, 0.45359237 kg and g0 give 1.3558179483314004 N m a lbf ft (NIST SP 811)
  test('ninety foot pounds in newton metres', () => {
    const found = workOut({ op: 'convert', a: { value: '90', unit: 'lbf.ft' }, into: 'N.m' });
    expect(found.code === 'sum' && found.result.value.valueOf()).toBeCloseTo(122.023615, 6);
  });

  test.each([
    [{ op: 'add', a: { value: '3/8' }, b: { value: '573/8' } }, '72'],
    [{ op: 'divide', a: { value: '289/4' }, b: { value: '2' } }, '289/8'],
    [{ op: 'subtract', a: { value: '381/4' }, b: { value: '1521/16' } }, '3/16'],
    [{ op: 'add', a: { value: '1', unit: 'in' }, b: { value: '254', unit: 'mm' } }, '11'],
    [{ op: 'divide', a: { value: '10', unit: 'in' }, b: { value: '127', unit: 'mm' } }, '2'],
  ] as const)('%o is %s', (sum, want) => {
    const found = workOut(sum);
    expect(found.code === 'sum' && found.result.value.toFraction()).toBe(want);
  });

  test('a bare number asked for in millimetres was inches, and that is said', () => {
    expect(workOut({ op: 'convert', a: { value: '2' }, into: 'mm' })).toMatchObject({ assumed: 'in', result: { unit: 'mm' } });
  });

  test.each([
    [{ op: 'divide', a: { value: '1' }, b: { value: '0' } }, 'divideByNothing'],
    [{ op: 'add', a: { value: '1', unit: 'in' }, b: { value: '1', unit: 'lb' } }, 'unlikeUnits'],
    [{ op: 'convert', a: { value: '1', unit: 'psi' }, into: 'lb' }, 'unlikeUnits'],
    [{ op: 'multiply', a: { value: '2', unit: 'in' }, b: { value: '3', unit: 'in' } }, 'noSuchUnit'],
  ] as const)('%o: %s', (sum, code) => {
    expect(workOut(sum).code).toBe(code);
  });
});
