// Fitment questions through the parser into words: codes, numbers and what they rest on; never the whole sentence.
import { describe, expect, test } from 'vitest';
import { demoStock } from '#data';
import { ask, bay, jobOf, noted } from '../../support/ask.ts';
import { wholeTrailer } from '../../support/readings.ts';

const chosen = (id: string) => {
  const axle = demoStock.find((row) => row.id === id);
  if (!axle) throw new TypeError(`no ${id} in the rack`);
  return { candidate: { stock: id, title: axle.title, values: axle.values as Record<string, string> } };
};

test('turns of the axle at the speed that is asked', () => {
  const job = jobOf({ tyreSize: 'ST205/75R15' });
  // 205 mm x 75 percent x 2 + 15 in = 27.108 in; 63,360 in a mile: 744 turns, at thirty miles an hour half as many a minute.
  expect(ask('how many rpm does the axle turn at thirty', job).show).toContain(
    '744 turns a mile unloaded, 372 a minute at 30 mph',
  );
  expect(ask('how many turns a mile', job).show).toContain('744 a minute at 60 mph');
});

describe('bearings', () => {
  test('a worn number by itself is asked about, with all that fit what is left of it', () => {
    expect(ask('bearing L four four something four nine').show).toContain('Cone L44649 runs with cup L44610');
    expect(ask('L four four six four blank').code).toBe('bearingCandidates');
  });

  test.each([
    ['which bearing is L44649', 'bearing', 'L44610'],
    ['which bearing is L68149', 'bearing', 'L68110 or L68111'],
    ['which bearing is L44610', 'bearing', 'Cup L44610 runs with cone'],
    ['what cup goes with L68149', 'bearing', 'L68110 or L68111'],
    ['what bearing is l four four something four nine', 'bearing', 'One on file fits what can be read'],
    ['what bearing is l four four six four eight', 'bearingCandidates', 'L44643 or L44649'],
    ['which bearing is L99999', 'bearingUnknown', 'L99999'],
  ])('%s: %s, %s', (text, code, shown) => {
    const told = ask(text);
    expect(told.code).toBe(code);
    expect(told.show).toContain(shown);
  });

  test('a journal that several bearings run on is not told by itself', () => {
    const told = ask('which bearing goes on a one and three eighths journal');
    expect(told.code).toBe('bearingCandidates');
    expect(told.show).toContain('read the number');
  });

  test('journal and cup bore together tell what the journal alone does not', () => {
    expect(ask('which bearing goes on a one and a sixteenth journal').missing).toEqual(['cupBore']);
    // L44649/L44610 and 15106/15245 share the bore 1.0625 in; the cups are 1.980 and 2.4409 in outside (general inch-series tables).
    const told = ask('which bearing for a one and a sixteenth journal and a one point nine eight bore');
    expect([told.code, told.show.split('\n')[0]]).toEqual(['bearing', 'L44649 in cup L44610']);
    const noted = ask('which inner bearing', jobOf({ innerJournal: '1.0625', cupBore: '2.441' }));
    expect(noted.show.split('\n')[0]).toBe('15106 in cup 15245');
    expect(noted.rests).toEqual(['innerJournal', 'cupBore']);
  });

  test('what interchanges is told by dimension, and only so', () => {
    const told = ask('what interchanges with LM29748');
    expect([told.code, told.show.split('\n')[0]]).toEqual(['bearingAlike', 'Same bore, outside and width: LM29749 in LM29710']);
    expect(ask('what interchanges with L44649').show).toContain('Nothing on file has the size of L44649 but itself');
  });

  test('a journal in millimetres is the same journal', () => {
    const metric = jobOf([noted('innerJournal', '1349375/50000', { unit: 'mm' })]);
    const inch = jobOf([noted('innerJournal', '1.0625')]);
    expect(ask('which inner bearing', metric).show).toBe(ask('which inner bearing', inch).show);
    expect(ask('which inner bearing', metric).show).toContain('L44649');
    expect(ask('which bearing goes on a 35 mm journal').show).toContain('L68149');
  });

  test('cone and cup on the job are held against each other', () => {
    const pair = ask('which inner bearing', jobOf({ innerBearing: 'L68149', innerCup: 'L68111' }));
    expect([pair.code, pair.rests]).toEqual(['bearingPair', ['innerBearing', 'innerCup']]);
    const wrong = ask('which inner bearing', jobOf({ innerBearing: 'L68149', innerCup: 'L44610' }));
    expect(wrong.code).toBe('bearingNotAPair');
    expect(wrong.show).toContain('L68110 or L68111');
    expect(wrong.caution).toContain('Never');
    const strange = ask('which inner bearing', jobOf({ innerBearing: 'L68149', innerCup: 'QQ123' }));
    expect(strange.code).toBe('bearingUnknown');
    expect(strange.show).toContain('QQ123');
  });

  test('from the capacity alone only what is often found, and it says so', () => {
    const told = ask('what is the inner bearing', jobOf({ capacity: '3500' }));
    expect([told.code, told.missing]).toEqual(['bearingOften', ['bearing']]);
    expect(told.show).toContain('Read the number before ordering');
    expect(ask('which bearing').missing).toEqual(['bearing', 'journal']);
  });
});

describe('seals', () => {
  test('by the journal said or noted; unknown without one', () => {
    expect(ask('which seal for a one point seven one nine journal').show).toContain('1.719 by 2.565');
    const noted1 = ask('which seal', jobOf({ sealJournal: '1.719' }));
    expect([noted1.code, noted1.rests]).toEqual(['seal', ['sealJournal']]);
    expect(ask('which seal', jobOf([noted('sealJournal', '43.6626', { unit: 'mm' })])).code).toBe('seal');
    expect(ask('which seal', jobOf({ sealJournal: '5' })).code).toBe('sealUnknown');
    expect(ask('which seal').missing).toEqual(['sealJournal', 'sealBore', 'seal']);
  });

  test('by journal and bore together, and by the bore alone', () => {
    const both = ask('what seal for a one point seven one nine journal and a two point five six five bore');
    expect(both.show.split('\n')[0]).toBe('1.719 by 2.565 inches');
    expect(both.missing).toEqual([]);
    expect(ask('which seal', jobOf({ sealBore: '2.565' })).missing).toEqual(['sealJournal']);
    expect(ask('which seal', jobOf({ sealJournal: '1.719', sealBore: '3.376' })).code).toBe('sealUnknown');
  });
});

describe('parts', () => {
  const stack = {
    beamDiameter: '19/8',
    springPack: '3/2',
    tiePlateThickness: '3/8',
    uBoltThread: '1/2-20',
    springType: 'slipper',
  };

  test('U-bolt from the stack: beam, seat, springs, plate, nut and thread showing', () => {
    const told = ask('what do I need to order', jobOf({ ...stack, springWidth: '7/4' }));
    // 2 3/8 + 3/16 + 1 1/2 + 3/8 + 1/2 + 1/4 = 5 3/16.
    expect(told.show).toMatch(/4 U-bolts: 1\/2-20; 2 3\/8 in inside, leg 5 3\/16 in, order 5 1\/4 in; never used twice/);
    expect(told.show).toContain('2 spring-eye bolts');
    expect(told.rests).toEqual(expect.arrayContaining(Object.keys(stack)));
  });

  test('nothing measured: no size and no amount is made up', () => {
    const told = ask('what do I need to order');
    expect(told.show).toContain('4 U-bolts: size not told: beam, spring pack, tie plate thickness');
    expect(told.show).toMatch(/^Wheel-bearing grease/m);
    expect(told.show).not.toMatch(/ounces|L68149/);
    expect(told.missing).toContain('springPack');
  });

  test('bearings of the chosen axle, its beam and its studs', () => {
    const told = ask(
      'what do I need to order',
      jobOf({ studThread: '9/16-18', springPack: '2', tiePlateThickness: '3/8' }, chosen('TB-3502')),
    );
    expect(told.show).toContain('1 axle: 3,500 pound electric-brake axle');
    expect(told.show).toMatch(/2 inner bearings, cone and cup: L68149; /);
    expect(told.show).toContain('10 wheel nuts: 1/2-20');
    expect(told.show).toContain('2 3/8 in inside');
    expect(told.show).toMatch(/2 ounces of wheel-bearing grease/);
  });

  test('bearings from the capacity are marked, and so is the grease for them', () => {
    const told = ask('what do I need to order', jobOf({ capacity: '3500' }));
    expect(told.show).toContain('L68149/L68111 (often found; read the part)');
    expect(told.show).toContain('if the bearings are those often found');
  });

  test('a hub service needs no axle and no U-bolts; what is only heard is marked', () => {
    const told = ask(
      'what parts do i need',
      jobOf([noted('innerBearing', 'L68149', { status: 'heard' })], { kind: 'hubService' }),
    );
    expect(told.show).not.toContain('U-bolts');
    expect(told.show).toMatch(/inner bearings.*not confirmed/);
  });
});

describe('what fits, and a fit that was not looked at all round', () => {
  const stock = { ...bay, stock: demoStock };
  const few = { hubFace: '579/8', springCentre: '58', boltPattern: '5x9/2', brakeType: 'electric', capacity: '3500' };

  test('names what was not looked at, first where the axles differ', () => {
    const told = ask('what have we got that fits', jobOf(few), stock);
    expect(told.code).toBe('stockFits');
    expect(told.show).toMatch(/^Fits as far as told \| 3,500 pound electric-brake axle, drop 4/m);
    expect(told.speak).toMatch(/as far as told/);
    expect(told.speak).toMatch(/Not looked at: .*drop.* more; tell me /);
    expect(told.show).toMatch(/^Not looked at: .*drop.*tyres against the axle/m);
  });

  test('with every check made nothing is left unsaid, and the other drop is found', () => {
    const told = ask('what have we got that fits', jobOf(wholeTrailer), stock);
    const line = told.show.split('\n').find((one) => one.includes('drop 4'));
    expect(told.show).toMatch(/^Fits \| 3,500 pound electric-brake axle, rack 2, upper/m);
    expect(line).toMatch(/^Does not fit/);
  });

  test('nothing measured: it asks, and names no axle as near', () => {
    const told = ask('what have we got that fits', jobOf(), stock);
    expect([told.code, told.missing.slice(0, 3)]).toEqual(['stockNone', ['springCentre', 'hubFace', 'boltPattern']]);
    expect(told.speak).toMatch(/Tell me spring centre, hub face and bolt pattern\.$/);
    expect(ask('what have we got that fits').code).toBe('noStock');
  });

  test('one axle: the verdict names what was not looked at, why it does not fit and what would make it', () => {
    const fit = ask('will it fit', jobOf(few, chosen('TB-3503')), stock);
    expect(fit.code).toBe('verdict');
    expect(fit.speak).toMatch(/^Fits\. .*Not looked at: /);
    expect(fit.show).toMatch(/Not looked at: .*drop/);
    expect(fit.events?.map(({ kind }) => kind)).toEqual(['candidateChosen', 'verdictGiven']);
    const why = ask('why', jobOf(few, chosen('TB-3511')), stock);
    expect(why.code).toBe('verdictWhy');
    expect(why.speak).toContain('five on five');
    expect(why.show).toContain('Could be made to fit: hubs with the right pattern');
    expect(why.events).toBeUndefined();
    expect(ask('why', jobOf(few), stock).code).toBe('whichAxle');
  });

  test('an axle with no brakes on a trailer that had none: the law is said, not only the fit', () => {
    const bare = jobOf({ ...few, brakeType: 'idler', gvwr: '3500', tongueWeight: '420', axleCount: 'single' }, chosen('TB-3501'));
    const told = ask('will it fit', bare, stock);
    expect(told.speak).toMatch(/^Fits with work\..*federal rule wants brakes.*state and local rules may be stricter/);
  });

  test('an axle described in millimetres is the same axle', () => {
    const job = jobOf(wholeTrailer);
    const metric = ask('will an 1879.6 mm hub face axle fit', job);
    const inch = ask('will a 74 inch hub face axle fit', job);
    expect(metric.show).toBe(inch.show);
    expect(metric.show).toContain('hub face: 74 in');
  });
});

describe('load', () => {
  test('the weakest part against the load, and what raising it would take', () => {
    const told = ask('how much will it carry', jobOf(wholeTrailer));
    expect(told.code).toBe('load');
    expect(told.show).toContain('3500 lb on one axle, set by the axle');
    // 3,500 less 420 on the tongue; 420 of 3,500 is 12 percent.
    expect(told.show).toMatch(/The load is 3080 lb\n420 lb to spare, 12 percent/);
    expect(told.show).toContain('A stronger axle would raise it to 3640 lb, where the two tyres would set it');
    expect(told.show).toContain('may be weaker: the two springs, the two hubs and their bearings and the two wheels');
    expect(told.rests).toEqual(['gvwr', 'tongueWeight', 'axleCount', 'capacity', 'tyreSize']);
  });

  test('passenger-car tyres count divided by 1.10 and are then the weakest (49 CFR 571.120 S5.1.2)', () => {
    const told = ask('how much will it carry', jobOf({ ...wholeTrailer, tyreSize: 'P205/75R15 97S', tongueWeight: '200' }));
    // Load index 97: 730 kg = 1,609.37 lb; / 1.10 x 2 = 2,926 lb; load 3,300.
    expect(told.show).toContain('About 2926 lb on one axle, set by the two tyres');
    expect(told.show).toContain('divided by 1.10');
    expect(told.show).toMatch(/200 lb on the tongue: 5.7 percent, light/);
    expect(told.caution).toContain('Do not tow');
    expect(told.sources.join()).toContain('571.120');
  });

  test('springs, hubs and wheels rated one by one count two to an axle; the weakest of all sets it', () => {
    const job = jobOf({ ...wholeTrailer, springCapacity: '1500', hubCapacity: '1750', wheelCapacity: '1820' });
    const told = ask('what would it take to carry more', job);
    expect(told.show).toContain('3000 lb on one axle, set by the two springs');
    expect(told.speak).toContain('Stronger springs would raise it to');
    expect(told.show).not.toContain('may be weaker');
    expect(told.rests).toEqual(expect.arrayContaining(['springCapacity', 'hubCapacity', 'wheelCapacity']));
    expect(ask('what is the weakest link', job).speak).toContain('set by the two springs');
  });

  test('tongue by moments where it was not weighed, and where the axle would stand for a usual share', () => {
    // W = 3,500, x = 132, D = 150: tongue 3500 (1 - 132/150) = 420, 12 percent (moments about the coupler).
    const job = { grossWeight: '3500', loadCentre: '132', axleDistance: '150', axleCount: 'single' } as const;
    const told = ask('how much tongue weight', jobOf(job));
    expect(told.speak).toMatch(/^Four hundred (and )?twenty pounds on the tongue, by moments/);
    expect(told.show).toMatch(/420 lb on the tongue, by moments about the coupler: 12 percent/);
    expect(told.show).toContain('The load is 3080 lb');
    expect(told.rests).toEqual(expect.arrayContaining(['loadCentre', 'axleDistance']));
    // humphreyshitchandtrailerparts.com: 1,025 + 7,200 lb, D 264 in; exact place for 15 percent: x / 0.85 with x = D (1 - t/W).
    const heavy = ask('is the tongue too heavy', jobOf({ grossWeight: '8225', tongueWeight: '1250', axleDistance: '264' }));
    expect(heavy.show).toContain('1250 lb on the tongue: 15.2 percent, heavy');
    const light = ask('is the tongue too light', jobOf({ grossWeight: '8225', tongueWeight: '411', axleDistance: '264' }));
    expect(light.show).toMatch(/10 percent with the axle about 278 11\/16 in behind the coupler/);
  });

  test('the load range said with the tyre counts; without it, it is asked for', () => {
    const bare = { ...wholeTrailer, tyreSize: 'ST205/75R15' };
    expect(ask('how much will it carry', jobOf(bare)).missing).toContain('loadRange');
    const told = ask('how much will it carry', jobOf({ ...bare, loadRange: 'C' }));
    expect(told.show).toContain('The two tyres: 3640 lb');
    expect(told.rests).toContain('loadRange');
    expect(ask('how much will it carry', jobOf({ ...bare, loadIndex: '101' })).show).toContain('The two tyres: about 3638 lb');
  });

  test('a weight asked about is held against the axles that share it', () => {
    expect(ask('can it carry four thousand pounds', jobOf(wholeTrailer)).speak).toMatch(
      /^No: four thousand pounds is five hundred/,
    );
    const tandem = jobOf({ ...wholeTrailer, axleCount: 'tandem', gvwr: '6000', tongueWeight: '700' });
    const told = ask('can it carry four thousand pounds', tandem);
    expect(told.show).toMatch(/^As far as the axle and the two tyres go, 4000 lb on 2 axles leaves 3000 lb/);
    expect(ask('can it carry eight thousand pounds', tandem).caution).toContain('overload');
  });

  test('nothing known: it asks, and gives no number', () => {
    const told = ask('how much will it carry');
    expect([told.code, told.missing]).toEqual(['loadUnknown', ['gvwr', 'capacity', 'tyreSize']]);
    expect(told.show).not.toMatch(/\d/);
    expect(ask('how much will it carry', jobOf({ gvwr: '3500', axleCount: 'tandem' })).show).toContain('at most 1750 lb');
  });
});

describe('tyres', () => {
  test('size, load and turns of the tyre on the job', () => {
    const told = ask('what tyre', jobOf({ tyreSize: 'ST205/75R15 C' }));
    expect([told.code, told.rests]).toEqual(['tyre', ['tyreSize']]);
    // 2 x 205 x 0.75 / 25.4 + 15 = 27.1.
    expect(told.show).toMatch(/about 27\.1 inches tall, 8\.1 wide/);
    expect(told.show).toContain('1820 lb a tyre on a trailer, at 50 psi');
    expect(told.show).toMatch(/74\d turns a mile/);
  });

  test('asked what a size carries without its load range: what each range on file carries', () => {
    const told = ask('how much does a ST205/75R15 carry', jobOf({ capacity: '3500' }));
    expect(told.code).toBe('tyre');
    expect(told.show).toMatch(/load range C: 1820 lb at 50 psi/);
  });

  test('another size than the one on the job: what changes', () => {
    const told = ask('what tyre is a ST225/75R15', jobOf({ tyreSize: 'ST205/75R15 C' }));
    // 20 mm x 0.75 = 0.59 in higher at the axle; 10 mm = 0.4 in less on each side.
    expect(told.show).toMatch(/0\.6 inches higher/);
    expect(told.show).toMatch(/0\.4 inches less room/);
    expect(told.rests).toEqual(['tyreSize']);
    expect(ask('what tyre is a ST225/75R14', jobOf({ tyreSize: 'ST205/75R15 C' })).show).toContain('another rim');
  });

  test('unknown and unreadable', () => {
    expect(ask('what tyre').missing).toEqual(['tyreSize']);
    expect(ask('what tyre', jobOf({ tyreSize: 'round' })).code).toBe('tyreUnreadable');
    expect(ask('what tyre', jobOf({ tyreSize: 'F78-15' })).show).toContain('took its place');
  });
});

describe('bolt patterns', () => {
  test.each([
    // 4.5 sin 36 = 2.645; 5.5 sin 30 = 2.75; 5 sin 36 = 2.939; 6.5 sin 22.5 = 2.487.
    ['what bolt pattern is five studs two and five eighths between', '5 on 4 1/2'],
    ['what bolt pattern is five lug 67 mm', '5 on 4 1/2'],
    ['what bolt pattern has six studs five and a half across', '6 on 5 1/2'],
    ['what bolt pattern is six lug two and three quarters hole to hole', '6 on 5 1/2'],
    ['what bolt pattern is eight lug two and a half hole to hole', '8 on 6 1/2'],
  ])('%s: %s', (text, shown) => {
    expect(ask(text).show.split('\n')[0]).toBe(shown);
  });

  test('from distances on the job: to the next hole, to the second, to the opposite one', () => {
    const of = (more: Parameters<typeof jobOf>[0]) => ask('what is the bolt pattern', jobOf(more));
    expect(of({ lugCount: '6', studSpacing: '2.75' }).show.split('\n')[0]).toBe('6 on 5 1/2');
    // 5.5 sin 60 = 4.763; 6.5 sin 45 = 4.596.
    expect(of({ lugCount: '6', studSkip: '19/4' }).show.split('\n')[0]).toBe('6 on 5 1/2');
    expect(of({ lugCount: '8', studSkip: '37/8' }).show.split('\n')[0]).toBe('8 on 6 1/2');
    expect(of({ lugCount: '8', studAcross: '13/2' }).show.split('\n')[0]).toBe('8 on 6 1/2');
    expect(of({ lugCount: '6', studSpacing: '2.75' }).rests).toEqual(['studSpacing', 'lugCount']);
    expect(of({ studSpacing: '2.75' }).missing).toEqual(['lugCount']);
  });

  test('two circles the tape cannot tell apart are both named', () => {
    const told = ask('what bolt pattern is five studs two and five eighths between');
    expect(told.code).toBe('boltPatternAlike');
    expect(told.show).toContain('112');
  });

  test('the count may be on the job; a distance that is no pattern is refused with what would do', () => {
    expect(ask('what bolt pattern is two and three quarters hole to hole', jobOf({ lugCount: '6' })).show).toContain(
      '6 on 5 1/2',
    );
    expect(ask('what bolt pattern is five studs nine inches between').code).toBe('boltPatternUnknown');
    expect(ask('what is the bolt pattern', jobOf({ boltPattern: '5x9/2' })).rests).toEqual(['boltPattern']);
    expect(ask('what is the bolt pattern').missing).toEqual(['boltPattern']);
  });
});

describe('clearance', () => {
  test('room on each side, width over all, and the hub faces that would work', () => {
    const told = ask('how wide over the tyres', jobOf(wholeTrailer));
    expect(told.code).toBe('clearance');
    // 72 3/8 + 205 mm = 80.446; (72 3/8 - 58 - 1 3/4) / 2 - 102.5 mm = 2.277.
    expect(told.show).toContain('About 80 7/16 in over the tyres, inside the legal width');
    expect(told.show).toContain('About 2 1/4 in from tyre to spring, each side');
    expect(told.show).toContain('for tyre to frame');
    expect(told.rests).toContain('hubFace');
  });

  test('a hub face asked about, in either unit; over 102 inches the law is named (23 CFR 658.15)', () => {
    const { frameWidth: _frame, fenderWidth: _fender, ...open } = wholeTrailer;
    const wide = ask('will it clear', jobOf(open, { candidate: { stock: 'a', title: 'wide', values: { hubFace: '95' } } }));
    expect(wide.show).toContain('wider than the law allows');
    expect(wide.missing).toEqual(['frameWidth', 'fenderWidth']);
  });

  test('unknown: the values that would tell it', () => {
    expect(ask('will it clear').missing).toEqual(['hubFace']);
    const told = ask('will it clear', jobOf({ hubFace: '72' }));
    expect([told.code, told.missing.includes('tyreSize')]).toEqual(['clearanceUnknown', true]);
  });
});
