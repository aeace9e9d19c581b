// Laws that hold for any trailer and any axle, whatever the numbers.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Candidate,
  clearancesAt,
  type FitReading,
  type FitResult,
  Fraction,
  judge,
  needsOf,
  rank,
  readTrailer,
  rulesOf,
  tableRules,
  verdictOf,
} from '#core';
import { type FieldId, fieldOf, fitRules } from '#data';
import { axle, reading, wholeTrailer } from '../../support/readings.ts';

const runs = { numRuns: 80 };
const eighth = (low: number, high: number) =>
  fc.integer({ min: low * 8, max: high * 8 }).map((n) => new Fraction(n, 8).toFraction());
const whole = (low: number, high: number) => fc.integer({ min: low, max: high }).map(String);

const ofTrailer: Partial<Record<FieldId, fc.Arbitrary<string>>> = {
  hubFace: eighth(69, 76),
  springCentre: eighth(56, 60),
  beamDiameter: fc.constantFrom('2', '19/8', '3'),
  beamShape: fc.constantFrom('round', 'square'),
  drop: fc.constantFrom('0', '2', '4'),
  bumpClearance: eighth(2, 7),
  boltPattern: fc.constantFrom('5x9/2', '5x19/4', '6x11/2'),
  pilotBore: fc.constantFrom('2.38', '2.4', '3.06'),
  studThread: fc.constantFrom('1/2-20', '9/16-18'),
  brakeType: fc.constantFrom('idler', 'electric', 'hydraulic'),
  capacity: fc.constantFrom('2000', '3500', '5200'),
  gvwr: whole(1500, 8000),
  tongueWeight: whole(100, 700),
  axleCount: fc.constantFrom('single', 'tandem', 'triple'),
  tyreSize: fc.constantFrom('ST205/75R15 C', 'ST205/75R15', '4.80-12 B', 'P215/65R15 95H'),
  wheelOffset: whole(-20, 20),
  springWidth: fc.constantFrom('7/4', '2'),
  frameWidth: eighth(56, 64),
  fenderWidth: eighth(82, 92),
  tyreClearance: eighth(1, 4),
  towWeight: whole(2000, 9000),
  axleToFrame: eighth(2, 8),
  slung: fc.constantFrom('overSlung', 'underSlung'),
  frontArm: eighth(2, 4),
  rearArm: eighth(2, 4),
  toeFront: eighth(60, 61),
  toeRear: eighth(60, 61),
};

/** Any part of the trailer known, any of it only heard. */
const trailer: fc.Arbitrary<FitReading[]> = fc
  .record(ofTrailer as Record<string, fc.Arbitrary<string>>, { requiredKeys: [] })
  .chain((values) => {
    const fields = Object.keys(values) as FieldId[];
    const trust = fc.array(fc.constantFrom('heard' as const, 'confirmed' as const), {
      minLength: fields.length,
      maxLength: fields.length,
    });
    return trust.map((status) =>
      fields.map((field, at) => reading(field, String(values[field]), { status: status[at] ?? 'confirmed' })),
    );
  });

const onAxle: FieldId[] = [
  'hubFace',
  'springCentre',
  'beamDiameter',
  'beamShape',
  'drop',
  'boltPattern',
  'pilotBore',
  'studThread',
  'brakeType',
  'capacity',
  'springWidth',
];
const candidate: fc.Arbitrary<Candidate> = fc
  .record(Object.fromEntries(onAxle.map((field) => [field, ofTrailer[field] ?? fc.constant('1')])), { requiredKeys: [] })
  .map((values) => axle(values as Candidate['values']));

const rowsOf = (readings: readonly FitReading[], one: Candidate) => verdictOf(readings, one).rows;
const worse = (result: FitResult) => ({ fits: 0, fitsWithWork: 1, cannotSayYet: 1, doesNotFit: 2 })[result];

test('inches or millimetres, pounds or kilograms: the same verdict', () => {
  fc.assert(
    fc.property(trailer, candidate, (readings, one) => {
      const metric = readings.map((given) => {
        const { unit, choices } = fieldOf(given.field);
        if (choices || given.field === 'boltPattern') return given;
        if (unit === 'in') return { ...given, value: new Fraction(given.value).mul('25.4').toFraction(), unit: 'mm' as const };
        if (unit === 'lb')
          return { ...given, value: new Fraction(given.value).mul('0.45359237').toFraction(), unit: 'kg' as const };
        return given;
      });
      expect(rowsOf(metric, one)).toEqual(rowsOf(readings, one));
    }),
    runs,
  );
});

test('left and right exchanged: the same verdict', () => {
  fc.assert(
    fc.property(
      trailer,
      candidate,
      eighth(1, 4),
      eighth(1, 4),
      eighth(35, 37),
      eighth(35, 37),
      (readings, one, left, right, near, far) => {
        const rest = readings.filter(({ field }) => field !== 'tyreClearance' && field !== 'hubFace');
        const sided = (a: string, b: string, c: string, d: string) => [
          ...rest,
          reading('halfFace', c, { side: 'left', id: 'hl' }),
          reading('halfFace', d, { side: 'right', id: 'hr' }),
          reading('tyreClearance', a, { side: 'left', id: 'l' }),
          reading('tyreClearance', b, { side: 'right', id: 'r' }),
        ];
        const codes = (all: FitReading[]) => verdictOf(all, one).rows.map(({ check, result, code }) => [check, result, code]);
        expect(codes(sided(left, right, near, far))).toEqual(codes(sided(right, left, far, near)));
      },
    ),
    runs,
  );
});

test('a wider tolerance never turns a fit into no fit', () => {
  const wider = (by: number) =>
    rulesOf(
      fitRules.map((rule) => {
        const limits = [
          'springCentreTolerance',
          'springCentreWork',
          'hubFaceTolerance',
          'beamTolerance',
          'dropTolerance',
          'circleTolerance',
        ];
        return limits.includes(rule.id) ? { ...rule, value: new Fraction(rule.value).mul(1 + by).toFraction() } : rule;
      }),
    );
  fc.assert(
    fc.property(trailer, candidate, fc.integer({ min: 0, max: 5 }), (readings, one, by) => {
      expect(worse(verdictOf(readings, one, wider(by)).result)).toBeLessThanOrEqual(worse(verdictOf(readings, one).result));
    }),
    runs,
  );
});

test('more load never improves a margin', () => {
  fc.assert(
    fc.property(trailer, candidate, whole(1500, 8000), whole(1, 2000), (readings, one, weight, more) => {
      const rest = readings.filter(({ field }) => field !== 'gvwr' && field !== 'tongueWeight');
      const margin = (gross: string) =>
        rowsOf([...rest, reading('gvwr', gross)], one).find(({ check }) => check === 'capacity')?.margin?.value;
      const [light, heavy] = [margin(weight), margin(new Fraction(weight).add(more).toFraction())];
      if (light && heavy) expect(heavy.lte(light)).toBe(true);
    }),
    runs,
  );
});

test('one more value never turns "does not fit" into anything else', () => {
  fc.assert(
    fc.property(trailer, candidate, fc.nat(), (readings, one, pick) => {
      fc.pre(readings.length > 0);
      const fewer = readings.filter((_, at) => at !== pick % readings.length);
      // A reading that makes two others contradict each other, or cannot be right, is a changed value, not a further one.
      fc.pre(needsOf(readings).trailer.problems.length === 0);
      if (verdictOf(fewer, one).result === 'doesNotFit') expect(verdictOf(readings, one).result).toBe('doesNotFit');
    }),
    { numRuns: 400 },
  );
});

describe('further outside its window is never better', () => {
  test.each(['springCentre', 'hubFace', 'beamDiameter', 'drop', 'capacity'] as const)('%s', (field) => {
    fc.assert(
      fc.property(trailer, eighth(0, 12), eighth(0, 12), fc.boolean(), (readings, near, step, up) => {
        const needs = needsOf(readings);
        const middle = readings.find((given) => given.field === field)?.value;
        fc.pre(middle !== undefined);
        const sign = field === 'capacity' ? -1 : up ? 1 : -1;
        const scale = field === 'capacity' ? 100 : 1;
        const at = (off: string | Fraction) => new Fraction(middle ?? '0').add(new Fraction(off).mul(sign * scale)).toFraction();
        for (const need of needs.needs.filter(
          (each) => each.field === field && each.check === (field === 'beamDiameter' ? 'beam' : field),
        )) {
          const [nearer, beyond] = [at(near), at(new Fraction(near).add(step))];
          const [closer, further] = [need.judge(nearer), need.judge(beyond)];
          if (closer.result !== 'fits' && closer.result !== 'cannotSayYet')
            expect(worse(further.result)).toBeGreaterThanOrEqual(worse(closer.result));
          const [one, other] = [need.margin?.(nearer)?.value, need.margin?.(beyond)?.value];
          if (one && other && one.lt(0)) expect(other.lte(one)).toBe(true);
        }
      }),
      runs,
    );
  });
});

test('at a limit nothing is rounded: a hair beyond is beyond, however small the hair', () => {
  const hair = fc.integer({ min: 1, max: 400 }).map((places) => new Fraction(1n, 10n ** BigInt(places)));
  fc.assert(
    fc.property(eighth(56, 60), hair, fc.boolean(), (centre, by, up) => {
      const [need] = needsOf([reading('springCentre', centre)]).needs.filter(({ check }) => check === 'springCentre');
      const edge = new Fraction(centre).add(new Fraction(up ? 1 : -1, 8));
      const at = (value: Fraction) => need?.judge(value.toFraction()).code;
      expect(at(edge)).toBe('inside');
      expect(at(up ? edge.sub(by.div(10)) : edge.add(by.div(10)))).toBe('inside');
      expect(at(up ? edge.add(by) : edge.sub(by))).toBe(up ? 'workBig' : 'workSmall');
    }),
    runs,
  );
});

test('the ranking and the verdict agree on every axle', () => {
  fc.assert(
    fc.property(trailer, fc.array(candidate, { maxLength: 12 }), (readings, axles) => {
      const needs = needsOf(readings);
      const named = axles.map((one, at) => ({ ...one, id: `a${at}` }));
      const { best, counts } = rank(needs, named, named.length);
      for (const { candidate: each, result } of best) expect(result).toBe(judge(needs, each).result);
      expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(named.length);
    }),
    runs,
  );
});

test('a value only heard is named as unconfirmed wherever the verdict rests on it', () => {
  fc.assert(
    fc.property(trailer, candidate, (readings, one) => {
      const { rests, unconfirmed } = verdictOf(readings, one);
      const heard = new Set(readings.filter(({ status }) => status === 'heard').map(({ id }) => id));
      expect(new Set(unconfirmed)).toEqual(new Set(rests.filter((id) => heard.has(id))));
    }),
    runs,
  );
});

test('any text in any field: never thrown, always named or used', () => {
  fc.assert(
    fc.property(fc.constantFrom(...(Object.keys(wholeTrailer) as FieldId[])), fc.string(), candidate, (field, text, one) => {
      const given = reading(field, text);
      const { numbers, tokens, problems } = readTrailer([given]);
      expect(numbers.has(field) || tokens.has(field) || problems.some((problem) => problem.id === field)).toBe(true);
      expect(verdictOf([given], one).result).toMatch(/^(cannotSayYet|doesNotFit)$/);
    }),
    runs,
  );
});

test('a wider axle gives more room inside and less outside, by half on each side', () => {
  fc.assert(
    fc.property(eighth(69, 76), eighth(0, 4), (face, more) => {
      const on = readTrailer(Object.entries(wholeTrailer).map(([field, value]) => reading(field as FieldId, value)));
      const at = (value: Fraction) => clearancesAt(on, { low: value, high: value }, tableRules);
      const [now, next] = [at(new Fraction(face)), at(new Fraction(face).add(more))];
      const half = new Fraction(more).div(2);
      expect(next.toSpring?.value.sub(now.toSpring?.value ?? 0).equals(half)).toBe(true);
      expect(now.toFender?.value.sub(next.toFender?.value ?? 0).equals(half)).toBe(true);
      expect(next.overall?.value.sub(now.overall?.value ?? 0).equals(more)).toBe(true);
    }),
    runs,
  );
});
