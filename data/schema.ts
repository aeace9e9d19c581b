// Checks every trade table row by row. Used when the server starts and in tests, never on the page.
import * as z from 'zod';
import { checkProcedures } from './check-procedures.ts';
import fieldTable from './fields.json' with { type: 'json' };
import glossaryTable from './glossary.json' with { type: 'json' };
import mishearingTable from './mishearings.json' with { type: 'json' };
import { fitmentTables } from './schema/fitment.ts';
import { exact, field, sourced, type Table, unit, word } from './schema/rows.ts';
import { serviceTables, shopProcedure } from './schema/service.ts';
import unitTable from './units.json' with { type: 'json' };

/** Faults of a shop's procedures laid over our own, each with its file and step. */
export { checkProcedures, type ProcedureFault } from './check-procedures.ts';
export { exact, shopProcedure, sourced, word };

/** What is wrong with one row: `row` counts from 1; `column` is empty where the whole row is meant. */
export interface TableFault {
  readonly file: string;
  readonly row: number;
  readonly column: string;
  readonly fault: string;
}

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

const mishearingRow = z.strictObject({
  heard: word,
  meant: word,
  where: z.enum(['digit', 'denominator', 'part', 'number', 'joint', 'field']).optional(),
  reason: word,
  ...sourced,
});

const glossaryRow = z.strictObject({
  id: word,
  said: z.array(word).min(1),
  means: word,
  more: word.optional(),
  field: field.optional(),
  ...sourced,
});

/** One line a table. A builder who adds a table adds its line here. */
const tables: readonly Table[] = [
  { file: 'data/units.json', rows: unitTable.rows, row: unitRow },
  { file: 'data/fields.json', rows: fieldTable.rows, row: fieldRow },
  { file: 'data/mishearings.json', rows: mishearingTable.rows, row: mishearingRow },
  { file: 'data/glossary.json', rows: glossaryTable.rows, row: glossaryRow },
  ...fitmentTables,
  ...serviceTables,
];

/** Every fault in every table; empty when all is well. */
export function checkTables(): TableFault[] {
  const inSteps = checkProcedures().map(({ file, step, fault }) => ({ file, row: stepRow(file, step), column: step, fault }));
  return [...tables.flatMap(checkTable), ...inSteps];
}

/** Place of a step in its file, from 1; 0 where the whole procedure is meant. */
function stepRow(file: string, step: string): number {
  const rows = tables.find((table) => table.file === file)?.rows ?? [];
  return rows.findIndex((row) => (row as { readonly id?: unknown } | null)?.id === step) + 1;
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
