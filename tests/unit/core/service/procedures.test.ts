import { describe, expect, test } from 'vitest';
import {
  lacks,
  openGates,
  type PlannedStep,
  plainPractice,
  planSteps,
  type Reading,
  type ShopProcedure,
  slotsOf,
  strayNames,
  withShopProcedures,
} from '#core';
import { type FieldId, jobKinds, type ProcedureStep, procedures } from '#data';
import { checkProcedures } from '#data/schema';

const found = (field: FieldId, value: string, more: Partial<Reading> = {}): Reading => ({
  field,
  value,
  stage: 'found',
  ...more,
});
const fitted = (field: FieldId, value: string, more: Partial<Reading> = {}): Reading => ({
  field,
  value,
  stage: 'fitted',
  ...more,
});
const keys = (steps: readonly PlannedStep[]) => steps.map(({ key }) => key);
const stepOf = (key: string, readings: readonly Reading[], kind = 'axleReplacement' as const): PlannedStep => {
  const step = planSteps(kind, readings).find((one) => one.key === key);
  if (!step) throw new TypeError(`no step ${key}`);
  return step;
};

const single = [
  found('axleCount', 'single'),
  found('brakeType', 'idler'),
  found('springType', 'slipper'),
  found('slung', 'overSlung'),
];
const tandem = [found('axleCount', 'tandem'), found('brakeType', 'electric')];

describe('planning', () => {
  test('every kind of job runs from making safe to handover, and a single axle is forty steps or so', () => {
    for (const { id } of jobKinds) {
      const plan = keys(planSteps(id, single));
      expect([plan[0], plan.at(-1)]).toEqual(['makeSafe/park', 'handover/tell']);
      expect(new Set(plan).size).toBe(plan.length);
    }
    const count = planSteps('axleReplacement', [...single, fitted('nutLock', 'cotter')]).length;
    expect(count).toBeGreaterThanOrEqual(35);
    expect(count).toBeLessThanOrEqual(45);
  });

  // common practice: whoever leaves the bay on it has its nuts tight, its stands out and its breakaway battery on
  test('what making safe loosens, lifts and disconnects, every kind of job puts back before the handover is told', () => {
    const saying = (plan: readonly PlannedStep[], words: RegExp) => plan.findIndex(({ step }) => words.test(step.say));
    for (const { id } of jobKinds) {
      const plan = planSteps(id, [found('brakeType', 'electric')]);
      for (const [undone, redone] of [
        [/wire off the breakaway battery/, /breakaway battery back on/],
        [/Crack the wheel nuts/, /Call the torque/],
        [/set it on stands/, /stands out/],
      ] as const) {
        expect([id, saying(plan, undone)]).not.toEqual([id, -1]);
        expect([id, saying(plan, redone) > saying(plan, undone)]).toEqual([id, true]);
      }
    }
  });

  test('one hub is finished before the other is begun', () => {
    const hubs = keys(planSteps('hubService', [...single, fitted('nutLock', 'cotter')])).filter(
      (key) => key.startsWith('hubBearing/') && key.includes('@'),
    );
    expect(hubs.map((key) => key.split('@')[1])).toEqual([...Array(5).fill('left'), ...Array(5).fill('right')]);
  });

  test.each([
    ['cotter', 'pin'],
    ['tangKeeper', 'keeper'],
    ['keyedWasher', 'washer'],
  ])('a nut locked by %s takes the step %s and no other lock', (lock, step) => {
    const plan = keys(planSteps('hubService', [...single, fitted('nutLock', lock)]));
    const locks = ['pin', 'keeper', 'washer', 'lockUnknown'].filter((name) => plan.includes(`hubBearing/${name}@left`));
    expect(locks).toEqual([step]);
  });

  test('what was found branches the work', () => {
    const plan = (more: readonly Reading[]) => keys(planSteps('axleReplacement', more));
    expect(plan(single)).toContain('fitAxle/seatOver');
    expect(plan([...single, found('slung', 'underSlung')])).toContain('fitAxle/seatUnder');
    expect(plan([...single, found('springType', 'doubleEye')])).toContain('fitAxle/doubleEye');
    expect(plan(single)).not.toContain('brakeCheck/current');
    expect(plan([...single, found('brakeType', 'electric')])).toContain('brakeCheck/current');
    expect(plan([...single, fitted('spindleLube', 'greasable')])).toContain('hubBearing/greaseThrough@left');
  });

  test('a new axle with brakes brings the brake steps in, though the old one had none', () => {
    expect(keys(planSteps('axleReplacement', [...single, fitted('brakeType', 'electric')]))).toContain('brakeCheck/magnets');
  });

  test('a tandem is worked axle by axle, or on the axle that is named', () => {
    const torque = (more: readonly Reading[]) =>
      keys(planSteps('axleReplacement', more)).filter((key) => key.startsWith('wheelsOn/torque'));
    expect(torque(tandem)).toEqual(['wheelsOn/torque@front', 'wheelsOn/torque@rear']);
    expect(torque([...tandem, found('axleInWork', 'rear')])).toEqual(['wheelsOn/torque@rear']);
    expect(keys(planSteps('hubService', tandem))).toContain('hubBearing/endPlay@rear.right');
  });

  test('a struck value no longer decides', () => {
    const plan = keys(planSteps('axleReplacement', [...single, found('brakeType', 'electric', { status: 'struck' })]));
    expect(plan).not.toContain('brakeCheck/current');
  });
});

describe('gates', () => {
  const wanting = (step: PlannedStep, readings: readonly Reading[]) =>
    openGates(step, readings).map(({ record, side }) => [record.field, side]);

  test('final torque wants both sides, and "both" fills both', () => {
    const step = stepOf('wheelsOn/torque', single);
    expect(wanting(step, single)).toEqual([
      ['wheelNutTorque', 'left'],
      ['wheelNutTorque', 'right'],
    ]);
    expect(wanting(step, [...single, fitted('wheelNutTorque', '90', { side: 'left' })])).toEqual([['wheelNutTorque', 'right']]);
    expect(wanting(step, [...single, fitted('wheelNutTorque', '90', { side: 'both' })])).toEqual([]);
  });

  test('what was found on the old axle fills no gate of the new one', () => {
    const step = stepOf('fitAxle/compare', single);
    expect(
      wanting(step, [...single, found('hubFace', '72'), found('springCentre', '58'), found('capacity', '3500')]),
    ).toHaveLength(3);
  });

  test('in a hub service the lock that was seen is the lock that goes back; a new axle is asked about', () => {
    const seen = [...single, found('nutLock', 'cotter'), found('spindleLube', 'plain')];
    const open = (kind: 'hubService' | 'axleReplacement') => {
      const step = planSteps(kind, seen).find(({ key }) => key === 'hubBearing/lockKind');
      return step ? openGates(step, seen).length : undefined;
    };
    expect([open('hubService'), open('axleReplacement')]).toEqual([0, 2]);
  });

  test("the maker's figure is a limit, not a measurement", () => {
    const step = stepOf('wheelsOn/torque', single);
    expect(wanting(step, [...single, fitted('wheelNutTorque', '100', { side: 'both', origin: 'maker' })])).toHaveLength(2);
  });

  test('end play of the front left fills only the front left', () => {
    const readings = [...tandem, fitted('endPlay', '3/1000', { side: 'left', axle: 'front' })];
    expect(wanting(stepOf('hubBearing/endPlay@front.left', readings), readings)).toEqual([]);
    expect(wanting(stepOf('hubBearing/endPlay@rear.left', readings), readings)).toHaveLength(1);
  });

  test('the axle in work is asked for on a tandem only', () => {
    const names = (readings: readonly Reading[]) =>
      lacks(stepOf('inspectMeasure/layout', readings), readings).map(({ record }) => record.field);
    expect(names([found('axleCount', 'single')])).not.toContain('axleInWork');
    expect(names([found('axleCount', 'tandem')])).toContain('axleInWork');
  });

  test('total brake current is one value for the trailer', () => {
    const readings = [...tandem, fitted('magnetCurrent', '15')];
    expect(wanting(stepOf('brakeCheck/current', readings), readings)).toEqual([]);
  });
});

describe('limits of a slot', () => {
  const limits = (key: string, field: FieldId, readings: readonly Reading[]) => {
    const slot = slotsOf(stepOf(key, readings), readings).find(({ record }) => record.field === field);
    return [slot?.record.min, slot?.record.max, slot?.record.unit];
  };
  const studs = [...single, fitted('studThread', '1/2-20'), fitted('wheelType', 'steel'), found('tyreSize', 'ST205/75R15')];

  test.each([
    ['hubBearing/endPlay@left', 'endPlay', single, ['1/1000', '1/200', 'in'], 'TMC RP 618, as the step says'],
    [
      'hubBearing/endPlay@left',
      'endPlay',
      [...single, fitted('endPlay', '1/1000', { to: '1/100', origin: 'maker' })],
      ['1/1000', '1/100', 'in'],
      "the maker's",
    ],
    ['wheelsOn/torque', 'wheelNutTorque', studs, ['90', '120', 'lbf.ft'], 'manualsdir.com 569014 p. 40'],
    [
      'wheelsOn/torque',
      'wheelNutTorque',
      [...studs, fitted('wheelNutTorque', '100', { origin: 'maker' })],
      ['95', '105', 'lbf.ft'],
      "the maker's, with the wrench",
    ],
    ['wheelsOn/torque', 'wheelNutTorque', single, [undefined, undefined, undefined], 'no stud known'],
    [
      'fitAxle/uBoltTorque',
      'uBoltTorque',
      [...single, fitted('uBoltThread', '1/2-20')],
      ['45', '87', 'lbf.ft'],
      'any grade and plating',
    ],
  ] as const)('%s: %s by %o is %o (%s)', (key, field, readings, want, _source) => {
    expect(limits(key, field, readings)).toEqual(want);
  });
});

const step = (id: string, more: Partial<ProcedureStep> = {}): ProcedureStep => ({
  id,
  say: 'Do it.',
  show: 'Do it so.',
  why: 'Because.',
  cautions: [],
  tools: [],
  parts: [],
  record: [],
  when: [],
  source: 'a book',
  ...more,
});
const kinds = [{ id: 'inspection', title: 'x', said: ['x'], procedures: ['own'], source: 'a book' }] as const;
const faultsOf = (...steps: readonly ProcedureStep[]) =>
  checkProcedures([{ id: 'own', title: 'Own', steps }], kinds, () => 'own.json').map(({ step: at, fault }) => `${at}: ${fault}`);

describe('checking', () => {
  test("the tool's own procedures have no fault", () => {
    expect(checkProcedures(procedures)).toEqual([]);
  });

  test.each([
    [step('a', { source: ' ' }), "a: has no 'source'"],
    [step('a', { cautions: ['dragons'] }), "a: names caution 'dragons', which data/cautions.json does not have"],
    [
      step('a', { record: [{ field: 'mood' as FieldId, stage: 'found', gate: true }] }),
      "a: gate 'mood' is no field of data/fields.json: nothing can fill it",
    ],
    [
      step('a', { when: [{ field: 'slung', is: ['sideways'], orUnknown: true }] }),
      "a: waits for slung to be 'sideways', which it never is",
    ],
    [
      step('a', { when: [{ field: 'slung', is: ['overSlung'] }] }),
      "a: waits for 'slung', which job 'inspection' records nowhere before it: never reached",
    ],
    [
      step('a', {
        when: [
          { field: 'slung', is: ['overSlung'], orUnknown: true },
          { field: 'slung', is: ['underSlung'] },
        ],
      }),
      'a: its conditions exclude each other: never reached',
    ],
    [
      step('a', { record: [{ field: 'endPlay', stage: 'fitted', gate: true, min: '5', max: '1', unit: 'in' }] }),
      "a: limits of 'endPlay' are crossed: 5 is over 1",
    ],
    [step('a', { record: [{ field: 'endPlay', stage: 'fitted', gate: true, max: '1' }] }), "a: limits of 'endPlay' have no unit"],
    [
      step('a', { record: [{ field: 'endPlay', stage: 'fitted', gate: true, max: '1', unit: 'lb' }] }),
      "a: limits of 'endPlay' are in lb, the field is in in",
    ],
    [step('a', { say: 'word '.repeat(31).trim() }), "a: 'say' has 31 words: 30 at most can be taken in by ear"],
  ])('%#: the fault is named with its step', (bad, fault) => {
    expect(faultsOf(bad)).toEqual([fault]);
  });

  test('a step that stands twice, a procedure that no job uses, a job that names none', () => {
    expect(faultsOf(step('a'), step('a'))).toEqual(["a: step 'a' stands twice", "a: step 'a' stands twice"]);
    const lost = checkProcedures([{ id: 'mine', title: 'Mine', steps: [] }], kinds);
    expect(lost).toEqual([
      { file: 'data/procedures/mine.json', step: '', fault: 'no kind of job uses it: its steps are never reached' },
      { file: 'data/jobs.json', step: '', fault: "job 'inspection' names procedure 'own', which is not there" },
    ]);
  });
});

describe("a shop's own", () => {
  const ids = (steps: readonly ProcedureStep[] = []) => steps.map(({ id }) => id);
  const own = {
    procedures: [{ id: 'own', title: 'Own', steps: [step('a'), step('b')] }],
    kinds: [{ ...kinds[0], procedures: ['own'] }],
  };
  const laidOver = (...shop: readonly ShopProcedure[]) => withShopProcedures(own, shop).procedures;

  test('replaces a step, adds one after another or last, drops one, adds a procedure', () => {
    const laid = laidOver(
      { id: 'own', steps: [step('b', { say: 'Our way.' }), { ...step('c'), after: 'a' }, step('d')] },
      { id: 'extra', title: 'Extra', steps: [step('x')] },
    );
    expect(laid.map(({ id, steps }) => [id, ids(steps)])).toEqual([
      ['own', ['a', 'c', 'b', 'd']],
      ['extra', ['x']],
    ]);
    expect(laid[0]?.steps[2]?.say).toBe('Our way.');
    expect(ids(laidOver({ id: 'own', steps: [], drop: ['a'] })[0]?.steps)).toEqual(['b']);
  });

  test('nothing of it stays in the step', () => {
    const laid = laidOver({ id: 'own', steps: [{ ...step('c'), after: 'a' }] });
    expect(laid[0]?.steps[1]).toEqual(step('c'));
  });

  test('a new procedure goes into the jobs that it names, after another or last', () => {
    const procedures = (more: Partial<ShopProcedure>) =>
      withShopProcedures(own, [{ id: 'wash', steps: [step('x')], ...more }]).kinds[0]?.procedures;
    expect(procedures({ jobs: ['inspection'] })).toEqual(['own', 'wash']);
    expect(procedures({ jobs: ['hubService'] })).toEqual(['own']);
    const after = withShopProcedures(plainPractice, [
      { id: 'wash', steps: [step('x')], jobs: ['hubService'], after: 'wheelsOn' },
    ]);
    expect(keys(planSteps('hubService', [], after)).join()).toMatch(/wheelsOn\/tyres,wash\/x,roadCheck/);
  });

  test.each([
    [{ id: 'own', drop: ['z'], steps: [] }, '', "drops step 'z', which is not there"],
    [{ id: 'own', steps: [{ ...step('c'), after: 'z' }] }, 'c', "comes after step 'z', which is not there"],
    [{ id: 'wash', jobs: ['party'], steps: [] }, '', "names job 'party'; there are inspection"],
    [
      { id: 'wash', jobs: ['inspection'], after: 'z', steps: [] },
      '',
      "comes after procedure 'z', which job 'inspection' does not have",
    ],
  ] as const)('%#: a name that nothing answers to is a fault', (shop, at, fault) => {
    expect(strayNames(own, shop)).toEqual([{ step: at, fault }]);
  });
});
