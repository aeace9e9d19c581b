// The job sheet in rows for a spreadsheet: one a value, step, note, caution, reminder and open point.
import type { Sheet, SheetRow, SheetValue } from './sheet.ts';

export const sheetHeader = [
  ...['part', 'item', 'where', 'stage', 'shown', 'value', 'unit', 'status', 'at', 'who', 'remark'],
] as const;

type Cells = Partial<Record<(typeof sheetHeader)[number], string | undefined>>;

/** In the columns of `sheetHeader`. Values stand exact in `value` and `unit`; those corrected or struck stay, with their status. */
export function sheetRows(sheet: Sheet): readonly (readonly string[])[] {
  return lines(sheet).map((cells) => sheetHeader.map((name) => cells[name] ?? ''));
}

function lines(sheet: Sheet): readonly Cells[] {
  const { verdict, axle, changed } = sheet;
  return [
    { part: 'job', item: sheet.title, status: sheet.status, at: sheet.openedAt, remark: about(sheet) },
    ...sheet.measurements.flatMap((row) => valuesOf('measured', row)),
    ...sheet.proof.flatMap((row) => valuesOf('proved', row)),
    ...(axle ? [{ part: 'axle', item: axle.title, remark: axle.figures.join('; ') }] : []),
    ...(verdict ? [{ part: 'verdict', item: verdict.text, status: taken(verdict), remark: verdict.reasons.join('; ') }] : []),
    ...sheet.parts.map((item) => ({ part: 'part', item })),
    ...sheet.bill.map(({ part, quantity, what, why, rests, sure }) => ({
      ...{ part: 'bill', item: part, shown: what, value: quantity, status: sure ? 'told' : 'not told' },
      remark: [why, rests.length > 0 && `rests on ${rests.join(', ')}`].filter(Boolean).join('; '),
    })),
    ...sheet.skipped.map(({ step, reason }) => ({ part: 'skipped', item: step, remark: reason })),
    ...sheet.notes.map(({ text, closed, at, who }) => ({ part: 'note', item: text, at, who, ...closedWhy(closed) })),
    ...sheet.cautions.map((item) => ({ part: 'caution', item, status: 'given' })),
    ...changed.map(({ what, was, to, reason }) => ({
      ...{ part: 'changed', item: what, ...valueCells(was), status: to === undefined ? 'struck' : 'corrected' },
      remark: [to && `now ${to}`, reason].filter(Boolean).join('; '),
    })),
    ...sheet.reminders.map(({ text, due, done }) => ({
      ...{ part: 'reminder', item: text, status: done ? 'done' : 'open', remark: due },
    })),
    ...sheet.open.map(({ kind, text, safety }) => ({ part: 'open', item: text, status: kind, remark: safety ? 'safety' : '' })),
  ];
}

const about = ({ number, shop, kind, customer, invented }: Sheet): string =>
  [`job ${number}`, shop, kind, customer, invented && 'invented'].filter(Boolean).join('; ');

const taken = (verdict: { readonly taken: boolean }): string => (verdict.taken ? 'taken' : 'not taken');

const closedWhy = (closed: string | undefined): Cells => (closed === undefined ? {} : { status: 'closed', remark: closed });

const valueCells = ({ shown, value, unit, at, who }: SheetValue): Cells => ({ shown, value, unit, at, who });

function valuesOf(part: string, { label, where, found, fitted, judged }: SheetRow): readonly Cells[] {
  const cells = (stage: string, cell: SheetValue): Cells => ({
    ...{ part, item: label, where, stage, ...valueCells(cell) },
    status: cell.sure ? 'confirmed' : 'not confirmed',
    remark: said(cell),
  });
  const of = (stage: string, cell: SheetValue | undefined): readonly Cells[] =>
    cell ? [...cell.earlier, cell].map((each) => cells(stage, each)) : [];
  const said = ({ notes, id }: SheetValue) => [id === fitted?.id ? judged : '', ...notes].filter(Boolean).join('; ');
  return [...of('found', found), ...of('fitted', fitted)];
}
