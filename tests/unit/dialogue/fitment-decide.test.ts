// Questions of the decision: the brake rule, what is nearest, what to measure again, how it will sit, whether it is bent.
import { describe, expect, test } from 'vitest';
import { demoStock } from '#data';
import { ask, bay, jobOf, noted } from '../../support/ask.ts';
import { wholeTrailer } from '../../support/readings.ts';

const stocked = { ...bay, stock: demoStock };
const chosen = (id: string) => {
  const axle = demoStock.find((row) => row.id === id);
  if (!axle) throw new TypeError(`no ${id} in the rack`);
  return { candidate: { stock: id, title: axle.title, values: axle.values as Record<string, string> } };
};

describe('does it need brakes (49 CFR 393.42(b)(3), (4))', () => {
  const light = { gvwr: '2800', tongueWeight: '320' };
  test.each([
    ['nothing known', {}, 'unknown', ['gvwr']],
    ['over 3,000 lb', { gvwr: '3500' }, 'tooHeavy', []],
    ['light, the towing vehicle not told', light, 'untold', ['towWeight']],
    ['2,480 on the axles behind 6,200', { ...light, towWeight: '6200' }, 'exempt', []],
    ['2,480 on the axles behind 6,199', { ...light, towWeight: '6199' }, 'overShare', []],
    ['no tongue weight: it may be either', { gvwr: '2800', towWeight: '6200' }, 'untold', ['tongueWeight']],
  ])('%s', (_name, values, code, missing) => {
    const told = ask('does it need brakes', jobOf(values));
    expect([told.code, told.missing]).toEqual([`brakeLaw.${code}`, missing]);
    expect(told.caution).toMatch(/State and local rules may be stricter/);
    expect(told.sources).toContain('49 CFR 393.42(b)(3) and (4)');
  });
  test('the share is told, and what it rests on', () => {
    const told = ask('can it go without brakes', jobOf({ ...light, towWeight: '6500' }));
    // 2,480 of 6,500 is 38.15 percent.
    expect(told.speak).toMatch(/^Not by the federal rule.*thirty-eight point two percent/);
    expect(told.rests).toEqual(['gvwr', 'tongueWeight', 'towWeight']);
  });
  test('a weight in the question is another trailer', () => {
    const told = ask('does a twenty eight hundred pound trailer need brakes', jobOf({ gvwr: '7000' }));
    expect([told.code, told.rests]).toEqual(['brakeLaw.untold', []]);
  });
  test.each([
    ['10500', 'surgeBrakes.allowed'],
    ['10501', 'surgeBrakes.notAllowed'],
  ])('surge brakes, %s lb behind 6,000 (49 CFR 393.48(d))', (gvwr, code) => {
    expect(ask('can I use surge brakes', jobOf({ gvwr, towRating: '6000' })).code).toBe(code);
    expect(ask('can I use surge brakes', jobOf({ gvwr })).missing).toEqual(['towRating']);
  });
  test('a verdict on an axle without brakes says the share', () => {
    const job = jobOf({ ...wholeTrailer, ...light, brakeType: 'idler', towWeight: '6500' }, chosen('TB-3501'));
    expect(ask('does it fit', job, stocked).speak).toMatch(/thirty-eight point two percent.*may go without; state and local/);
    const heavier = jobOf({ ...wholeTrailer, ...light, brakeType: 'idler', towWeight: '5000' }, chosen('TB-3501'));
    expect(ask('does it fit', heavier, stocked).speak).toMatch(/^Fits with work.*over the forty percent/);
  });
});

describe('an idler asked about', () => {
  // 49 CFR 393.48(a): a brake that is fitted must work; the axle chosen before is not the one asked about.
  test.each(['can I replace it with an idler', 'will an idler fit', 'what about a thirty-five hundred pound idler'])(
    '%s',
    (text) => {
      const told = ask(text, jobOf(wholeTrailer, chosen('TB-3502')), stocked);
      expect(told.speak).toMatch(/^Does not fit\. .*idler axle.*brakes would be lost/);
      expect(told.sources.join()).toContain('49 CFR 393.48(a)');
    },
  );
  test('not the idler that is to be replaced', () => {
    const job = jobOf({ ...wholeTrailer, brakeType: 'idler' }, chosen('TB-3502'));
    expect(ask('will it fit in place of the idler', job, stocked).speak).toMatch(/electric-brake axle/);
  });
});

describe('what is nearest', () => {
  test('what fits is counted, then what work would make fit, each with its work', () => {
    const told = ask('what is nearest', jobOf({ ...wholeTrailer, boltPattern: '5x5' }), stocked);
    expect(told.code).toBe('nearest');
    expect(told.show).toMatch(/five on five.*would take|1 fit as they are/);
    const one = ask('what could be made to fit', jobOf(wholeTrailer), stocked);
    expect(one.show).toMatch(/five on five, rack 3, upper: would take hubs with the right pattern/);
    expect(one.show).not.toMatch(/idler axle, rack 2, lower: would take/);
  });
  test('axles named by their place: each with what it takes', () => {
    const told = ask('what would it take to make rack four fit', jobOf({ ...wholeTrailer, drop: '4' }), stocked);
    expect(told.code).toBe('making');
    const lines = told.show.split('\n').filter((line) => /, rack 4, /.test(line));
    expect(lines).toHaveLength(3);
    expect(told.show).toMatch(/square beam, rack 4, floor: would take seats, tie plates and U-bolts/);
    const single = ask('what would it take to make rack three upper fit', jobOf(wholeTrailer), stocked);
    expect(single.show).toMatch(/^3,500 pound electric-brake axle, five on five/);
  });
  test('an axle that takes the brakes away cannot be made to fit', () => {
    const told = ask('what would it take to make it fit', jobOf(wholeTrailer, chosen('TB-3501')), stocked);
    expect([told.code, told.show.split('\n')[0]]).toEqual(['makingNone', expect.stringMatching(/cannot be made to fit; brakes/)]);
  });
  test('a rack named in "does it fit" is the axle asked about', () => {
    const told = ask('does rack three upper fit', jobOf(wholeTrailer), stocked);
    expect(told.show).toMatch(/^Does not fit: .*five on five \(TB-3511\)/);
    expect(ask("what's on rack three", jobOf(wholeTrailer), stocked).show).not.toContain('rack 2');
  });
});

describe('which measurement to take again', () => {
  const edge = {
    candidate: { stock: 'X', title: 'edge axle', values: { ...chosen('TB-3502').candidate.values, springCentre: '465/8' } },
  };
  test('the one that decides, at both values', () => {
    const told = ask('which measurement should I take again', jobOf(wholeTrailer, edge));
    expect([told.code, told.rests]).toEqual(['again', ['springCentre']]);
    expect(told.show).toMatch(/Spring centre: 58 in fits, 57 15\/16 in fits with work/);
  });
  test('none where no single mark changes it', () => {
    expect(ask('what should I measure again', jobOf(wholeTrailer, chosen('TB-3502'))).code).toBe('againNone');
    expect(ask('what should I measure again', jobOf(wholeTrailer)).code).toBe('againUnknown');
  });
  test('a metric reading is told in millimetres', () => {
    const { springCentre: _inches, ...rest } = wholeTrailer;
    const values = Object.entries(rest).map(([field, value]) => noted(field as 'hubFace', value));
    const told = ask('what should I measure again', jobOf([...values, noted('springCentre', '1473.2', { unit: 'mm' })], edge));
    expect(told.show).toMatch(/1473\.2 mm fits/);
  });
});

describe('how it will sit', () => {
  const stack = { beamDiameter: '19/8', springPack: '3/2', drop: '0', bumpClearance: '5' };
  test('springs moved over the axle: beam, pack and both seats', () => {
    const told = ask('what if I flip the axle', jobOf({ ...stack, slung: 'underSlung' }));
    // 2 3/8 + 1 1/2 + 2 x 3/16 = 4 1/4.
    expect(told.show).toMatch(/^Springs moved on top of the axle raise it 4 1\/4 in/);
    expect(ask('what if I flip the axle', jobOf({ ...stack, slung: 'overSlung' })).show).toMatch(/lower it 4 1\/4 in/);
    expect(ask('what if I flip the axle', jobOf({ drop: '0' })).missing).toEqual(['slung', 'springPack', 'beamDiameter']);
  });
  test('a drop axle lowers it by its drop, and full bump leaves that much less', () => {
    const told = ask('how much lower does it sit with a four inch drop axle', jobOf(stack));
    expect(told.show).toMatch(/^It sits 4 in lower by the drop/);
    expect(told.show).toMatch(/Above the tyre 1 in at rest, nothing at full bump/);
  });
  test('axle to frame at full bump; a thicker beam above its springs comes nearer', () => {
    const under = { ...stack, axleToFrame: '5', slung: 'underSlung' };
    expect(ask('how much room at full bump', jobOf(under)).show).toMatch(/Axle to frame 5 in at rest, 2 in at full bump/);
    const thick = { candidate: { stock: 'X', title: 'thick', values: { beamDiameter: '3' } } };
    expect(ask('how much room at full bump', jobOf(under, thick)).show).toMatch(/Axle to frame 4 3\/8 in at rest/);
    expect(ask('how much room at full bump', jobOf({ ...under, slung: 'overSlung' }, thick)).show).toMatch(/Axle to frame 5 in/);
  });
});

describe('is the axle bent', () => {
  const sided = (field: 'halfFace' | 'camberTop' | 'camberBottom', left: string, right: string) => [
    noted(field, left, { side: 'left', id: `${field}L` }),
    noted(field, right, { side: 'right', id: `${field}R` }),
  ];
  test('halves apart: where the beam stands', () => {
    const told = ask('is the axle bent', jobOf(sided('halfFace', '73/2', '287/8')));
    expect([told.code, told.rests]).toEqual(['straight.bent', ['halfFaceL', 'halfFaceR']]);
    expect(told.show).toMatch(/stands 5\/16 in to the left, 72 3\/8 in in all/);
    expect(ask('is the beam bent', jobOf(sided('halfFace', '145/4', '289/8'))).code).toBe('straight.good');
    expect(ask('is the axle straight').missing).toContain('halfFace');
  });
  test('camber by a plumb line: lean, over the rim, in degrees', () => {
    const leaning = [...sided('camberTop', '3', '3'), ...sided('camberBottom', '23/8', '25/8'), noted('wheelDiameter', '15')];
    const told = ask('what is the camber', jobOf(leaning));
    // asin(0.125 / 15) is 0.4775 degrees.
    expect(told.show).toMatch(/^Left wheel leans in at the top, 1\/8 in over the rim, 0\.48°\nRight wheel leans out/);
    expect(told.code).toBe('straight.bent');
  });
  test('toe counts too', () => {
    expect(ask('is the axle bent', jobOf({ toeFront: '60', toeRear: '481/8' })).show).toMatch(/Toe in 1\/8 in in all/);
  });
  test('the new axle is judged by its own readings', () => {
    const fitted = sided('halfFace', '145/4', '145/4').map((value) => ({
      ...value,
      id: `${value.id}2`,
      stage: 'fitted' as const,
    }));
    expect(ask('is the axle bent', jobOf([...sided('halfFace', '73/2', '287/8'), ...fitted])).code).toBe('straight.good');
  });
});

describe('two tyres held against each other', () => {
  test.each([
    ['compare 205 75 15 with 225 75 15', /^225\/75-15.*\nIt sits 0\.6 inches higher than on 205\/75-15/],
    ['what is the difference between a 205 75 15 and a 225 75 15', /It sits 0\.6 inches higher than on 205\/75-15/],
    ['is a 205 75 15 taller than a 225 75 15', /It sits 0\.6 inches lower than on 225\/75-15/],
  ])('%s', (text, shown) => expect(ask(text).show).toMatch(shown));
});

test('an equaliser off its centre shares the load by its arms, the other way round', () => {
  const told = ask(
    'how does an off-centre equaliser share the load',
    jobOf({ axleCount: 'tandem', frontArm: '3', rearArm: '11/4' }),
  );
  // Arms 3 and 2 3/4: 47.8 and 52.2 percent.
  expect(told.show).toMatch(/^47\.8 percent on the front axle, 52\.2 on the rear/);
  expect(ask('how is the load shared', jobOf({ axleCount: 'tandem' })).speak).toMatch(/front equaliser arm/);
});

test('the range of hub face that would work is said first where it is asked for', () => {
  const told = ask('what hub faces would work', jobOf(wholeTrailer));
  expect(told.speak).toMatch(/^From .* to .* hub face/i);
});
