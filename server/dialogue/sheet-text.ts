// The job sheet in plain text, for a terminal or a printer.
import type { BillRow } from './answers/fitment-parts.ts';
import type { Sheet, SheetRow, SheetValue } from './sheet.ts';

/** At most about a hundred wide. A question mark stands before what nobody confirmed. */
export function sheetText(sheet: Sheet): string {
  const dates = [`opened ${day(sheet.openedAt)}`, sheet.closedAt ? `closed ${day(sheet.closedAt)}` : sheet.status];
  return [
    `JOB SHEET ${sheet.number}: ${sheet.title}${sheet.invented ? ' (INVENTED)' : ''}`,
    [sheet.shop, sheet.kind, sheet.customer, ...dates].filter(Boolean).join(', '),
    ...part(`Measured${' '.repeat(30)}found${' '.repeat(17)}after the work`, sheet.measurements.map(line)),
    ...part('Torque, end play and heat', sheet.proof.flatMap(proofLines)),
    ...part('Axle', axle(sheet)),
    ...part('Does it fit', verdict(sheet)),
    ...part('Parts', sheet.parts.length > 0 ? [sheet.parts.join(', ')] : []),
    ...part('Bill of parts', sheet.bill.flatMap(billLines)),
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
      sheet.changed.map(
        ({ what, was, to, reason }) => `${what} ${was.shown} ${to === undefined ? 'struck' : `-> ${to}`} (${reason})`,
      ),
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

const value = (cell: SheetValue | undefined): string =>
  cell ? [reading(cell), ...cell.earlier.map((before) => `before: ${reading(before)}`)].join(', ') : '';

const reading = ({ sure, shown }: SheetValue): string => `${sure ? '' : '? '}${shown}`;

const proofLines = (row: SheetRow): readonly string[] => [line(row), ...(row.judged ? [`  ${row.judged}`] : [])];

function billLines({ part: name, quantity, what, why, rests, sure }: BillRow): readonly string[] {
  const head = `${sure ? '' : '? '}${[quantity, name].filter(Boolean).join(' ')}${what ? `: ${what}` : ''}`;
  return [head, `    ${[why, rests.length > 0 && `rests on ${rests.join(', ')}`].filter(Boolean).join('; ')}`];
}

const axle = ({ axle: chosen }: Sheet): readonly string[] => (chosen ? [chosen.title, ...chosen.figures] : []);

function verdict({ verdict: given }: Sheet): readonly string[] {
  if (!given) return [];
  const unsure = given.unsure.length > 0 ? [`rests on unconfirmed: ${given.unsure.join(', ')}`] : [];
  return [`${given.text}: ${given.taken ? 'taken' : 'not taken'}`, ...given.reasons, ...unsure];
}

function part(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((text) => `  ${text}`)];
}
