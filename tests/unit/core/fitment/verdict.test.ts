import { describe, expect, test } from 'vitest';
import { type Candidate, type CheckId, type FitReading, verdictOf } from '#core';
import { axle, reading, readings, rightAxle, wholeTrailer } from '../../../support/readings.ts';

const whole = readings(wholeTrailer);
const but = (values: Candidate['values']) => axle({ ...rightAxle.values, ...values });
const row = (check: CheckId, candidate: Candidate, on: readonly FitReading[] = whole) =>
  verdictOf(on, candidate).rows.find((one) => one.check === check);
const without = (...fields: string[]) => whole.filter(({ field }) => !fields.includes(field));
const instead = (...given: FitReading[]) => [...without(...given.map(({ field }) => field)), ...given];

test('the right axle fits, with every check made', () => {
  const verdict = verdictOf(whole, rightAxle);
  expect(verdict.result).toBe('fits');
  expect(verdict.rows.filter(({ result }) => result !== 'fits')).toEqual([]);
  expect(verdict.rows.length).toBeGreaterThanOrEqual(20);
  expect(verdict.missing).toEqual([]);
});

// One changed value of the axle, and the row that must speak.
test.each<[Candidate['values'], CheckId, string, string, string?]>([
  [{ springCentre: '465/8' }, 'springCentre', 'fits', 'inside'],
  [{ springCentre: '931/16' }, 'springCentre', 'fitsWithWork', 'workBig', 'moveSeats'],
  [{ springCentre: '57' }, 'springCentre', 'fitsWithWork', 'workSmall', 'moveSeats'],
  [{ springCentre: '911/16' }, 'springCentre', 'doesNotFit', 'tooSmall', 'otherAxle'],
  [{ hubFace: '74' }, 'hubFace', 'fits', 'clearanceDecides'],
  [{ hubFace: '70' }, 'tyreToFrame', 'doesNotFit', 'tooSmall', 'otherAxle'],
  [{ hubFace: '69' }, 'tyreToSpring', 'doesNotFit', 'tooSmall', 'otherAxle'],
  [{ hubFace: '78' }, 'tyreToFender', 'doesNotFit', 'tooBig', 'otherAxle'],
  [{ hubFace: '95' }, 'overallWidth', 'doesNotFit', 'tooBig', 'otherAxle'],
  [{ beamDiameter: '3' }, 'beam', 'fitsWithWork', 'workBig', 'newSeats'],
  [{ beamShape: 'square' }, 'beamShape', 'fitsWithWork', 'different', 'newSeats'],
  [{ springWidth: '2' }, 'seatWidth', 'fitsWithWork', 'workBig', 'newSeats'],
  [{ drop: '2' }, 'drop', 'fitsWithWork', 'workBig', 'slingSwap'],
  [{ drop: '17/8' }, 'bumpRoom', 'doesNotFit', 'tooBig', 'slingSwap'],
  [{ boltPattern: '5x114.3 mm' }, 'boltPattern', 'fits', 'same'],
  [{ boltPattern: '5x19/4' }, 'boltPattern', 'doesNotFit', 'different', 'changeHubs'],
  [{ boltPattern: '6x9/2' }, 'boltPattern', 'doesNotFit', 'different', 'changeHubs'],
  [{ pilotBore: '3.06' }, 'pilotBore', 'doesNotFit', 'tooBig', 'changeHubs'],
  [{ pilotBore: '2.2' }, 'pilotBore', 'fitsWithWork', 'workSmall', 'centringRing'],
  [{ studThread: '9/16-18' }, 'studThread', 'fitsWithWork', 'different', 'otherNuts'],
  [{ brakeType: 'idler' }, 'brakes', 'doesNotFit', 'brakesLost', 'brakedAxle'],
  [{ brakeType: 'idler' }, 'brakeLaw', 'fitsWithWork', 'lawWantsBrakes', 'askTheState'],
  [{ brakeType: 'hydraulic' }, 'brakes', 'fitsWithWork', 'otherBrakes', 'convertBrakes'],
  [{ brakeFlange: '5' }, 'brakeFlange', 'fitsWithWork', 'workBig', 'newBackingPlates'],
  [{ brakeSize: '12x2' }, 'brakeSize', 'fitsWithWork', 'different', 'newBackingPlates'],
  [{ capacity: '3000' }, 'capacity', 'doesNotFit', 'tooSmall', 'otherAxle'],
  [{ capacity: '3200' }, 'capacity', 'fitsWithWork', 'belowOld', 'relabel'],
  [{ capacity: '5200' }, 'tyreRating', 'fitsWithWork', 'workBig', 'strongerTyres'],
])('%o: %s %s, %s', (values, check, result, code, remedy) => {
  const found = row(check, but(values));
  expect(found).toMatchObject({ result, code, ...(remedy ? { remedy } : {}) });
});

test('margins are exact', () => {
  expect(row('springCentre', but({ springCentre: '931/16' }))?.margin?.value.toFraction()).toBe('-1/16');
  expect(row('capacity', rightAxle)?.margin?.value.toFraction()).toBe('420');
  // 2 x 1820 lb of tyre, ST in load range C.
  expect(row('tyreRating', rightAxle)?.margin?.value.toFraction()).toBe('140');
  // 72 3/8 - 58 - 1 3/4 = 12 5/8 between; half 6 5/16; less half of 205 mm and the inch that is wanted; both sides.
  expect(row('tyreToSpring', rightAxle)?.margin?.value.valueOf()).toBeCloseTo(2 * (6.3125 - 205 / 50.8 - 1), 9);
});

describe('what is not known', () => {
  test('an essential check without its value leaves the verdict open and names it', () => {
    const verdict = verdictOf(without('springCentre'), rightAxle);
    expect(verdict.result).toBe('cannotSayYet');
    expect(verdict.missing).toContain('springCentre');
  });
  test('a value only heard is flagged, not left out', () => {
    const verdict = verdictOf(instead(reading('springCentre', '58', { status: 'heard' })), rightAxle);
    expect(verdict).toMatchObject({ result: 'fits', unconfirmed: ['springCentre'] });
  });
  test('a silent card is no fit', () => {
    const { capacity: _gone, ...values } = rightAxle.values;
    const verdict = verdictOf(whole, axle(values));
    expect(verdict.result).toBe('cannotSayYet');
    expect(verdict.rows.find(({ check }) => check === 'capacity')).toMatchObject({ lacking: true, code: 'candidateUnknown' });
  });
  test('no tongue weight: enough for the whole weight fits, less is not known', () => {
    expect(row('capacity', rightAxle, without('tongueWeight'))?.result).toBe('fits');
    expect(row('capacity', but({ capacity: '3200' }), without('tongueWeight'))).toMatchObject({
      result: 'cannotSayYet',
      code: 'tooCoarse',
      missing: ['tongueWeight'],
    });
    expect(row('capacity', but({ capacity: '2400' }), without('tongueWeight'))?.result).toBe('doesNotFit');
  });
  test('no weight at all: as strong as the old axle', () => {
    const bare = without('gvwr', 'tongueWeight');
    expect(row('capacity', rightAxle, bare)?.code).toBe('likeOld');
    expect(row('capacity', but({ capacity: '2000' }), bare)).toMatchObject({ result: 'cannotSayYet', missing: ['gvwr'] });
  });
  test('another hub face with no tyre told cannot be judged', () => {
    expect(row('hubFace', but({ hubFace: '74' }), without('tyreSize'))).toMatchObject({
      result: 'cannotSayYet',
      code: 'clearanceUnknown',
    });
  });
  test('the room measured on the old axle is used', () => {
    const on = instead(reading('tyreClearance', '3/2', { side: 'left' }), reading('tyreClearance', '2', { side: 'right' }));
    const both = [...on, reading('tyreClearance', '2', { side: 'right', id: 'other' })];
    expect(row('tyreClearance', but({ hubFace: '571/8' }), both)).toMatchObject({ result: 'fits' });
    expect(row('tyreClearance', but({ hubFace: '71' }), both)).toMatchObject({ result: 'doesNotFit', code: 'tooSmall' });
  });
  test('a hedge is kept: over 57 may be anything above', () => {
    const over = instead(reading('springCentre', '57', { hedge: 'over' }));
    expect(row('springCentre', rightAxle, over)).toMatchObject({ result: 'cannotSayYet', code: 'tooCoarse' });
    expect(row('springCentre', but({ springCentre: '55' }), over)?.result).toBe('doesNotFit');
    const about = instead(reading('springCentre', '58', { hedge: 'about', resolution: '1/4' }));
    expect(row('springCentre', rightAxle, about)?.code).toBe('tooCoarse');
  });
});

describe('axles that share a load', () => {
  const tandem = instead(reading('axleCount', 'tandem'), reading('gvwr', '7000'), reading('tongueWeight', '700'));
  test('a stronger axle beside a weaker one is named', () => {
    expect(row('tandemCapacity', but({ capacity: '5200' }), tandem)).toMatchObject({
      result: 'fitsWithWork',
      remedy: 'matchPair',
    });
    expect(row('capacity', rightAxle, tandem)?.margin?.value.toFraction()).toBe('350');
  });
  test('an unknown count keeps both readings open', () => {
    const open = tandem.filter(({ field }) => field !== 'axleCount');
    expect(row('capacity', rightAxle, open)).toMatchObject({ result: 'cannotSayYet', missing: ['axleCount'] });
  });
});

describe('bad input is named and the rest goes on', () => {
  test.each<[FitReading, string]>([
    [reading('springCentre', '-58'), 'notPositive'],
    [reading('springCentre', '0'), 'notPositive'],
    [reading('springCentre', '580', { status: 'heard' }), 'outOfBand'],
    [reading('springCentre', 'fifty'), 'notANumber'],
    [reading('springCentre', '1/0'), 'notANumber'],
    [reading('springCentre', '58', { unit: 'lb' }), 'wrongUnit'],
    [reading('boltPattern', '5 on something'), 'unknownPattern'],
    [reading('tyreSize', 'round and black'), 'unknownTyre'],
    [reading('brakeType', 'parachute'), 'notAChoice'],
    [reading('innerBearing', 'QQ999'), 'unknownBearing'],
    [reading('grossWeight', '4000'), 'weightAboveRating'],
    [reading('tongueWeight', '2000'), 'tongueBeyondReason'],
  ])('%o: %s', (bad, code) => {
    const verdict = verdictOf(instead(bad), rightAxle);
    expect(verdict.problems).toContainEqual({ field: bad.field, code, id: bad.id, value: expect.any(String) });
    expect(verdict.rows.filter(({ result }) => result === 'fits').length).toBeGreaterThan(10);
  });
  test('a hub face that is not outside the springs: both are named, neither is used', () => {
    const verdict = verdictOf(instead(reading('hubFace', '58')), rightAxle);
    expect(verdict.problems.map(({ field, code }) => [field, code])).toEqual([
      ['hubFace', 'hubFaceNotAboveSpringCentre'],
      ['springCentre', 'hubFaceNotAboveSpringCentre'],
    ]);
    expect(verdict.result).toBe('cannotSayYet');
  });
  test('an absurd value counts once it is confirmed, and stays named', () => {
    const verdict = verdictOf(instead(reading('springCentre', '105')), rightAxle);
    expect(verdict.problems.map(({ code }) => code)).toContain('outOfBand');
    expect(verdict.problems.map(({ code }) => code)).toContain('hubFaceNotAboveSpringCentre');
  });
});
