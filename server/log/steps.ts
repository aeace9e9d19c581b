// Which steps of each job were done, and when: what is due next counts from them.
import type { JobEvent, JobRecord } from '#log/events';
import type { Db } from './db.ts';

const changing: ReadonlySet<string> = new Set(['stepDone', 'stepSkipped', 'stepReopened']);

export function openSteps(db: Db) {
  const put = db.prepare('INSERT OR REPLACE INTO job_steps (job, step, at) VALUES (?, ?, ?)');
  const drop = db.prepare('DELETE FROM job_steps WHERE job = ?');
  return {
    add({ id, steps }: JobRecord, events: readonly JobEvent[]): void {
      if (!events.some(({ body }) => changing.has(body.kind))) return;
      drop.run(Number(id));
      for (const { step, status, at } of steps) if (status === 'done') put.run(Number(id), step, at);
    },
    clear: (): void => void db.exec('DELETE FROM job_steps'),
  };
}
