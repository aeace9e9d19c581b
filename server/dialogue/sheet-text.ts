// The job sheet in plain text, for a terminal or a printer, and in rows for a spreadsheet.
import type { Sheet, SheetRow, SheetValue } from './sheet.ts';

/** At most about a hundred wide. A question mark stands before what nobody confirmed. */
export function sheetText(sheet: Sheet): string {
  const dates = [`opened ${day(sheet.openedAt)}`, sheet.closedAt ? `closed ${day(sheet.closedAt)}` : sheet.status];
  return [
    `JOB SHEET ${sheet.number}: ${sheet.title}${sheet.invented ? ' (INVENTED)' : ''}`,
    [sheet.shop, sheet.kind, sheet.customer, ...dates].filter(Boolean).join(', '),
    ...part(`Measured${' '.repeat(30)}found${' '.repeat(17)}after the work`, sheet.measurements.map(line)),
    ...part('Proved', sheet.proof.map(line)),
    ...part(
      'Axle',
      [sheet.axle, verdict(sheet)].filter((text) => text !== undefined),
    ),
    ...part('Parts', sheet.parts.length > 0 ? [sheet.parts.join(', ')] : []),
    ...part('Steps', [
      `${sheet.steps.done} of ${sheet.steps.of} done`,
      ...sheet.skipped.map(({ step, reason }) => `skipped: ${step} (${reason})`),
    ]),
    ...part(
      'Notes',
      sheet.notes.map(({ text, closed }) => (closed === undefined ? text : `${text} (closed: ${closed})`)),
    ),
    ...part('Cautions given', sheet.cautions),
    ...part(
      'Changed',
      sheet.changed.map(({ what, to, reason }) => `${what} ${to === undefined ? 'struck' : `-> ${to}`} (${reason})`),
    ),
    ...part(
      'Remember',
      sheet.reminders.filter(({ done }) => !done).map(({ text, due }) => (due ? `${text}: ${due}` : text)),
    ),
    ...part(
      'Still open',
      sheet.open.map(({ text, safety }) => `${safety ? '! ' : ''}${text}`),
    ),
    '',
    "? = not confirmed. The part maker's published values come first. This sheet signs for nobody.",
    'Signature: ______________________   Date: ______________',
  ].join('\n');
}

const column = (text: string, width: number): string => `${text.padEnd(width - 2)}  `;

const day = (iso: string): string => iso.slice(0, 16).replace('T', ' ');

const line = ({ label, where, found, fitted }: SheetRow): string =>
  `${column([label, where].filter(Boolean).join(', '), 38)}${column(value(found), 22)}${value(fitted)}`.trimEnd();

const value = (cell: SheetValue | undefined): string => (cell ? `${cell.sure ? '' : '? '}${cell.shown}` : '');

function verdict({ verdict: given }: Sheet): string | undefined {
  if (!given) return undefined;
  const unsure = given.unsure.length > 0 ? `; rests on unconfirmed ${given.unsure.join(', ')}` : '';
  return `verdict: ${given.text}${given.taken ? ', taken' : ', not taken'}${unsure}`;
}

function part(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((text) => `  ${text}`)];
}

export const sheetHeader = ['part', 'item', 'where', 'found', 'after', 'status', 'remark'] as const;

/** One row a line of the sheet, in the columns of `sheetHeader`. */
export function sheetRows(sheet: Sheet): readonly (readonly string[])[] {
  const plain = (kind: string, item: string, status = '', remark = '') => [kind, item, '', '', '', status, remark];
  const measured = (kind: string) => (row: SheetRow) => [
    ...[kind, row.label, row.where, row.found?.shown ?? '', row.fitted?.shown ?? ''],
    [row.found, row.fitted].some((cell) => cell?.sure === false) ? 'not confirmed' : 'confirmed',
    '',
  ];
  return [
    plain('job', sheet.title, sheet.status, sheet.invented ? 'invented' : ''),
    ...sheet.measurements.map(measured('measured')),
    ...sheet.proof.map(measured('proved')),
    ...(sheet.verdict
      ? [plain('verdict', sheet.verdict.text, sheet.verdict.taken ? 'taken' : 'not taken', sheet.verdict.unsure.join('; '))]
      : []),
    ...sheet.skipped.map(({ step, reason }) => plain('skipped', step, '', reason)),
    ...sheet.notes.map(({ text, closed }) => plain('note', text, closed === undefined ? '' : 'closed', closed)),
    ...sheet.cautions.map((text) => plain('caution', text, 'given')),
    ...sheet.changed.map(({ what, to, reason }) => plain('changed', what, to ?? 'struck', reason)),
    ...sheet.reminders.map(({ text, due, done }) => plain('reminder', text, done ? 'done' : 'open', due)),
    ...sheet.open.map(({ kind, text, safety }) => plain('open', text, kind, safety ? 'safety' : '')),
  ];
}
