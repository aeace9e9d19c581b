// One row of the shop's stock list -> an axle of the rack, or what is wrong with it. Reading the file is not done here.
import { type Field, type FieldId, fieldOf, fields, type StockAxle } from '#data';
import { convert, dimensionOf, type Fraction, quantity, type UnitId } from '../quantity/index.ts';
import { numberOf } from './number.ts';
import { parsePattern } from './pattern.ts';

export type StockFault =
  | 'noId'
  | 'notAName'
  | 'noTitle'
  | 'unknownColumn'
  | 'notANumber'
  | 'outOfBand'
  | 'notAChoice'
  | 'notAPattern'
  | 'noQuantity';

/** What is wrong in which column; `expected` says what would do. */
export interface RowFault {
  readonly column: string;
  readonly value: string;
  readonly code: StockFault;
  readonly expected: string;
}

const plainColumns = ['id', 'title', 'place', 'quantity'] as const;
const ids: ReadonlySet<string> = new Set(fields.map(({ id }) => id));

/** Columns of an import and an export, in order. */
export function stockColumns(axles: readonly StockAxle[]): string[] {
  const used = fields.filter(({ id }) => axles.some(({ values }) => values[id] !== undefined)).map(({ id }) => id);
  return [...plainColumns, ...used];
}

/** A row as text by column -> an axle, or every fault of the row. Lengths may be "72 3/8", "72.375" or "1838 mm"; a blank cell is a value not known. */
export function readStockRow(record: Readonly<Record<string, string>>): StockAxle | readonly RowFault[] {
  const cell = (column: string) => record[column]?.trim() ?? '';
  const faults = headFaults(cell);
  const values: Partial<Record<FieldId, string>> = {};
  for (const [column, text] of Object.entries(record)) {
    if (typeof text !== 'string' || text.trim() === '' || plainColumns.some((plain) => plain === column)) continue;
    const read = isField(column) ? readCell(fieldOf(column), text.trim()) : noColumn(column, text);
    if (typeof read !== 'string') faults.push(read);
    else if (isField(column)) values[column] = read;
  }
  if (faults.length > 0) return faults;
  const place = cell('place');
  const quantity = Number(cell('quantity') || '1');
  return { id: cell('id'), title: cell('title'), ...(place && { place }), quantity, values, invented: false };
}

const noColumn = (column: string, text: string) =>
  fault(column, text, 'unknownColumn', 'a field of data/fields.json, such as "hubFace"');

const plainName = /^[\w .-]{1,40}$/;

function headFaults(cell: (column: string) => string): RowFault[] {
  const faults: RowFault[] = [];
  if (cell('id') === '') faults.push(fault('id', '', 'noId', 'a name that no other row has'));
  else if (!plainName.test(cell('id')))
    faults.push(fault('id', cell('id'), 'notAName', 'letters, digits, blank, . and - only, at most 40'));
  if (cell('title').length > 120) faults.push(fault('title', cell('title'), 'noTitle', 'at most 120 characters'));
  if (cell('title') === '') faults.push(fault('title', '', 'noTitle', 'a few words, such as "3,500 pound idler axle"'));
  if (!/^\d{0,6}$/.test(cell('quantity')))
    faults.push(fault('quantity', cell('quantity'), 'noQuantity', 'a whole number, 0 or more'));
  return faults;
}

export const isFault = (row: StockAxle | readonly RowFault[]): row is readonly RowFault[] => Array.isArray(row);

/** The row as text again, for an export. */
export function writeStockRow({ id, title, place, quantity, values }: StockAxle): Record<string, string> {
  return { id, title, place: place ?? '', quantity: String(quantity), ...values };
}

const isField = (column: string): column is FieldId => ids.has(column);

function fault(column: string, value: string, code: StockFault, expected: string): RowFault {
  return { column, value, code, expected };
}

function readCell(field: Field, text: string): string | RowFault {
  const { id, choices, unit } = field;
  if (choices) return choices.includes(text) ? text : fault(id, text, 'notAChoice', `one of ${choices.join(', ')}`);
  if (id === 'boltPattern')
    return parsePattern(text) ? text : fault(id, text, 'notAPattern', 'studs and circle, such as "5x9/2" or "5x114.3 mm"');
  if (unit === undefined || id === 'brakeSize')
    return /^[\w/. -]{1,40}$/.test(text) ? text : fault(id, text, 'notAName', 'letters, digits, / . and - only');
  const value = measureIn(text, unit);
  const { min, max } = field;
  const band = min !== undefined && max !== undefined ? `from ${min} to ${max} ${unit === '1' ? '' : unit}`.trim() : `in ${unit}`;
  if (!value) return fault(id, text, 'notANumber', `a number such as "${min ?? '1 1/2'}", ${band}`);
  if (min !== undefined && max !== undefined && (value.lt(min) || value.gt(max))) {
    return fault(id, text, 'outOfBand', band);
  }
  return value.toFraction();
}

const written = /^(?:(-?\d+)[ -])?(-?\d+(?:\.\d+|\/[1-9]\d*)?)\s*("|[a-z]+)?$/i;

/** "72 3/8", "72-3/8", "72.375 in", "1838 mm" in the wanted unit; undefined where it is no such number. */
function measureIn(text: string, unit: UnitId): Fraction | undefined {
  const [, whole, rest = '', said] = written.exec(text.replaceAll(',', '')) ?? [];
  const part = numberOf(rest);
  if (!part || (whole !== undefined && !rest.includes('/'))) return undefined;
  const value = whole === undefined ? part : part.add(whole);
  const from = said === undefined ? unit : said === '"' ? 'in' : unitNamed(said);
  return from && dimensionOf(from) === dimensionOf(unit) ? convert(quantity(value, from), unit).value : undefined;
}

function unitNamed(text: string): UnitId | undefined {
  const known: Readonly<Record<string, UnitId>> = { in: 'in', mm: 'mm', cm: 'cm', lb: 'lb', lbs: 'lb', kg: 'kg' };
  return known[text.toLowerCase()];
}
