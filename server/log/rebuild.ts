import { foldAll } from '#log/events';
import { type StoredEvent, toEvent } from './chain.ts';
import { type Db, rows } from './db.ts';
import type { Projections } from './projections.ts';

/** Throws the projections of `db` away and makes them anew from the events of `from`, in one transaction. @returns how many jobs */
export function rebuild(db: Db, projections: Projections, from = db): number {
  const ofJob = from.prepare('SELECT * FROM events WHERE job = ? ORDER BY seq');
  return db
    .transaction(() => {
      projections.clear();
      const ids = rows<{ job: number }>(from.prepare('SELECT DISTINCT job FROM events WHERE job > 0 ORDER BY job'));
      for (const { job } of ids) {
        const all = rows<StoredEvent>(ofJob, job).map(toEvent);
        projections.add(foldAll(String(job), all), all);
      }
      return ids.length;
    })
    .immediate();
}
