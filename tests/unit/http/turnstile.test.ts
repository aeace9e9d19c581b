import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { createTurnstile } from '../../../server/http/turnstile.ts';
import { migrate } from '../../../server/log/schema.ts';
import { openStore } from '../../../server/log/store.ts';
import { verifyAll } from '../../../server/log/verify.ts';
import { aTurn, connect, opens, somewhere } from '../../support/log.ts';
import { aServer, spoken } from '../../support/server.ts';

function aStore(pages = 100_000) {
  const db = new Database(somewhere());
  db.pragma('journal_mode = WAL');
  migrate(db, 0);
  db.pragma(`max_page_count = ${pages}`);
  const store = openStore(db);
  store.append(aTurn(null, [opens('blue trailer')]));
  return { db, store };
}

describe('turns that arrive together', () => {
  it('are taken in order, each once, and told of after they are on disk', async () => {
    const server = await aServer();
    const told: [seq: number, onDisk: number][] = [];
    const path = server.log.path;
    server.listeners.add({
      device: 'x',
      bye: () => {},
      turn: ({ seq }) => {
        const other = new Database(path, { readonly: true });
        told.push([seq, (other.prepare('SELECT max(seq) AS seq FROM events').get() as { seq: number }).seq]);
        other.close();
      },
    });
    const say = (text: string, job: string | null, id?: string) =>
      server.call('/api/turns', { method: 'POST', body: spoken(text, job, id) });
    await say('open a job for the blue trailer', null);
    const answers = await Promise.all([
      ...Array.from({ length: 40 }, (_, i) => say(`note number ${i}`, '1')),
      say('note twice', '1', 'twice-twice'),
      say('note twice', '1', 'twice-twice'),
    ]);
    expect(answers.every(({ status }) => status === 200)).toBe(true);
    expect(server.log.job('1')?.notes.map(({ text }) => text)).toEqual([
      ...Array.from({ length: 40 }, (_, i) => `number ${i}`),
      'twice',
    ]);
    expect(told).toHaveLength(42);
    for (const [seq, onDisk] of told) expect(onDisk).toBeGreaterThanOrEqual(seq);
    expect(server.log.verify().fault).toBeUndefined();
  });

  it('fail one by one where one cannot be answered', async () => {
    const { db, store } = aStore();
    const inTurn = createTurnstile(store);
    const fails = (): never => {
      throw new TypeError('no words');
    };
    const results = await Promise.allSettled([
      inTurn(() => store.append(aTurn('1')).seq),
      inTurn(() => store.append(aTurn('1'), fails)),
      inTurn(() => store.append(aTurn('1')).seq),
    ]);
    expect(results.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    expect(store.head()).toBe(7);
    expect(store.job('1')?.version).toBe(7);
    expect(verifyAll(db, connect).fault).toBeUndefined();
    db.close();
  });

  it('are acknowledged only where they are on disk when it fills up under a group', async () => {
    const { db, store } = aStore(80);
    const inTurn = createTurnstile(store);
    const turns = Array.from({ length: 400 }, () => aTurn('1', [{ kind: 'annotated', text: 'long '.repeat(100) }]));
    const results = await Promise.allSettled(turns.map((turn) => inTurn(() => store.append(turn).seq)));
    const kept = turns.filter((_, i) => results[i]?.status === 'fulfilled');
    expect(kept.length).toBeGreaterThan(5);
    expect(kept.length).toBeLessThan(400);
    for (const { turn } of kept) expect(store.receipt(turn)).not.toBeNull();
    for (const [i, { turn }] of turns.entries()) if (results[i]?.status === 'rejected') expect(store.receipt(turn)).toBeNull();
    expect(store.job('1')?.version).toBe(store.head());
    expect(verifyAll(db, connect).fault).toBeUndefined();
    db.close();
  });
});
