// The log book, the values and the words are functions of the events: made anew, they are the same to the byte.
import Database from 'better-sqlite3';
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import type { EventBody } from '#log/events';
import { migrate } from '../../server/log/schema.ts';
import { openStore } from '../../server/log/store.ts';
import { verifyAll } from '../../server/log/verify.ts';
import { aTurn, connect, opens } from '../support/log.ts';

const valueId = fc.constantFrom('v1', 'v2', 'v3');
const word = fc.constantFrom('axle', 'spring', 'cracked', 'ÅNGSTRÖM', '72 3/8', 'x');
const body: fc.Arbitrary<EventBody> = fc.oneof(
  fc.record({ kind: fc.constant('jobRenamed' as const), title: word }),
  fc.tuple(valueId, fc.constantFrom('72', '579/8')).map(
    ([id, value]): EventBody => ({
      kind: 'valueHeard',
      value: { id, field: 'hubFace', stage: 'found', value, unit: 'in', raw: value, heardBy: 'typed' },
    }),
  ),
  valueId.map((id): EventBody => ({ kind: 'valueConfirmed', id, how: 'said' })),
  valueId.map((id): EventBody => ({ kind: 'valueStruck', id })),
  valueId.map((id): EventBody => ({ kind: 'valueRestored', id })),
  fc.tuple(word, fc.constantFrom('safety', 'info')).map(
    ([text, seriousness]): EventBody => ({
      kind: 'noteTaken',
      id: text,
      text,
      reading: { seriousness: seriousness as 'safety' | 'info' },
    }),
  ),
  fc
    .tuple(fc.constantFrom('r1', 'r2'), fc.boolean())
    .map(
      ([id, done]): EventBody =>
        done ? { kind: 'reminderDone', id } : { kind: 'reminderSet', id, text: 're-torque', dueMiles: '50' },
    ),
  fc.constantFrom<EventBody>(
    { kind: 'paused' },
    { kind: 'resumed' },
    { kind: 'closed', open: [] },
    { kind: 'reopened', reason: 'x' },
  ),
);
const turn = fc.record({ job: fc.constantFrom(null, '0', '1', '2'), bodies: fc.array(body, { maxLength: 4 }) });

/** Everything that is made from events, as text. */
function made(db: Database.Database): string {
  db.exec("CREATE VIRTUAL TABLE IF NOT EXISTS temp.terms USING fts5vocab('main', 'words', 'instance')");
  const tables = [
    'SELECT * FROM jobs ORDER BY id',
    'SELECT * FROM job_values ORDER BY job, id',
    'SELECT * FROM terms ORDER BY term, doc',
    'SELECT * FROM reminders ORDER BY job, id',
  ];
  return JSON.stringify(tables.map((sql) => db.prepare(sql).all()));
}

it('rebuilds to what it was', () => {
  void fc.assert(
    fc.property(fc.array(turn, { minLength: 1, maxLength: 25 }), (turns) => {
      const db = new Database(':memory:');
      migrate(db, 0);
      const store = openStore(db);
      store.append(aTurn(null, [opens('first', 'Invented Farm')]));
      for (const { job, bodies } of turns) {
        const known = job === null || job === '0' || store.job(job) !== null;
        if (known) store.append(aTurn(job, job === null ? [opens('next'), ...bodies] : bodies));
      }
      const live = made(db);
      expect(live).toContain('first');
      db.exec("DELETE FROM job_values; DELETE FROM reminders; UPDATE jobs SET title = 'wrong'");
      db.exec(
        "INSERT INTO jobs VALUES (99, 1, 'a ghost', 'inspection', 'open', '', '', 0, 0); INSERT INTO words (rowid, text) VALUES (99, 'ghost')",
      );
      expect(made(db)).not.toBe(live);
      store.rebuild();
      expect(made(db)).toBe(live);
      expect(verifyAll(db, connect).fault).toBeUndefined();
      db.close();
    }),
    { numRuns: 60 },
  );
});
