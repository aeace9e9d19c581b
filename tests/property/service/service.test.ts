// Properties of the service arithmetic.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  boltTorque,
  convert,
  Fraction,
  judgeSquareness,
  lockPositions,
  standingOf,
  thirds,
  thrustAngle,
  travelOf,
  turnsFor,
  turnsOf,
  wheelNutTorque,
  workOut,
  wrenchSetting,
} from '#core';
import { threads, units } from '#data';

const sixteenths = (low: number, high: number) => fc.integer({ min: low * 16, max: high * 16 }).map((n) => new Fraction(n, 16));
const inchThreads = threads.filter(({ tpi }) => tpi);
const torqueOf = (thread: string, grade: string, condition?: string) => {
  const found = boltTorque({ thread, grade, ...(condition === undefined ? {} : { condition }) });
  return found.code === 'boltTorque' ? found.torque : undefined;
};
/** In N m, so that inch and metric threads compare. */
const newtonMetres = (torque: ReturnType<typeof torqueOf>) => (torque ? convert(torque, 'N.m').value : undefined);

test('torque grows with grade', () => {
  fc.assert(
    fc.property(fc.constantFrom(...threads), ({ id, unit }) => {
      const grades = unit === 'in' ? ['2', '5', '8'] : ['8.8', '10.9'];
      const torques = grades.flatMap((grade) => newtonMetres(torqueOf(id, grade)) ?? []);
      expect(torques.slice(1).every((one, at) => one.compare(torques[at] ?? 0) > 0)).toBe(true);
    }),
  );
});

test('torque grows with size at one grade, and falls as the thread is oiled', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...inchThreads),
      fc.constantFrom(...inchThreads),
      fc.constantFrom('5', '8'),
      (one, other, grade) => {
        fc.pre(new Fraction(one.diameter).compare(other.diameter) < 0);
        // a grade 5 bolt over one inch is made of weaker steel (SAE J429), so sizes compare within one row of the table
        fc.pre(grade === '8' || new Fraction(other.diameter).compare(1) <= 0);
        const [small, large] = [torqueOf(one.id, grade), torqueOf(other.id, grade)];
        expect(small && large && small.value.compare(large.value)).toBeLessThan(0);
        const [dry, oiled, anti] = ['dry', 'oiled', 'antiSeize'].map((state) => torqueOf(one.id, grade, state)?.value);
        expect(dry && oiled && anti && [dry.compare(oiled), oiled.compare(anti)]).toEqual([1, 1]);
      },
    ),
  );
});

test('end play from rotation is the inverse of rotation from end play', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 720 }), fc.integer({ min: 4, max: 40 }), (degrees, perInch) => {
      const tpi = new Fraction(perInch);
      const rotation = { degrees: new Fraction(degrees) };
      expect(turnsFor(travelOf(rotation, tpi), tpi).equals(turnsOf(rotation))).toBe(true);
      expect(
        travelOf({ slots: new Fraction(1), positions: lockPositions.oneHole }, tpi).equals(
          travelOf({ flats: new Fraction(1) }, tpi),
        ),
      ).toBe(true);
    }),
  );
});

test('correcting an axle by the computed move brings the diagonals within what the tape resolves', () => {
  fc.assert(
    fc.property(sixteenths(80, 300), fc.integer({ min: -32, max: 32 }), sixteenths(48, 96), (right, apart, spread) => {
      const left = right.add(new Fraction(apart, 16));
      const found = judgeSquareness({ left, right, spread });
      const move = found.code === 'impossibleDiagonals' ? undefined : found.move;
      const shift = (side: 'left' | 'right', length: Fraction) => {
        if (!move) return length;
        return move.side === side ? length.sub(move.eachEnd) : length.add(move.eachEnd);
      };
      const after = [shift('left', left), shift('right', right)] as const;
      expect(Math.abs(thrustAngle(after[0], after[1], spread))).toBeLessThan(1e-9);
      expect(judgeSquareness({ left: after[0], right: after[1], spread }).code).toBe('square');
      const oneEnd = move ? { [move.side]: (move.side === 'left' ? left : right).sub(move.oneEnd) } : {};
      expect(judgeSquareness({ left, right, spread, ...oneEnd }).code).toBe('square');
    }),
  );
});

test('left and right are mirror images', () => {
  fc.assert(
    fc.property(sixteenths(80, 300), sixteenths(80, 300), (left, right) => {
      const [one, other] = [judgeSquareness({ left, right }), judgeSquareness({ left: right, right: left })];
      expect(one.difference.equals(other.difference)).toBe(true);
      expect(one.code).toBe(other.code);
      if (one.code !== 'impossibleDiagonals' && other.code !== 'impossibleDiagonals' && one.move) {
        expect(other.move?.side).toBe(one.move.side === 'left' ? 'right' : 'left');
      }
    }),
  );
});

test('a wrench with an extension is always set lower than wanted, and what it is set to gives the nut what was wanted', () => {
  fc.assert(
    fc.property(fc.integer({ min: 10, max: 400 }), sixteenths(6, 48), sixteenths(1, 24), (torque, length, extension) => {
      const found = wrenchSetting({ value: new Fraction(torque), unit: 'lbf.ft' }, length, extension);
      if (found.code !== 'wrenchSetting') throw new TypeError(found.code);
      expect(found.set.value.compare(torque)).toBeLessThan(0);
      expect(found.set.value.mul(length.add(extension)).div(length).equals(torque)).toBe(true);
    }),
  );
});

test('a verdict does not depend on the unit it was called out in', () => {
  const foot = (value: Fraction) => ({ value, unit: 'lbf.ft' }) as const;
  fc.assert(
    fc.property(fc.integer({ min: 10, max: 400 }), (torque) => {
      const { ranges } = wheelNutTorque({ thread: '1/2-20', wheelDiameter: '15', wheelType: 'steel' });
      const said = foot(new Fraction(torque));
      const [inFeet, inMetric] = [standingOf(said, ranges), standingOf(convert(said, 'N.m'), ranges)];
      expect(inMetric).toBe(inFeet);
    }),
  );
});

test('stages rise to the final and never pass it', () => {
  fc.assert(
    fc.property(fc.integer({ min: 15, max: 600 }), (final) => {
      const stages = thirds(new Fraction(final), new Fraction(final)).map(({ high }) => high);
      expect(stages.every((stage, at) => at === 0 || stage.compare(stages[at - 1] ?? 0) > 0)).toBe(true);
      expect(stages.at(-1)?.equals(final)).toBe(true);
    }),
  );
});

test('a conversion there and back is the same number', () => {
  const pairs = units.flatMap((one) =>
    units.filter((other) => other.dimension === one.dimension).map((other) => [one.id, other.id] as const),
  );
  fc.assert(
    fc.property(
      fc.constantFrom(...pairs),
      fc.integer({ min: -9999, max: 9999 }),
      fc.integer({ min: 1, max: 64 }),
      ([from, into], over, under) => {
        const value = new Fraction(over, under).toFraction();
        const there = workOut({ op: 'convert', a: { value, unit: from }, into });
        if (there.code !== 'sum' || there.assumed) return;
        const back = workOut({ op: 'convert', a: { value: there.result.value.toFraction(), unit: into }, into: from });
        if (into === '1') return;
        expect(back.code === 'sum' && back.result.value.toFraction()).toBe(value);
      },
    ),
  );
});

test('adding and taking away undo each other', () => {
  const amount = fc
    .tuple(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 1, max: 64 }))
    .map(([n, d]) => new Fraction(n, d).toFraction());
  fc.assert(
    fc.property(amount, amount, (a, b) => {
      const sum = workOut({ op: 'add', a: { value: a, unit: 'in' }, b: { value: b, unit: 'in' } });
      const back =
        sum.code === 'sum'
          ? workOut({ op: 'subtract', a: { value: sum.result.value.toFraction(), unit: 'in' }, b: { value: b } })
          : sum;
      expect(back.code === 'sum' && back.result.value.toFraction()).toBe(a);
    }),
  );
});
