// What falls due: reminders of this job, and the intervals since the last jobs of the same trailer.
import { measured, nextServices, type PastJob } from '#core';
import { retorque, serviceIntervals } from '#data';
import type { Reminder } from '#log/events';
import type { Answer } from '../types.ts';
import { listed, sentence } from '../words.ts';
import { type Ask, answer, join, lines, same, type Words } from './service-ask.ts';

export function due(ask: Ask): Answer {
  const { job, now } = ask;
  if (again.test(ask.words)) return retorqueAsked(ask);
  const odometer = measured(ask.readings, { field: 'odometer' });
  const services = nextServices(pastJobs(ask), now, odometer?.value);
  const reminders = job.reminders.filter(({ done }) => !done);
  if (services.length === 0 && reminders.length === 0) {
    return answer(
      'due.nothing',
      same('Nothing on record for this trailer. Twelve months or twelve thousand miles is usual for bearings.'),
      { missing: ['vin'], sources: serviceIntervals.filter(({ id }) => id === 'bearings').map(({ source }) => source) },
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
        ...reminders.map((reminder) => reminderLine(reminder, odometer !== undefined)),
        ...services.map(
          ({ row, dueAt, dueMiles, state }) =>
            `${state === 'due' ? 'DUE: ' : ''}${row.text}: ${dueAt ?? ''}${dueMiles ? ` or ${dueMiles.valueOf()} mi` : ''}, whichever is first (${row.source})`,
        ),
      ),
    },
    { sources: services.map(({ row }) => row.source), used: [odometer] },
  );
}

const again = /re.?torque|re.?check|re.?tighten|torque.*again|(check|tighten).*(nut|lug|bolt|wheel|them|those|again)/;

const joints: ReadonlySet<string> = new Set(retorque.map(({ of }) => of));

/** When a joint is checked again: as published, also before anything is torqued; and the reminders that stand. */
function retorqueAsked(ask: Ask): Answer {
  const { words, tell, job } = ask;
  const named = retorque.filter(({ of }) => (of === 'uBoltTorque' ? /u.?bolt/ : /lug|wheel/).test(words));
  const last = retorque.filter(({ of }) => of === ask.readings.findLast(({ field }) => joints.has(field))?.field);
  const rows = [named, last, retorque].find(({ length }) => length > 0) ?? [];
  const told = (form: keyof Words) =>
    rows.map(({ text, miles, months }) => {
      const after = listed(
        miles.map((each) => tell.count(Number(each))[form]),
        'and',
      );
      return `${sentence(text)} after ${after} miles${months ? `, then every ${tell.count(Number(months))[form]} months` : ''}.`;
    });
  const set = job.reminders.filter(({ done, text }) => !done && rows.some((row) => text.startsWith(row.text)));
  const odometer = measured(ask.readings, { field: 'odometer' });
  return answer(
    'due.retorque',
    {
      speak: join(...told('speak'), set.length > 0 ? undefined : 'Nothing torqued on this job yet; I remind you once it is.'),
      show: lines(...told('show'), ...set.map((reminder) => reminderLine(reminder, odometer !== undefined))),
    },
    { sources: rows.map(({ source }) => source), caution: 'makerFirst' },
  );
}

/** Miles are told where the odometer was read: without it they count from the work, as the text says. */
const reminderLine = ({ text, dueAt, dueMiles }: Reminder, read: boolean): string =>
  `${text}${dueAt ? ` (${dueAt.slice(0, 10)})` : ''}${dueMiles && read ? ` (at ${dueMiles} mi)` : ''}`;

/** What was done on the same trailer, by VIN, in other jobs and in this one. */
function pastJobs({ job, know, readings }: Ask): readonly PastJob[] {
  const [vin, odometer, axleCount] = (['vin', 'odometer', 'axleCount'] as const).map(
    (field) => measured(readings, { field })?.value,
  );
  const others = know.jobs.filter(({ id, vin: theirs }) => id !== job.id && vin !== undefined && theirs === vin);
  const past = others.map((other) => ({ steps: other.done ?? [], ...axlesAndMiles(other) }));
  const here = job.steps.filter(({ status }) => status === 'done');
  return [...past.toReversed(), { steps: here, ...axlesAndMiles({ odometer, axleCount }) }];
}

const axlesAndMiles = ({
  odometer,
  axleCount,
}: {
  readonly odometer?: string | undefined;
  readonly axleCount?: string | undefined;
}) => ({
  ...(odometer === undefined ? {} : { odometer }),
  ...(axleCount === undefined ? {} : { axleCount }),
});

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
