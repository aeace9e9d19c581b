// What falls due: reminders of this job, and the intervals since the last jobs of the same trailer.
import { measured, nextServices, type PastJob } from '#core';
import type { Answer } from '../types.ts';
import { type Ask, answer, lines, same } from './service-ask.ts';

export function due(ask: Ask): Answer {
  const { job, now } = ask;
  const odometer = measured(ask.readings, { field: 'odometer' });
  const services = nextServices(pastJobs(ask), now, odometer?.value);
  const reminders = job.reminders.filter(({ done }) => !done);
  if (services.length === 0 && reminders.length === 0) {
    return answer(
      'due.nothing',
      same('Nothing on record for this trailer. Twelve months or twelve thousand miles is usual for bearings.'),
      { missing: ['vin'] },
    );
  }
  const [first] = services;
  const retorque = reminders[0];
  return answer(
    services.some(({ state }) => state === 'due') ? 'due.now' : 'due.later',
    {
      speak: [
        retorque ? `${retorque.text}.`.replace(/^./, (letter) => letter.toUpperCase()) : '',
        first
          ? `${first.state === 'due' ? 'Due now' : 'Next'}: ${first.row.text}, ${spokenDate(first.dueAt, ask)}${first.dueMiles ? ` or ${ask.tell.amount({ value: first.dueMiles, unit: 'mi' }).speak}` : ''}.`
          : '',
      ]
        .filter(Boolean)
        .join(' '),
      show: lines(
        ...reminders.map(
          ({ text, dueAt, dueMiles }) =>
            `${text}${dueAt ? ` (${dueAt.slice(0, 10)})` : ''}${dueMiles && odometer ? ` (at ${dueMiles} mi)` : ''}`,
        ),
        ...services.map(
          ({ row, dueAt, dueMiles, state }) =>
            `${state === 'due' ? 'DUE: ' : ''}${row.text}: ${dueAt ?? ''}${dueMiles ? ` or ${dueMiles.valueOf()} mi` : ''}, whichever is first (${row.source})`,
        ),
      ),
    },
    { sources: services.map(({ row }) => row.source), used: [odometer] },
  );
}

/** Closed jobs of the same trailer, by VIN, and this one as if it closed now. */
function pastJobs({ job, know, now, readings }: Ask): readonly PastJob[] {
  const vin = measured(readings, { field: 'vin' })?.value;
  const odometer = measured(readings, { field: 'odometer' })?.value;
  const others = know.jobs.filter(
    ({ id, status, vin: theirs }) => id !== job.id && status === 'closed' && vin !== undefined && theirs === vin,
  );
  const past = others.map(({ kind, updatedAt, odometer: read }) => ({
    kind,
    at: updatedAt,
    ...(read === undefined ? {} : { odometer: read }),
  }));
  if (job.steps.length === 0) return past;
  return [...past, { kind: job.kind, at: job.closedAt ?? now, ...(odometer === undefined ? {} : { odometer }) }];
}

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** "May twenty twenty-seven": the month is near enough to be spoken. */
function spokenDate(date: string | undefined, { tell }: Ask): string {
  const [year = '', month = '1'] = (date ?? '').split('-');
  if (!date) return '';
  return `${months[Number(month) - 1]} ${tell.count(Number(year.slice(0, 2))).speak} ${tell.count(Number(year.slice(2))).speak}`;
}
