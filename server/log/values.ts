// The values of all jobs as they stand, to find a job by "hub face 72 3/8".
import type { JobEvent, JobRecord, ValueId } from '#log/events';
import type { Db } from './db.ts';

export function openValues(db: Db) {
  const put = db.prepare('INSERT OR REPLACE INTO job_values (job, id, field, value, status) VALUES (?, ?, ?, ?, ?)');
  return {
    add(job: JobRecord, events: readonly JobEvent[]): void {
      const touched = new Set(events.flatMap(({ body }) => touches(body)));
      if (touched.size === 0) return;
      for (const { id, field, value, status } of job.values) {
        if (touched.has(id)) put.run(Number(job.id), id, field, value, status);
      }
    },
    clear: (): void => void db.exec('DELETE FROM job_values'),
  };
}

function touches(body: JobEvent['body']): ValueId[] {
  switch (body.kind) {
    case 'valueHeard':
      return [body.value.id];
    case 'valueConfirmed':
    case 'valueCorrected':
    case 'valueStruck':
    case 'valueRestored':
      return [body.id];
    default:
      return [];
  }
}
