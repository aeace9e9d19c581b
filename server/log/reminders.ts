// What somebody still has to be reminded of, over all jobs.
import type { JobEvent, JobRecord, Reminder } from '#log/events';
import { type Db, rows } from './db.ts';

export interface OpenReminder extends Omit<Reminder, 'done'> {
  readonly job: string;
}

export function openReminders(db: Db) {
  const put = db.prepare('INSERT OR REPLACE INTO reminders (job, id, text, due_at, due_miles) VALUES (?, ?, ?, ?, ?)');
  const drop = db.prepare('DELETE FROM reminders WHERE job = ?');
  return {
    add({ id: job, reminders }: JobRecord, events: readonly JobEvent[]): void {
      if (!events.some(({ body }) => body.kind === 'reminderSet' || body.kind === 'reminderDone')) return;
      drop.run(Number(job));
      for (const { id, text, dueAt, dueMiles, done } of reminders) {
        if (!done) put.run(Number(job), id, text, dueAt ?? null, dueMiles ?? null);
      }
    },
    clear: (): void => void db.exec('DELETE FROM reminders'),
  };
}

interface ReminderRow {
  readonly job: number;
  readonly id: string;
  readonly text: string;
  readonly due_at: string | null;
  readonly due_miles: string | null;
}

/** Reminders nobody has dealt with, of all jobs. */
export function remindersOf(db: Db): readonly OpenReminder[] {
  const all = rows<ReminderRow>(db.prepare('SELECT * FROM reminders ORDER BY job, id'));
  return all.map(({ job, id, text, due_at, due_miles }) => ({
    job: String(job),
    id,
    text,
    ...(due_at === null ? {} : { dueAt: due_at }),
    ...(due_miles === null ? {} : { dueMiles: due_miles }),
  }));
}
