// The shop's own rack, in and out as CSV: one axle a line. A bad line is left out and named; the good ones are taken.
import Papa from 'papaparse';
import { isFault, readStockRow, stockColumns, writeStockRow } from '#core';
import { fields, type StockAxle } from '#data';
import type { StockLineFault } from '#wire';

const columns: ReadonlySet<string> = new Set(['id', 'title', 'place', 'quantity', ...fields.map(({ id }) => id)]);
const linesMost = 20_000;

export interface ReadStock {
  readonly axles: readonly StockAxle[];
  readonly faults: readonly StockLineFault[];
}

/** Reads `id,title,place,quantity,hubFace,springCentre,...`; empty cells are not known. `file`: the name that a fault carries. */
export function readStock(csv: string, file: string): ReadStock {
  const { data, meta, errors } = Papa.parse<Record<string, string>>(csv.replace(/^\uFEFF/, ''), {
    header: true,
  });
  const fault = (line: number, column: string, text: string): StockLineFault => ({ file, line, column, fault: text });
  const ofHeader = headerFaults(meta.fields ?? [], data.filter((cells) => !isBlank(cells)).length).map(([line, column, text]) =>
    fault(line, column, text),
  );
  if (ofHeader.length > 0) return { axles: [], faults: ofHeader };
  // Blank lines are passed over, not left out: a fault is named by its line in the file.
  const lines = linesOf(meta.fields ?? [], data);
  const faults = errors
    .map(({ row = 0, type, message }) => ({ at: type === 'Quotes' ? row - 1 : row, message }))
    .filter(({ at }) => !isBlank(data[at] ?? {}))
    .map(({ at, message }) => fault(lines[at] ?? 1, '', message));
  const broken = new Set(faults.map(({ line }) => line));
  const lineOf = new Map<string, number>();
  const axles: StockAxle[] = [];
  for (const [at, cells] of data.entries()) {
    const line = lines[at] ?? 1;
    if (broken.has(line) || isBlank(cells)) continue;
    const row = readStockRow(cells);
    const first = lineOf.get((cells.id ?? '').trim());
    if (first !== undefined) faults.push(fault(line, 'id', `is also on line ${first}`));
    else lineOf.set((cells.id ?? '').trim(), line);
    if (isFault(row)) faults.push(...row.map(({ column, value, expected }) => fault(line, column, wordsOf(expected, value))));
    else if (first === undefined) axles.push(row);
  }
  return { axles, faults: faults.toSorted((a, b) => a.line - b.line) };
}

/** The line each row begins on, the header's being 1: a field in quotes may run over several. */
function linesOf(header: readonly string[], rows: readonly Record<string, string>[]): number[] {
  const starts = [1 + height(header)];
  for (const row of rows) starts.push((starts.at(-1) ?? 1) + height(Object.values(row).flat()));
  return starts;
}

const height = (cells: readonly string[]): number => 1 + (cells.join('').match(/\r\n|\r|\n/g)?.length ?? 0);

const isBlank = (cells: Record<string, string>): boolean =>
  Object.values(cells).every((cell) => typeof cell === 'string' && cell.trim() === '');

type Placed = readonly [line: number, column: string, text: string];

function headerFaults(header: readonly string[], count: number): Placed[] {
  return [
    ...header.filter((name) => !columns.has(name)).map((column): Placed => [1, column, 'no such column']),
    ...['id', 'title'].filter((name) => !header.includes(name)).map((column): Placed => [1, column, 'is missing']),
    ...(count === 0 ? [[2, '', 'no axle: one line each, below the names of the columns'] as const] : []),
    ...(count > linesMost ? [[linesMost + 2, '', `more than ${linesMost} axles`] as const] : []),
  ];
}

const wordsOf = (expected: string, value: string): string =>
  value === '' ? expected : `${expected}; not "${value.slice(0, 40)}"`;

/** The list in the columns that `readStock` takes. A text that a spreadsheet would compute is put in quotes of its own. */
export function writeStock(axles: readonly StockAxle[]): string {
  const header = stockColumns(axles);
  const rows = axles.map(writeStockRow).map((row) => header.map((column) => row[column] ?? ''));
  return `${Papa.unparse({ fields: header, data: rows }, { escapeFormulae: true })}\n`;
}
