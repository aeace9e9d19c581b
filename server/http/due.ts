// What falls due in the shop: reminders nobody has dealt with, and the next service of each trailer that has a VIN.
import { Fraction, nextServices } from '#core';
import type { Log, OpenReminder } from '#log';
import type { JobSummary } from '#log/events';
import type { DueItem } from '#wire';

const everyJob = 1_000_000;
const weight: Readonly<Record<DueItem['state'], number>> = { due: 0, soon: 1, notYet: 2 };

/** Soonest first. `now` is ISO time; dates compare as YYYY-MM-DD. */
export function dueIn(log: Log, now: string): readonly DueItem[] {
  const jobs = log.search({ limit: everyJob, steps: true }).jobs;
  const byId = new Map(jobs.map((job) => [job.id, job]));
  const trailers = byTrailer(jobs);
  const reminders = log.reminders().flatMap((reminder) => {
    const job = byId.get(reminder.job);
    return job ? [reminded(reminder, job, odometerOf(trailers.get(job.vin ?? '') ?? [job]), now.slice(0, 10))] : [];
  });
  const services = [...trailers.values()].flatMap((ofTrailer) => servicesOf(ofTrailer, now));
  return [...reminders, ...services].toSorted(
    (one, other) => weight[one.state] - weight[other.state] || (one.dueAt ?? '').localeCompare(other.dueAt ?? ''),
  );
}

function byTrailer(jobs: readonly JobSummary[]): ReadonlyMap<string, readonly JobSummary[]> {
  const trailers = new Map<string, JobSummary[]>();
  for (const job of jobs) {
    if (job.vin !== undefined) trailers.set(job.vin, [...(trailers.get(job.vin) ?? []), job]);
  }
  return trailers;
}

/** The last reading of a trailer; jobs come newest first. */
function odometerOf(jobs: readonly JobSummary[]): string | undefined {
  return jobs.find(({ odometer }) => odometer !== undefined)?.odometer;
}

function reminded(
  { id, text, dueAt, dueMiles }: OpenReminder,
  job: JobSummary,
  odometer: string | undefined,
  today: string,
): DueItem {
  // Without an odometer in its own job the miles count from the work, and nobody knows from where.
  const atMiles = job.odometer === undefined ? undefined : dueMiles;
  const isOverMiles = atMiles !== undefined && odometer !== undefined && new Fraction(odometer).compare(atMiles) >= 0;
  const isOverDate = dueAt !== undefined && dueAt.slice(0, 10) <= today;
  // Miles after the work come sooner than anyone reads an odometer.
  const state = isOverMiles || isOverDate ? 'due' : dueMiles === undefined ? 'notYet' : 'soon';
  return { id: `${job.id} ${id}`, what: 'reminder', text, state, ...named(job), ...when(dueAt, atMiles) };
}

function servicesOf(jobs: readonly JobSummary[], now: string): readonly DueItem[] {
  const [newest] = jobs;
  if (!newest) return [];
  const past = jobs.toReversed().map(({ done = [], axleCount, odometer }) => ({
    steps: done,
    ...(axleCount === undefined ? {} : { axleCount }),
    ...(odometer === undefined ? {} : { odometer }),
  }));
  return nextServices(past, now, odometerOf(jobs)).map(({ row, state, dueAt, dueMiles }) => ({
    id: `${newest.vin} ${row.id}`,
    what: 'service',
    text: row.text,
    state,
    source: row.source,
    ...named(newest),
    ...when(dueAt, dueMiles?.toString()),
  }));
}

function named({ id, title, invented, vin }: JobSummary): Pick<DueItem, 'job' | 'title' | 'invented' | 'vin'> {
  return { job: id, title, invented, ...(vin === undefined ? {} : { vin }) };
}

function when(dueAt: string | undefined, dueMiles: string | undefined): Pick<DueItem, 'dueAt' | 'dueMiles'> {
  return { ...(dueAt ? { dueAt } : {}), ...(dueMiles ? { dueMiles } : {}) };
}
