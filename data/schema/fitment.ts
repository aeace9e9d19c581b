// Row schemas of the fitment tables and of the demo's rack.
import * as z from 'zod';
import {
  bearings,
  boltPatterns,
  demoStock,
  fitRules,
  hubSets,
  letterTyres,
  loadIndices,
  seals,
  speedSymbols,
  tyreLoads,
  tyreSizes,
} from '../index.ts';
import { exact, field, sourced, type Table, unit, word } from './rows.ts';

const base = { id: word, ...sourced };
const pair = z.enum(bearings.map(({ id }) => id));

const bearing = z.strictObject({
  ...base,
  cone: word,
  cup: word,
  bore: exact,
  od: exact,
  coneWidth: exact,
  cupWidth: exact,
  width: exact,
  boreMm: exact,
  odMm: exact,
});

const hubSet = z.strictObject({
  ...base,
  capacity: exact,
  spindle: word,
  inner: pair,
  outer: pair,
  seal: z.enum(seals.map(({ id }) => id)).optional(),
});

const stock = z.strictObject({
  id: word,
  title: word,
  place: word.optional(),
  quantity: z.int().min(0),
  values: z.partialRecord(field, word),
  invented: z.literal(true),
});

const table = (name: string, rows: readonly unknown[], row: z.ZodType): Table => ({ file: `data/${name}.json`, rows, row });

export const fitmentTables: readonly Table[] = [
  table('fitment/rules', fitRules, z.strictObject({ ...base, value: exact, unit, about: word })),
  table('fitment/load-index', loadIndices, z.strictObject({ ...base, index: z.int(), kg: exact })),
  table('fitment/speed-symbols', speedSymbols, z.strictObject({ ...base, kmh: exact })),
  table('fitment/tyre-sizes', tyreSizes, z.strictObject({ ...base, overall: exact })),
  table('fitment/letter-tyres', letterTyres, z.strictObject({ ...base, metric: word })),
  table('fitment/tyre-loads', tyreLoads, z.strictObject({ ...base, size: word, loadRange: word, load: exact, pressure: exact })),
  table('fitment/bolt-patterns', boltPatterns, z.strictObject({ ...base, studs: z.int().min(3), circle: exact, unit })),
  table('fitment/bearings', bearings, bearing),
  table('fitment/seals', seals, z.strictObject({ ...base, inside: exact, outside: exact })),
  table('fitment/hub-sets', hubSets, hubSet),
  table('demo/stock', demoStock, stock),
];
