// The job sheet for a terminal or a plain printer.
import type { JobView } from '#dialogue';
import type { JobRecord } from '#log/events';

/** Plain text, at most 100 wide where the words allow. Unconfirmed values are marked with `?`. */
export function sheetText(job: JobRecord, view: JobView): string {
  const values = view.card.map(({ label, side, axle, stage, shown, status }) => {
    const place = [axle, side, stage].filter(Boolean).join(' ');
    return `${status === 'heard' ? '?' : ' '} ${label.padEnd(34)} ${place.padEnd(14)} ${shown}`;
  });
  const changed = job.values.flatMap(({ field, value, status, reason }) =>
    status === 'corrected' || status === 'struck'
      ? [`  ${field} ${value} ${status}${reason === undefined ? '' : `: ${reason}`}`]
      : [],
  );
  return [
    `JOB SHEET ${job.id}: ${job.title}${job.invented ? ' (invented)' : ''}`,
    [job.customer, `opened ${job.openedAt}`, job.closedAt ? `closed ${job.closedAt}` : job.status].filter(Boolean).join(', '),
    ...part('Values (? = not confirmed)', values),
    ...part('Corrected and struck', changed),
    ...part(
      'Steps',
      job.steps.map(
        ({ step, status, at, reason }) => `  ${status.padEnd(8)} ${step}  ${at}${reason === undefined ? '' : `  (${reason})`}`,
      ),
    ),
    ...part(
      'Notes',
      job.notes.map(({ text, who, closed }) => `  ${text} (${who})${closed === undefined ? '' : `, closed: ${closed}`}`),
    ),
    ...part(
      'Cautions given',
      job.cautions.map(({ id, at }) => `  ${id}  ${at}`),
    ),
    ...part(
      'Reminders',
      job.reminders.map(({ text, done, dueAt, dueMiles }) => `  ${done ? 'done' : 'open'}  ${text} ${dueAt ?? dueMiles ?? ''}`),
    ),
    ...part(
      'Still open',
      view.open.map(({ text, safety }) => `${safety ? '!' : ' '} ${text}`),
    ),
    '',
    `From the log up to event ${job.version}. The part maker's published values come first; this sheet signs for nobody.`,
    'Signature: ______________________   Date: ______________',
  ].join('\n');
}

function part(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', title, ...lines];
}
