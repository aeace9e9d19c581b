// The shop's own rack, in and out as CSV: one axle a line. A bad line is left out and named; the good ones are taken.
import Papa from 'papaparse';
import { Fraction } from '#core';
import { type Field, type FieldId, fields, type StockAxle } from '#data';

export interface StockFault {
  /** Counts from 1; the header is line 1. */
  readonly line: number;
  readonly column: string;
  readonly fault: string;
}

const plain = ['id', 'title', 'place', 'quantity'];
const fieldById = new Map<string, Field>(fields.map((field) => [field.id, field]));
const linesMost = 20_000;

/** Reads `id,title,place,quantity,hubFace,springCentre,...`; empty cells are not known. */
export function readStock(csv: string): { readonly axles: readonly StockAxle[]; readonly faults: readonly StockFault[] } {
  const { data, meta, errors } = Papa.parse<Record<string, string>>(csv.replace(/^\uFEFF/, ''), {
    header: true,
    skipEmptyLines: 'greedy',
  });
  const header = meta.fields ?? [];
  const faults: StockFault[] = [
    ...header
      .filter((name) => !plain.includes(name) && !fieldById.has(name))
      .map((column) => ({ line: 1, column, fault: 'no such column' })),
    ...['id', 'title'].filter((name) => !header.includes(name)).map((column) => ({ line: 1, column, fault: 'is missing' })),
    ...(data.length === 0 ? [{ line: 2, column: '', fault: 'no axle stands under the header' }] : []),
    ...(data.length > linesMost ? [{ line: linesMost + 2, column: '', fault: `more than ${linesMost} axles` }] : []),
  ];
  if (faults.length > 0) return { axles: [], faults };
  faults.push(...errors.map(({ row = 0, message }) => ({ line: row + 2, column: '', fault: message })));
  const ids = new Map<string, number>();
  const read = data.map((cells, i) => ({ line: i + 2, axle: readAxle(cells, i + 2, ids, faults) }));
  const bad = new Set(faults.map(({ line }) => line));
  return { axles: read.filter(({ line }) => !bad.has(line)).map(({ axle }) => axle), faults };
}

/** The list in the columns that `readStock` takes. A text that a spreadsheet would compute is put in quotes of its own. */
export function writeStock(axles: readonly StockAxle[]): string {
  const used = fields.map(({ id }) => id).filter((id) => axles.some(({ values }) => values[id] !== undefined));
  const rows = axles.map(({ id, title, place, quantity, values }) => [
    ...[id, title, place ?? '', String(quantity)],
    ...used.map((field) => values[field] ?? ''),
  ]);
  return `${Papa.unparse({ fields: [...plain, ...used], data: rows }, { escapeFormulae: true })}\n`;
}

function readAxle(cells: Record<string, string>, line: number, ids: Map<string, number>, faults: StockFault[]): StockAxle {
  const cell = (name: string): string => (cells[name] ?? '').trim();
  const fault = (column: string, text: string): void => void faults.push({ line, column, fault: text });
  const id = cell('id');
  if (!/^[\w .-]{1,40}$/.test(id)) fault('id', 'letters, digits, blank, . and - only');
  if (ids.has(id)) fault('id', `is also on line ${ids.get(id)}`);
  ids.set(id, line);
  if (cell('title') === '' || cell('title').length > 120) fault('title', '1 to 120 characters');
  const quantity = cell('quantity') === '' ? 1 : Number(cell('quantity'));
  if (!Number.isInteger(quantity) || quantity < 0 || quantity > 9999) fault('quantity', 'a whole number');
  const values: Partial<Record<FieldId, string>> = {};
  for (const [name, field] of fieldById) {
    const text = cell(name);
    if (text === '') continue;
    const value = readValue(field, text);
    if (value === null) fault(name, wanted(field));
    else values[field.id] = value;
  }
  return { id, title: cell('title'), quantity, values, invented: false, ...(cell('place') ? { place: cell('place') } : {}) };
}

/** Exact and inside the field's limits, or null. */
function readValue({ min, max, choices, unit }: Field, text: string): string | null {
  if (choices) return choices.includes(text) ? text : null;
  if (unit === undefined) return text.length <= 40 && /^[\w/.-]+$/.test(text) ? text : null;
  try {
    const value = new Fraction(text);
    if ((min !== undefined && value.lt(min)) || (max !== undefined && value.gt(max))) return null;
    return value.toFraction();
  } catch {
    return null;
  }
}

function wanted({ min, max, choices, unit }: Field): string {
  if (choices) return `one of ${choices.join(', ')}`;
  if (unit === undefined) return 'letters, digits, / . and - only';
  return min === undefined ? `a number in ${unit}` : `a number in ${unit} from ${min} to ${max}`;
}
