// Service questions through the parser into words: codes, numbers and what they rest on; never the whole sentence.
import { describe, expect, test } from 'vitest';
import type { FieldId } from '#data';
import { understand } from '#intents';
import type { JobRecord, ValueRecord } from '#log/events';
import {
  alignmentToDraw,
  damageAnswer,
  judgeValue,
  remindersAfter,
  sequenceToDraw,
} from '../../../server/dialogue/answers/service.ts';
import type { Know } from '../../../server/dialogue/types.ts';
import { ask, bay, jobOf, noted } from '../../support/ask.ts';

const now = '2026-11-25T10:00:00Z';
const { shop } = bay;
const knowing = (more: Partial<Know> = {}): Know => ({ ...bay, ...more });

const value = (field: FieldId, text: string, more: Partial<ValueRecord> = {}): ValueRecord =>
  noted(field, text, { id: `${field}.${more.side ?? ''}.${more.origin ?? ''}`, stage: 'fitted', ...more });
const jobWith = (...values: readonly ValueRecord[]): JobRecord => jobOf(values);

const steel15 = [
  value('studThread', '1/2-20'),
  value('wheelType', 'steel'),
  value('tyreSize', 'ST205/75R15'),
  value('boltPattern', '5x9/2'),
];

describe('torque', () => {
  test('wheel nuts by stud, wheel and tyre; what it rests on and its source', () => {
    const told = ask('what torque for the wheel nuts', jobWith(...steel15));
    expect(told.code).toBe('wheelNuts.published');
    expect(told.speak).toContain('between ninety and one hundred twenty foot pounds'.slice(1));
    expect(told.rests).toEqual(['studThread..', 'wheelType..', 'tyreSize..']);
    expect(told.sources.join()).toContain('manualsdir.com 569014');
    expect(told.caution).toContain('dry');
  });

  test('nothing known: it asks for the stud and gives no number', () => {
    const told = ask('what torque for the wheel nuts');
    expect([told.code, told.missing]).toEqual(['wheelNuts.studUnknown', ['studThread', 'wheelNutTorque']]);
    expect(told.show).not.toMatch(/\d{2}/);
  });

  test("the maker's figure stands first and is named as theirs", () => {
    const told = ask(
      'what torque for the wheel nuts',
      jobWith(...steel15, value('wheelNutTorque', '100', { unit: 'lbf.ft', origin: 'maker' })),
    );
    expect(told.code).toBe('wheelNuts.maker');
    expect(told.speak).toMatch(/maker's figure: one hundred foot pounds/);
  });

  test('U-bolts: the weakest first, all in the show, common practice named as such', () => {
    const told = ask('what do the u bolts get', jobWith(value('uBoltThread', '1/2-20')));
    expect(told.speak).toContain('fifty-two foot pounds');
    expect(told.show).toMatch(/87 lb-ft: grade 8, unplated/);
    expect(told.show).toContain('Common practice, no source');
  });

  test('a bolt by thread and grade', () => {
    const told = ask('what torque for a half twenty grade eight dry');
    expect([told.code, told.show.split('\n')[0]]).toEqual(['bolt', '1/2-20 grade 8, dry: about 120 lb-ft']);
  });

  test('an extension', () => {
    const told = ask('what torque on the wrench with a three inch extension eighteen inch wrench and ninety foot pounds');
    expect([told.code, told.show.split('\n')[0]]).toEqual(['extension', 'Set about 77 lb-ft']);
  });

  test.each([
    ['what torque for half twenty studs on thirteen inch steel wheels', 'between fifty and sixty foot pounds'],
    ['what torque for half twenty studs on ST205/75R15 tyres steel wheels', 'between ninety and one hundred twenty foot pounds'],
    ['what torque for nine sixteenths eighteen u bolts', 'at most seventy-five foot pounds'],
  ])('what the question itself names counts: %s', (text, want) => {
    const told = ask(text);
    expect(told.code).toMatch(/published$/);
    expect(told.speak.toLowerCase()).toContain(want);
  });

  test.each([
    ['what is the seat torque', 'seat'],
    ['how tight do the shackle bolts go', 'springBolts'],
    ['what do the u bolts get', 'uBolts.threadUnknown'],
    ['what torque for grade five', 'bolt.threadMissing'],
  ])('%s: %s', (text, code) => {
    expect(ask(text).code).toBe(code);
  });
});

describe('order', () => {
  test.each([
    ['what order do i tighten five lugs', 'one, three, five, two, four'],
    ['what order do i tighten six lugs', 'one, four, two, five, three, six'],
    ['what order do i tighten eight lugs', 'one, five, three, seven, two, six, four, eight'],
  ])('%s: %s', (text, holes) => {
    expect(ask(text).speak).toContain(holes);
  });

  test('from the bolt pattern of the job, or asked for', () => {
    expect(ask('what is the sequence', jobWith(...steel15)).speak).toContain('one, three, five, two, four');
    expect(ask('what is the sequence').missing).toEqual(['boltPattern', 'lugCount']);
  });

  test('drawn with its stages', () => {
    expect(sequenceToDraw('wheelNuts', jobWith(...steel15), knowing(), now)).toEqual({
      what: 'wheelNuts',
      next: 0,
      positions: 5,
      order: [1, 3, 5, 2, 4],
      stage: '3 stages: 20 to 25 lb-ft, 50 to 60 lb-ft, 90 to 120 lb-ft',
    });
    expect(sequenceToDraw('wheelNuts', jobWith(), knowing(), now)).toBeUndefined();
  });
});

describe('bearings', () => {
  test('end play: the figure, what was measured and its verdict', () => {
    const told = ask('how much end play am i after', jobWith(value('endPlay', '3/500', { unit: 'in', side: 'right' })));
    expect(told.speak).toMatch(/one thousandth and five thousandths/);
    expect(told.show).toContain('end play, right: 0.006 in. Loose');
    expect(told.rests).toEqual(['endPlay.right.']);
  });

  test('one slot on one inch fourteen is about twelve thousandths of nut, and not end play', () => {
    const told = ask('what end play does one slot give on a one inch fourteen');
    expect(told.speak).toMatch(/about twelve thousandths/);
    expect(told.speak).toMatch(/not the end play/);
  });

  test('the next stops from a measured play', () => {
    const job = jobWith(value('spindleThread', '1-14'), value('endPlay', '1/125', { unit: 'in', side: 'left' }));
    expect(ask('what end play do i get one slot tighter', job)).toMatchObject({
      code: 'endPlay.stops',
      speak: expect.stringContaining('no play left'),
    });
  });

  test('damage named in a note or a question, though it is asked under another topic', () => {
    expect(damageAnswer('right inner cone is flaked')?.code).toBe('damage.flaking');
    expect(damageAnswer('right inner cone looks fine')).toBeUndefined();
  });
});

describe('alignment', () => {
  const diagonals = [
    value('couplerDiagonal', '1161/8', { unit: 'in', side: 'left' }),
    value('couplerDiagonal', '145', { unit: 'in', side: 'right' }),
  ];
  const beam = [value('hubFace', '72', { unit: 'in' }), value('springCentre', '58', { unit: 'in' })];

  test('unmeasured: the limit and what to measure', () => {
    expect(ask('is it aligned')).toMatchObject({ code: 'alignment.unmeasured', missing: ['couplerDiagonal'] });
  });

  test('at the limit a sixteenth tape cannot tell', () => {
    expect(ask('is it aligned', jobWith(...diagonals, ...beam)).code).toBe('alignment.unsure');
  });

  test('out: which end, which way, how far at spindle and spring', () => {
    const [left, right] = diagonals;
    if (!left || !right) throw new TypeError('two diagonals');
    const job = jobWith({ ...left, value: '581/4' }, right, ...beam);
    const told = ask('is it aligned', job);
    expect(told.code).toBe('alignment.out');
    expect(told.show).toMatch(/Bring the left end forward 1\/4 in at the spindle, about 3\/16 in at the spring/);
    expect(alignmentToDraw(job, knowing(), now)).toMatchObject({
      longer: 'left',
      difference: '1/4 in',
      move: { side: 'left', direction: 'forward', distance: '1/4 in' },
    });
  });

  test('in a shop that calls the left the near side, and works in millimetres', () => {
    const metric = knowing({ shop: { ...shop, lengthUnit: 'mm', sides: { left: 'near side', right: 'off side' } } });
    const [left, right] = diagonals;
    if (!left || !right) throw new TypeError('two diagonals');
    const told = ask('is it aligned', jobWith({ ...left, value: '581/4' }, right), metric);
    expect(told.show).toMatch(/near side end forward about 6 1\/2 mm|near side end forward about 6.5 mm/);
  });
});

describe('brakes, grease, sums, due', () => {
  test('expected amps for a tandem of ten inch brakes', () => {
    const told = ask(
      'how many amps should the brakes draw',
      jobWith(value('axleCount', 'tandem'), value('brakeType', 'electric'), value('brakeSize', '10x9/4')),
    );
    expect(told.show).toMatch(/^4 brakes at 12.5 V: 14.3 to 15.6 A/);
  });

  test('an idler axle has none', () => {
    expect(ask('how many amps should the brakes draw', jobWith(value('brakeType', 'idler'))).code).toBe('brake.none');
  });

  test('wire', () => {
    expect(ask('how much voltage is lost in twelve gauge wire thirty feet fifteen amps').show).toMatch(/1.43 V lost/);
  });

  test('a mix of thickeners', () => {
    expect(ask('can i mix lithium and polyurea grease').code).toBe('grease.mixesNot');
  });

  test.each([
    ["what's three eighths plus seventy-one and five eighths", '72'],
    ['what is half of seventy-two and a quarter', '36 1/8'],
    ['what is ninety foot pounds in newton metres', 'about 122'],
  ])('%s: %s', (text, want) => {
    expect(ask(text).show).toContain(want);
  });

  test('due from what was last done on the same trailer', () => {
    const vin = '1J9RP1A36A1644345';
    const last = {
      id: 'old',
      title: 'hubs',
      kind: 'hubService',
      status: 'closed',
      openedAt: '',
      updatedAt: '2026-10-30T00:00:00Z',
      openPoints: 0,
      invented: false,
      vin,
      done: ['left', 'right'].map((side) => ({ step: `hubBearing/pack@${side}`, at: '2025-10-01T00:00:00Z' })),
    } as const;
    const told = ask(
      'when is it due again',
      jobWith(value('vin', vin)),
      knowing({ jobs: [last, { ...last, id: 'other', vin: 'X', updatedAt: '2026-10-01T00:00:00Z' }] }),
    );
    expect([told.code, told.show]).toEqual(['due.now', expect.stringContaining('2026-10-01')]);
    expect(ask('when is it due again').code).toBe('due.nothing');
  });
});

describe('judging what was called out', () => {
  const judge = (one: ValueRecord, ...others: readonly ValueRecord[]) => {
    const told = judgeValue(one, jobWith(one, ...others), knowing(), now);
    return told && [told.code, told.gravity];
  };

  test.each([
    [value('wheelNutTorque', '100', { unit: 'lbf.ft', side: 'left' }), steel15, ['torqueWithin', 'good']],
    [value('wheelNutTorque', '60', { unit: 'lbf.ft', side: 'left' }), steel15, ['torqueLow', 'bad']],
    [value('wheelNutTorque', '150', { unit: 'lbf.ft', side: 'left' }), steel15, ['torqueHigh', 'bad']],
    [value('wheelNutTorque', '135', { unit: 'N.m', side: 'left' }), steel15, ['torqueWithin', 'good']],
    [value('wheelNutTorque', '90', { unit: 'lbf.ft', side: 'left' }), [], ['torqueUnjudged', 'good']],
    [
      value('wheelNutTorque', '90', { unit: 'lbf.ft', side: 'left' }),
      [...steel15, value('wheelNutTorque', '110', { unit: 'lbf.ft', origin: 'maker' })],
      ['torqueLow', 'bad'],
    ],
    [value('uBoltTorque', '50', { unit: 'lbf.ft', side: 'left' }), [value('uBoltThread', '1/2-20')], ['torqueWithin', 'good']],
    [
      value('uBoltTorque', '60', { unit: 'lbf.ft', side: 'left' }),
      [value('uBoltThread', '1/2-20')],
      ['torqueDepends', 'doubtful'],
    ],
    [value('endPlay', '1/100', { unit: 'in', side: 'left' }), [], ['endPlayHigh', 'bad']],
    [
      value('endPlay', '1/100', { unit: 'in', side: 'left' }),
      [value('endPlay', '1/1000', { unit: 'in', to: '1/100', origin: 'maker' })],
      ['endPlayWithin', 'good'],
    ],
    [
      value('hubTemperature', '150', { unit: 'degF', side: 'left' }),
      [value('hubTemperature', '110', { unit: 'degF', side: 'right' })],
      ['hubApart', 'bad'],
    ],
    [value('magnetResistance', '9', { unit: 'ohm', side: 'left' }), [value('brakeSize', '10x9/4')], ['magnetHigh', 'bad']],
    [value('magnetCurrent', '15/4', { unit: 'A' }), [value('axleCount', 'tandem')], ['currentOneShort', 'bad']],
    [value('magnetCurrent', '15/4', { unit: 'A', side: 'left' }), [value('axleCount', 'tandem')], ['currentGood', 'good']],
    [value('endPlay', '1/200', { unit: 'in', side: 'left' }), [], ['endPlayWithin', 'good']],
    [value('endPlay', '1/200', { unit: 'in', side: 'left', hedge: 'over' }), [], ['endPlayHigh', 'bad']],
    [value('endPlay', '3/1000', { unit: 'in', side: 'left', to: '7/1000' }), [], ['endPlayHigh', 'bad']],
    [value('wheelNutTorque', '90', { unit: 'lbf.ft', side: 'left', hedge: 'under' }), steel15, ['torqueLow', 'bad']],
    [value('treadDepth', '1/32', { unit: 'in', side: 'left' }), [], ['treadWorn', 'bad']],
    [value('liningThickness', '1/16', { unit: 'in', side: 'left' }), [], ['liningWorn', 'bad']],
    [value('drumDiameter', '12.1', { unit: 'in', side: 'left' }), [], ['drumWorn', 'bad']],
    [
      value('drumDiameter', '12.1', { unit: 'in', side: 'left' }),
      [value('drumLimit', '12.12', { unit: 'in', side: 'both' })],
      ['drumWithin', 'good'],
    ],
    [
      value('drumLimit', '12.06', { unit: 'in', side: 'left' }),
      [value('drumDiameter', '12.08', { unit: 'in', side: 'left' })],
      ['drumWorn', 'bad'],
    ],
  ])('%#', (one, others, want) => {
    expect(judge(one, ...others)).toEqual(want);
  });

  test('half a pair says nothing yet', () => {
    expect(judge(value('couplerDiagonal', '145', { unit: 'in', side: 'left' }))).toBeUndefined();
  });

  test('re-torque reminders of a step', () => {
    const events = remindersAfter('wheelNutTorque', 't9', now, '1200');
    expect(events.map((body) => body.kind === 'reminderSet' && [body.id, body.dueMiles])).toEqual([
      ['t9.wheelNuts.10mi', '1210'],
      ['t9.wheelNuts.25mi', '1225'],
      ['t9.wheelNuts.50mi', '1250'],
    ]);
  });
});

describe('the hub heat, the stretch and the grease asked about', () => {
  const hub = (side: 'left' | 'right', degrees: string) => value('hubTemperature', degrees, { unit: 'degF', side });

  test.each([
    ['is a hub at one sixty too hot', [], 'hubHeat.hubAlone', ['ambientTemperature']],
    ['is a hub at one ninety too hot ambient forty', [], 'hubHeat.hubRise', []],
    ['how hot should the hubs get', [], 'hubHeat.unmeasured', ['hubTemperature']],
    ['is the hub too hot', [hub('left', '180'), hub('right', '120')], 'hubHeat.hubApart', ['ambientTemperature']],
    [
      'are the hubs too hot',
      [hub('left', '120'), hub('right', '118'), value('ambientTemperature', '80', { unit: 'degF' })],
      'hubHeat.hubsAlike',
      [],
    ],
  ] as const)('%s: %s', (text, values, code, missing) => {
    expect(ask(text, jobWith(...values))).toMatchObject({ code, missing });
  });

  test('the rise is said with the verdict', () => {
    const told = ask('is a hub at one ninety too hot ambient forty');
    expect(told.show).toContain('150');
    expect(told.show).toContain('250');
  });

  test.each([
    ['stretch over four inches of a half twenty grade eight', 'stretch', '0.012'],
    ['how much does a half twenty grade eight stretch over four inches', 'stretch', '0.012'],
    ['how much will a half inch grade five bolt stretch', 'stretch.missing', 'thread'],
    ['can i mix lithium with polyurea', 'grease.mixesNot', 'Not together'],
    ["what's gc lb", 'grease.which', 'GC'],
    ['what is nlgi three', 'grease.grade', '220'],
    ['how many pumps of grease for the hub', 'grease.amount', 'bore'],
    [
      'how many strokes for a two and a half bore one and a half spindle and three inches between bearings',
      'grease.strokes',
      'cubic inches',
    ],
    ["what's the torque order on eight", 'sequence.order', '1'],
  ] as const)('%s: %s', (text, code, shown) => {
    const told = ask(text);
    expect(told.code).toBe(code);
    expect(told.show).toContain(shown);
  });

  test('with the inner journal measured, bore and distance are enough', () => {
    const job = jobWith(value('innerJournal', '3/2', { unit: 'in' }));
    expect(ask('how many strokes for a two and a half bore and three inches between bearings', job).code).toBe('grease.strokes');
  });
});

describe('brakes asked about without the trailer', () => {
  test.each([
    ['how many amps should four twelve inch brakes pull', '4 brakes'],
    ['how many amps should two ten inch brakes draw', '2 brakes'],
    ['how many amps should the brakes draw', '2 brakes'],
    ['how long should the breakaway hold', '2 brakes'],
  ] as const)('%s: %s', (text, shown) => {
    expect(ask(text).show).toContain(shown);
  });

  test('a wire drop is a question, and no number in it a measurement', () => {
    const { intents } = understand('voltage drop for fifteen amps over thirty feet of twelve gauge');
    expect(intents.map(({ kind }) => kind)).toEqual(['question']);
    expect(ask('voltage drop for fifteen amps over thirty feet of twelve gauge').show).toMatch(/1\.43/);
  });

  test('turns for so much play', () => {
    expect(ask('how many turns for four thou on a one inch sixteen').code).toMatch(/^endPlay/);
  });
});

describe('grease asked by what stands on the tube', () => {
  test.each([
    ['can i put marine grease over lithium', 'grease.mixNameless'],
    ['is the red grease compatible with lithium complex', 'grease.mixNameless'],
    ['can i top up the old grease', 'grease.mixMissing'],
    ['how do i fill it by the zerk', 'grease.through'],
    ['how do i grease it through the fitting', 'grease.through'],
    ['how many pumps through the zerk', 'grease.amount'],
  ])('%s', (words, code) => {
    expect(ask(words).code).toBe(code);
  });
});

test('the toe that is allowed is spoken, not only shown', () => {
  expect(ask('how much toe is allowed').speak).toContain('sixteenth');
});

test('diagonals that no axle has move nothing', () => {
  const told = ask(
    'is it square',
    jobWith(value('couplerDiagonal', '721/4', { side: 'left' }), value('couplerDiagonal', '409/4', { side: 'right' })),
  );
  expect(told.code).toBe('alignment.out');
  expect(told.speak).not.toContain('forward');
});
