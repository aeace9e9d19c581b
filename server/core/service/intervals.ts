// Next service: by date and by miles, whichever comes first.
import { type JobKindId, type ServiceIntervalRow, serviceIntervals } from '#data';
import { Fraction } from '../quantity/index.ts';
import { addMonths } from './months.ts';

/** One finished job of a trailer. */
export interface PastJob {
  readonly kind: JobKindId;
  /** ISO date. */
  readonly at: string;
  /** Miles, where it was read. */
  readonly odometer?: string;
}

/** One service that falls due; `state` on the day asked, by date and, where both odometers are known, by miles. */
export interface DueService {
  readonly row: ServiceIntervalRow;
  readonly last: PastJob;
  readonly dueAt?: string;
  readonly dueMiles?: Fraction;
  readonly state: 'notYet' | 'soon' | 'due';
}

/** What falls due when, from the jobs that one trailer has had; soonest first. Dates compare as YYYY-MM-DD. */
export function nextServices(past: readonly PastJob[], today: string, odometer?: string): readonly DueService[] {
  return serviceIntervals
    .filter(({ usual }) => usual)
    .flatMap((row) => {
      const last = past
        .filter(({ kind }) => row.jobs.includes(kind))
        .toSorted((a, b) => a.at.localeCompare(b.at))
        .at(-1);
      return last ? [dueFrom(row, last, today.slice(0, 10), odometer)] : [];
    })
    .toSorted((one, other) => (one.dueAt ?? '9').localeCompare(other.dueAt ?? '9'));
}

function dueFrom(row: ServiceIntervalRow, last: PastJob, today: string, odometer: string | undefined): DueService {
  const dueAt = row.months === undefined ? undefined : addMonths(last.at, Number(row.months));
  const dueMiles =
    row.miles === undefined || last.odometer === undefined ? undefined : new Fraction(last.odometer).add(row.miles);
  const overMiles = dueMiles !== undefined && odometer !== undefined && dueMiles.compare(odometer) <= 0;
  const state = overMiles || (dueAt !== undefined && dueAt <= today) ? 'due' : isSoon(dueAt, today) ? 'soon' : 'notYet';
  return { row, last, state, ...(dueAt === undefined ? {} : { dueAt }), ...(dueMiles === undefined ? {} : { dueMiles }) };
}

/** Within a month. */
function isSoon(dueAt: string | undefined, today: string): boolean {
  return dueAt !== undefined && dueAt <= addMonths(today, 1);
}
