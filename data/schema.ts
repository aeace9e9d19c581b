// Checks every trade table row by row. Used when the server starts and in tests, never on the page.
import * as z from 'zod';
import demoStock from './demo/stock.json' with { type: 'json' };
import fieldTable from './fields.json' with { type: 'json' };
import fitRules from './fit-rules.json' with { type: 'json' };
import mishearingTable from './mishearings.json' with { type: 'json' };
import unitTable from './units.json' with { type: 'json' };

/** What is wrong with one row: `row` counts from 1; `column` is empty where the whole row is meant. */
export interface TableFault {
  readonly file: string;
  readonly row: number;
  readonly column: string;
  readonly fault: string;
}

interface Table {
  readonly file: string;
  readonly rows: readonly unknown[];
  readonly row: z.ZodType;
}

/** An exact number written as text: "72", "579/8", "-3/4", "0.45359237". */
export const exact = z.string().regex(/^-?\d+(\.\d+|\/[1-9]\d*)?$/, 'expected an exact number such as "579/8"');
export const word = z.string().min(1);
export const sourced = { source: word };

const unit = z.enum(unitTable.rows.map(({ id }) => id));
const field = z.enum(fieldTable.rows.map(({ id }) => id));

const unitRow = z.strictObject({ id: word, dimension: word, factor: exact, offset: exact.optional(), ...sourced });

const fieldRow = z
  .strictObject({
    id: word,
    label: word,
    unit: unit.optional(),
    min: exact.optional(),
    max: exact.optional(),
    step: exact.optional(),
    choices: z.array(word).min(2).optional(),
    perSide: z.boolean(),
    risk: z.enum(['asked', 'plain']),
    said: z.array(word).min(1),
    ...sourced,
  })
  .refine(({ min, max }) => (min === undefined) === (max === undefined), { path: ['max'], error: 'min and max go together' });

const fitRuleRow = z.strictObject({ id: word, value: exact, unit, about: word, ...sourced });

const stockRow = z.strictObject({
  id: word,
  title: word,
  place: word.optional(),
  quantity: z.int().min(0),
  values: z.partialRecord(field, word),
  invented: z.literal(true),
});

const mishearingRow = z.strictObject({
  heard: word,
  meant: word,
  where: z.enum(['digit', 'denominator', 'number', 'field']).optional(),
  reason: word,
  ...sourced,
});

/** One line a table. A builder who adds a table adds its line here. */
const tables: readonly Table[] = [
  { file: 'data/units.json', rows: unitTable.rows, row: unitRow },
  { file: 'data/fields.json', rows: fieldTable.rows, row: fieldRow },
  { file: 'data/mishearings.json', rows: mishearingTable.rows, row: mishearingRow },
  { file: 'data/fit-rules.json', rows: fitRules.rows, row: fitRuleRow },
  { file: 'data/demo/stock.json', rows: demoStock.rows, row: stockRow },
];

/** Every fault in every table; empty when all is well. */
export function checkTables(): TableFault[] {
  return tables.flatMap(checkTable);
}

/** The faults of one table: each row against its schema, and no id twice. */
export function checkTable({ file, rows, row: schema }: Table): TableFault[] {
  const seen = new Set<unknown>();
  return rows.flatMap((row, at) => {
    const read = schema.safeParse(row);
    const faults = read.success ? [] : read.error.issues.map(({ path, message }) => ({ column: path.join('.'), fault: message }));
    const id = (row as { readonly id?: unknown } | null)?.id;
    if (id !== undefined && seen.has(id)) faults.push({ column: 'id', fault: `'${String(id)}' stands twice` });
    seen.add(id);
    return faults.map((fault) => ({ file, row: at + 1, ...fault }));
  });
}
