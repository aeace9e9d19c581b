// Row schemas of the service tables, the cautions, the kinds of job and the procedures.
import * as z from 'zod';
import {
  alignmentLimits,
  bearingAdjustments,
  bearingDamage,
  boltGrades,
  brakeMagnets,
  cautions,
  drumLimits,
  endPlayLimits,
  greaseGrades,
  greaseServices,
  greaseThickeners,
  hubHeat,
  jobKinds,
  practices,
  procedures,
  retorque,
  serviceIntervals,
  threadConditions,
  threads,
  tighteningOrders,
  told,
  uBolts,
  wheelNuts,
  wireGauges,
} from '../index.ts';
import { exact, field, sourced, type Table, unit, word } from './rows.ts';

const base = { id: word, ...sourced };
const words = z.array(word);
const system = z.enum(['in', 'mm']);
const letter = z.enum(['C', 'B', 'I']);

const condition = z.strictObject({ field, is: words, orUnknown: z.boolean().optional() });
const recorded = z.strictObject({
  field,
  stage: z.enum(['found', 'fitted']),
  min: exact.optional(),
  max: exact.optional(),
  unit: unit.optional(),
  gate: z.boolean(),
  when: z.array(condition).optional(),
});
const step = z.strictObject({
  ...base,
  say: word,
  show: word,
  why: word,
  cautions: words,
  tools: words,
  parts: words,
  record: z.array(recorded),
  when: z.array(condition),
  repeat: z.enum(['side', 'axle', 'wheel']).optional(),
});

/** A file of a shop: lists that it leaves out are empty. */
export const shopProcedure = z.strictObject({
  id: word,
  title: word.optional(),
  jobs: words.optional(),
  after: word.optional(),
  drop: words.optional(),
  steps: z
    .array(
      step.extend({
        after: word.optional(),
        cautions: words.default([]),
        tools: words.default([]),
        parts: words.default([]),
        record: z.array(recorded).default([]),
        when: z.array(condition).default([]),
      }),
    )
    .default([]),
});

const kebab = (id: string) => id.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`);

const plain = (name: string, rows: readonly unknown[], columns: z.core.$ZodLooseShape): Table => ({
  file: `data/service/${name}.json`,
  rows,
  row: z.strictObject({ ...base, ...columns }),
});

export const serviceTables: readonly Table[] = [
  { file: 'data/cautions.json', rows: cautions, row: z.strictObject({ ...base, text: word }) },
  {
    file: 'data/jobs.json',
    rows: jobKinds,
    row: z.strictObject({ ...base, title: word, said: words.min(1), procedures: words.min(1), replaces: z.boolean().optional() }),
  },
  {
    file: 'data/told.json',
    rows: told,
    row: z.strictObject({ ...base, said: words.min(1), left: word.optional() }),
  },
  ...procedures.map(({ id, steps }) => ({ file: `data/procedures/${kebab(id)}.json`, rows: steps, row: step })),
  plain('threads', threads, { diameter: exact, unit: system, tpi: exact.optional(), pitch: exact.optional(), area: exact }),
  plain('bolt-grades', boltGrades, {
    grade: word,
    unit: system,
    over: exact,
    to: exact,
    proof: exact,
    yield: exact,
    tensile: exact,
    strengthUnit: z.enum(['ksi', 'MPa']),
  }),
  plain('thread-conditions', threadConditions, { said: words.min(1), used: exact, low: exact, high: exact }),
  plain('wheel-nuts', wheelNuts, {
    stud: exact.optional(),
    wheelDiameters: z.array(exact).optional(),
    wheelType: z.enum(['steel', 'aluminium']).optional(),
    stages: z.array(z.tuple([exact, exact])).min(1),
  }),
  plain('tightening-orders', tighteningOrders, { studs: z.int().min(3), order: z.array(z.int().min(1)) }),
  plain('u-bolts', uBolts, { thread: word, grade: z.enum(['5', '8']), plated: exact, unplated: exact, least: exact.optional() }),
  plain('bearing-adjustments', bearingAdjustments, {
    about: word,
    lock: z.enum(['cotter', 'tangKeeper', 'keyedWasher']),
    seat: exact.optional(),
    seatNew: exact.optional(),
    second: exact.optional(),
    backOff: z.array(exact).optional(),
    said: word,
  }),
  plain('end-play-limits', endPlayLimits, { about: word, min: exact, max: exact, use: z.enum(['usual', 'widest', 'light']) }),
  plain('bearing-damage', bearingDamage, {
    iso: z
      .string()
      .regex(/^5\.[1-6]$/)
      .optional(),
    term: word,
    said: words.min(1),
    reuse: z.enum(['no', 'look', 'yes']),
    why: word,
  }),
  plain('grease-thickeners', greaseThickeners, { said: words.min(1), mixes: z.array(letter).length(greaseThickeners.length) }),
  plain('grease-grades', greaseGrades, { min: exact, max: exact }),
  plain('grease-services', greaseServices, { about: word }),
  plain('brake-magnets', brakeMagnets, { drums: z.array(exact).min(1), low: exact, high: exact }),
  plain('wire-gauges', wireGauges, { ohmPer1000ft: exact }),
  plain('alignment-limits', alignmentLimits, {
    of: z.enum(['square', 'spacing', 'toe']),
    limit: exact,
    usual: z.boolean(),
    about: word,
  }),
  plain('practices', practices, { said: words.min(1), say: word }),
  plain('retorque', retorque, { of: field, miles: z.array(exact), months: exact.optional(), text: word }),
  plain('service-intervals', serviceIntervals, {
    steps: words,
    text: word,
    miles: exact.optional(),
    months: exact.optional(),
    usual: z.boolean(),
  }),
  plain('hub-heat', hubHeat, { kind: z.enum(['absolute', 'apart']), above: exact, act: word }),
  plain('drum-limits', drumLimits, { nominal: exact, max: exact }),
];
