// Nut travel, end play, damage, heat and grease against printed values.
import { describe, expect, test } from 'vitest';
import {
  Fraction,
  gradeByPenetration,
  judgeEndPlay,
  judgeHubHeat,
  lockChoices,
  mayMix,
  nameDamage,
  strokesFor,
  threadsPerInch,
  travelOf,
  turnsFor,
} from '#core';
import { bearingDamage, greaseThickeners } from '#data';

const f = (text: string | number) => new Fraction(text);

describe('nut travel', () => {
  // vansairforce.net thread 228993: 16 threads an inch, one flat = 0.0104 in
  test('one flat on sixteen threads is 0.0104 in', () => {
    expect(travelOf({ flats: f(1) }, f(16)).valueOf()).toBeCloseTo(0.0104, 4);
  });

  // one turn moves one pitch
  test.each([
    [12, 0.08333, 0.01389, 0.00694, 0.02083, 0.00521, 4.32, 21.6],
    [14, 0.07143, 0.0119, 0.00595, 0.01786, 0.00446, 5.04, 25.2],
    [16, 0.0625, 0.01042, 0.00521, 0.01563, 0.00391, 5.76, 28.8],
    [18, 0.05556, 0.00926, 0.00463, 0.01389, 0.00347, 6.48, 32.4],
  ])('%d threads an inch', (tpi, turn, sixth, twelfth, quarter, sixteenth, oneThou, fiveThou) => {
    const along = (turns: string) => travelOf({ turns: f(turns) }, f(tpi)).valueOf();
    expect(['1', '1/6', '1/12', '1/4', '1/16'].map((part) => Number(along(part).toFixed(5)))).toEqual([
      turn,
      sixth,
      twelfth,
      quarter,
      sixteenth,
    ]);
    const degrees = (inches: string) => turnsFor(f(inches), f(tpi)).mul(360).valueOf();
    expect([degrees('1/1000'), degrees('5/1000')]).toEqual([expect.closeTo(oneThou, 6), expect.closeTo(fiveThou, 6)]);
  });

  test.each([
    ['1-14', '14'],
    ['1-1/2-12', '12'],
    ['7/8-14', '14'],
    ['M24x1.5', '254/15'],
    ['fourteen', undefined],
    ['1-0', undefined],
  ])('%s has %s threads an inch', (thread, want) => {
    expect(threadsPerInch(thread)?.toFraction()).toBe(want);
  });
});

describe('end play', () => {
  // TMC RP 618: 0.001 to 0.005 in by dial indicator
  test.each([
    ['0', 'endPlayNone', false],
    ['1/1000', 'endPlayWithin', true],
    ['3/1000', 'endPlayWithin', false],
    ['5/1000', 'endPlayWithin', true],
    ['6/1000', 'endPlayHigh', false],
  ])('%s in: %s', (play, code, nearLimit) => {
    expect(judgeEndPlay(f(play))).toMatchObject({ code, nearLimit });
  });

  // manualshive 900C p. 64 (0.001-0.010) and malone p. 21 (0.001-0.007)
  test('six thousandths is loose by RP 618 and allowed by two others, which are named', () => {
    expect(judgeEndPlay(f('6/1000')).allowedBy.map(({ row }) => row)).toEqual(['lowBed', 'light']);
  });

  test("the maker's limits stand before the published ones", () => {
    expect(judgeEndPlay(f('8/1000'), { low: f('5/1000'), high: f('10/1000') }).code).toBe('endPlayWithin');
    expect(judgeEndPlay(f(0), { low: f(0), high: f('2/1000') }).code).toBe('endPlayWithin');
  });

  // on 1-14 with one cotter hole a slot (0.0119 in) is wider than the whole window
  test('a slot tighter from eight thousandths leaves none, a slot looser is far out', () => {
    const choices = lockChoices(f('8/1000'), f(14), 6);
    expect(choices.map(({ move, endPlay, verdict }) => [move, endPlay.valueOf().toFixed(4), verdict])).toEqual([
      ['tighter', '0.0000', 'endPlayNone'],
      ['stay', '0.0080', 'endPlayHigh'],
      ['looser', '0.0199', 'endPlayHigh'],
    ]);
  });
});

describe('bearing damage', () => {
  // ISO 15243:2017 clauses: 5.1 fatigue, 5.2 wear, 5.3 corrosion, 5.4 electrical, 5.5 plastic, 5.6 fracture; shop words: common practice
  test.each([
    ['inner cone is spalled', '5.1', 'no'],
    ['scratched along the track', '5.2', 'look'],
    ['rollers galled at the ends', '5.2', 'no'],
    ['rusty and water stained', '5.3', 'no'],
    ['false brinelling from standing', '5.3', 'no'],
    ['brinelling at every roller', '5.5', 'no'],
    ['washboard all round', '5.4', 'no'],
    ['cup is cracked', '5.6', 'no'],
    ['gone blue', '5.2', 'no'],
    ['brown stain on the race', '5.3', 'look'],
    ['the cone slips round on the spindle', '5.3', 'look'],
  ])('%s: ISO 15243 %s, reuse %s', (words, iso, reuse) => {
    expect(nameDamage(words)).toMatchObject({ code: 'damageNamed', found: [{ iso, reuse }] });
  });

  test('false brinelling is not read as brinelling', () => {
    const named = nameDamage('false brinelling');
    expect(named.code === 'damageNamed' && named.found.map(({ id }) => id)).toEqual(['falseBrinell']);
  });

  // signs of a failing bearing: TM 9-2815-220-24; a sign has no class until the bearing is looked at
  test('rough or noisy says look, and claims no class', () => {
    const named = nameDamage('front left bearing feels rough and noisy');
    expect(named.code === 'damageNamed' && named.found.map(({ id, reuse, iso }) => [id, reuse, iso])).toEqual([
      ['rough', 'look', undefined],
    ]);
  });

  test.each(['no pitting and no rust', 'smooth, not rough', "isn't blued"])('%s: what is denied is not there', (words) => {
    expect(nameDamage(words).code).toBe('damageUnknown');
  });

  test('what is not damage is not named, and what could be said is', () => {
    expect(nameDamage('clean and bright')).toEqual({ code: 'damageUnknown', known: bearingDamage.map(({ said }) => said[0]) });
  });
});

describe('hub heat', () => {
  const hubs = (...degrees: number[]) => degrees.map((one, at) => ({ hub: String(at), temperature: f(one) }));
  // forum.charlestonfishing.com: three at 110 to 120 F and one at 140 worth a look; truckinginfo.com/151470: 225 and 250 F
  test.each([
    [[110, 115, 120, 140], 'hubApart'],
    [[110, 112], 'hubsAlike'],
    [[230, 228], 'hubHot'],
    [[260, 140], 'hubStop'],
    [[120], 'hubAlone'],
  ])('%o: %s', (degrees, code) => {
    expect(judgeHubHeat(hubs(...degrees), f(70))).toMatchObject({ code });
  });

  // the same figures, the rise carried to air of 100 F (common practice, no source)
  test.each([
    [[180, 175], 70, 'hubsAlike'],
    [[180, 175], 40, 'hubRise'],
    [[120, 118], 90, 'hubsAlike'],
    [[180], 40, 'hubRise'],
    [[230, 228], 40, 'hubHot'],
    [[220, 215], 110, 'hubsAlike'],
  ])('%o in air of %d: %s', (degrees, air, code) => {
    expect(judgeHubHeat(hubs(...degrees), f(air))).toMatchObject({ code });
  });

  test('the rise over the air is of the hottest', () => {
    expect(judgeHubHeat(hubs(110, 140), f(70))?.overAmbient?.valueOf()).toBe(70);
  });
});

describe('grease', () => {
  // Bureau of Reclamation FIST 2-4 (11/90)
  test.each([
    ['lithium', 'lithium complex', 'mixes'],
    ['lithium', 'calcium', 'mixesBorderline'],
    ['lithium', 'polyurea', 'mixesNot'],
    ['lithium complex', 'aluminium complex', 'mixes'],
    ['clay', 'clay', 'mixesBorderline'],
  ])('%s with %s: %s', (one, other, code) => {
    expect(mayMix(one, other).code).toBe(code);
  });

  test('the chart is the same both ways, and sodium meets nothing but itself', () => {
    for (const [row, one] of greaseThickeners.entries()) {
      for (const [column, other] of greaseThickeners.entries()) expect(one.mixes[column]).toBe(other.mixes[row]);
    }
    expect(greaseThickeners[0]?.mixes).toEqual(['C', ...Array.from({ length: 8 }, () => 'I')]);
  });

  // NLGI bands, ASTM D217 (realservices.com): 300 lies between grades 1 and 2
  test.each([
    ['265', '2'],
    ['295', '2'],
    ['300', undefined],
    ['310', '1'],
    ['475', '000'],
  ])('penetration %s: grade %s', (penetration, grade) => {
    expect(gradeByPenetration(f(penetration))).toBe(grade);
  });

  // 14 oz cartridge, 396.9 g; machinerylubrication.com/Read/206: 1 to 3 g a stroke
  test.each([
    ['396.9', '1', 397],
    ['396.9', '3', 133],
    ['28.349523125', '1.28', 23],
  ])('%s g at %s g a stroke: %d whole strokes', (grams, perStroke, want) => {
    expect(strokesFor(f(grams), f(perStroke))).toBe(want);
  });

  test('a gun that gives nothing has no count', () => {
    expect(strokesFor(f(10), f(0))).toBeUndefined();
  });
});
