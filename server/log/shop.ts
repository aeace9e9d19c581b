// What the shop itself keeps beside its jobs: settings and the axles on its rack.
import type { StockAxle } from '#data';
import type { Db } from './db.ts';
import { row, rows } from './db.ts';
import { guarded } from './faults.ts';

export function openShop(db: Db) {
  // Read at every turn, written once a month.
  let kept: readonly StockAxle[] | null = null;
  const settings = new Map<string, unknown>();
  const read = db.prepare('SELECT value FROM settings WHERE name = ?');
  const write = db.prepare(
    'INSERT INTO settings (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
  );
  const rack = db.prepare('SELECT axle FROM stock ORDER BY id');
  const shelve = db.prepare('INSERT INTO stock (id, axle) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET axle = excluded.axle');
  const clear = db.prepare('DELETE FROM stock');
  return {
    /** A setting as it was put, or undefined. */
    setting(name: string): unknown {
      if (!settings.has(name)) {
        const found = row<{ value: string }>(read, name);
        settings.set(name, found && JSON.parse(found.value));
      }
      return settings.get(name);
    },
    putSetting(name: string, value: unknown): void {
      settings.delete(name);
      guarded(() => write.run(name, JSON.stringify(value)));
    },
    stock(): readonly StockAxle[] {
      kept ??= rows<{ axle: string }>(rack).map(({ axle }) => JSON.parse(axle));
      return kept;
    },
    /** Puts the whole rack in the place of the old one. */
    putStock(axles: readonly StockAxle[]): void {
      kept = null;
      guarded(() =>
        db
          .transaction(() => {
            clear.run();
            for (const axle of axles) shelve.run(axle.id, JSON.stringify(axle));
          })
          .immediate(),
      );
    },
  };
}
