import type { JobRecord } from '#log/events';

/** How many things of a job still wait for someone: unconfirmed values, defects, skipped steps, a question, reminders. */
export function openPoints(job: JobRecord): number {
  const unconfirmed = job.values.filter(({ status }) => status === 'heard').length;
  const defects = job.notes.filter(
    ({ reading, closed }) => closed === undefined && reading && reading.seriousness !== 'info',
  ).length;
  const skipped = job.steps.filter(({ status }) => status === 'skipped').length;
  const reminders = job.reminders.filter(({ done }) => !done).length;
  return unconfirmed + defects + skipped + reminders + (job.asked ? 1 : 0);
}
