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

describe('bearings', () => {
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
    expect(ask('which seal').missing).toEqual(['sealJournal', 'seal']);
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
    expect(told.speak).toMatch(/^Fits\..*federal rule wants brakes.*state rules may be stricter/);
  });

  test('an axle described in millimetres is the same axle', () => {
    const job = jobOf(wholeTrailer);
    const metric = ask('will an 1879.6 mm hub face axle fit', job);
    const inch = ask('will a 74 inch hub face axle fit', job);
    expect(metric.show).toBe(inch.show);
    expect(metric.show).toContain('hub face: 74 in');
  });
});
