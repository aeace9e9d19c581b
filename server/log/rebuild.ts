import { foldAll, type JobEvent } from '#log/events';
import { type Db, rows } from './db.ts';
import type { Projections } from './projections.ts';

/** Throws the projections away and makes them anew from the events, in one transaction. @returns how many jobs */
export function rebuild(db: Db, projections: Projections, events: (job: string) => readonly JobEvent[]): number {
  return db
    .transaction(() => {
      projections.clear();
      const ids = rows<{ job: number }>(db.prepare('SELECT DISTINCT job FROM events WHERE job > 0 ORDER BY job'));
      for (const { job } of ids) {
        const all = events(String(job));
        projections.add(foldAll(String(job), all), all);
      }
      return ids.length;
    })
    .immediate();
}
