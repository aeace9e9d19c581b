// The job sheet as files: everything on it in lines, for a spreadsheet or another program.
import type { JobView } from '#dialogue';
import type { JobRecord } from '#log/events';
import { toCsv } from './csv.ts';

const header = ['part', 'item', 'side', 'axle', 'stage', 'value', 'unit', 'status', 'at', 'who', 'remark'];

/** One line a value, step, note, caution, reminder and open point. Struck and corrected values stay, with their status. */
export function sheetCsv(job: JobRecord, view: JobView): string {
  const values = job.values.map((v) => [
    ...['value', v.field, v.side ?? '', v.axle ?? '', v.stage, v.value, v.unit ?? '', v.status, v.at, v.who],
    [v.reason, ...v.notes].filter(Boolean).join('; '),
  ]);
  const line = (part: string, item: string, status = '', at = '', who = '', remark = '') => [
    part,
    item,
    '',
    '',
    '',
    '',
    '',
    status,
    at,
    who,
    remark,
  ];
  return toCsv(header, [
    line('job', job.title, job.status, job.openedAt, '', [`job ${job.id}`, job.customer].filter(Boolean).join('; ')),
    ...values,
    ...job.steps.map(({ step, status, at, reason }) => line('step', step, status, at, '', reason)),
    ...job.notes.map(({ text, at, who, closed }) => line('note', text, closed === undefined ? '' : 'closed', at, who, closed)),
    ...job.cautions.map(({ id, at }) => line('caution', id, 'given', at)),
    ...job.reminders.map(({ text, done, dueAt, dueMiles }) =>
      line('reminder', text, done ? 'done' : 'open', dueAt, '', dueMiles),
    ),
    ...view.open.map(({ kind, text, safety }) => line('open', text, kind, '', '', safety ? 'safety' : '')),
  ]);
}

/** The whole job for another program; `seq` is the event it goes up to. */
export function sheetJson(job: JobRecord, view: JobView): object {
  const { trail: _trail, ...record } = job;
  return { format: 'axlehand-job-1', seq: job.version, record, open: view.open };
}
