// What is made from events alone, and thrown away and remade at will: the log book, the values, the words, the reminders.
import type { JobEvent, JobRecord } from '#log/events';
import type { Cell, Db } from './db.ts';
import { openPoints } from './open-points.ts';
import { openReminders } from './reminders.ts';
import { openSteps } from './steps.ts';
import { openValues } from './values.ts';
import { openWords } from './words.ts';

export interface Projections {
  /** Brings everything up to date with the events just added to a job. */
  add(job: JobRecord, added: readonly JobEvent[]): void;
  clear(): void;
}

export function openProjections(db: Db): Projections {
  const places = bookColumns.map(() => '?').join(', ');
  const put = db.prepare(`INSERT OR REPLACE INTO jobs (${bookColumns.join(', ')}) VALUES (${places})`);
  const values = openValues(db);
  const words = openWords(db);
  const reminders = openReminders(db);
  const steps = openSteps(db);
  return {
    add(job, added) {
      put.run(...bookRow(job, added.at(-1)?.at ?? job.openedAt));
      values.add(job, added);
      words.add(added);
      reminders.add(job, added);
      steps.add(job, added);
    },
    clear() {
      db.exec('DELETE FROM jobs');
      values.clear();
      words.clear();
      reminders.clear();
      steps.clear();
    },
  };
}

const bookColumns = ['id', 'version', 'title', 'kind', 'status', 'opened_at', 'updated_at', 'open_points', 'invented'] as const;

/** A job's line in the log book, in the order of `bookColumns`. */
function bookRow(job: JobRecord, at: string): Cell[] {
  const { id, version, title, kind, status, openedAt, invented } = job;
  return [Number(id), version, title, kind, status, openedAt, at, openPoints(job), Number(invented)];
}
