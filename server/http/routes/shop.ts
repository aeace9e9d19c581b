import { Hono } from 'hono';
import type { Log } from '#log';
import type { StockList, StockTaken } from '#wire';
import { readBody } from '../body.ts';
import { only } from '../gate.ts';
import { problem } from '../problem.ts';
import { shopSettings } from '../schemas.ts';
import { readStock, writeStock } from '../stock.ts';
import type { Turns } from '../turns.ts';

/** How the shop speaks and shows things. */
export function settingsRoutes(log: Log, turns: Turns): Hono {
  const app = new Hono();
  app.get('/', (c) => c.json(turns.know().shop));
  app.put('/', only('desk'), async (c) => {
    const body = await readBody(c, shopSettings);
    if (!body.ok) return body.response;
    log.putSetting('shop', body.value);
    return c.json(body.value);
  });
  return app;
}

/** The axles on the rack. POST takes text/csv: its good lines take the place of the old list, its bad ones are named. GET with ?format=csv gives the list out. */
export function stockRoutes(log: Log): Hono {
  const app = new Hono();
  app.get('/', (c) =>
    c.req.query('format') === 'csv'
      ? c.body(writeStock(log.stock()), 200, { 'content-type': 'text/csv; charset=utf-8' })
      : c.json<StockList>({ stock: log.stock() }),
  );
  app.post('/', only('desk'), async (c) => {
    if (!/^text\/csv\s*(;|$)/i.test(c.req.header('content-type') ?? ''))
      return problem(c, 'badRequest', 'Send the list as text/csv.');
    const read = readStock(await c.req.text(), (c.req.query('file') ?? 'the list').slice(0, 80));
    if (read.axles.length > 0) {
      log.putStock(read.axles);
      return c.json<StockTaken>({ taken: read.axles.length, ...(read.faults.length > 0 ? { faults: read.faults } : {}) });
    }
    const first = read.faults
      .slice(0, 10)
      .map(({ file, line, column, fault }) => `${file} line ${line}, ${column || 'whole line'}: ${fault}`);
    const more = read.faults.length > first.length ? [`and ${read.faults.length - first.length} more`] : [];
    return problem(c, 'badStock', [...first, ...more].join('; '));
  });
  return app;
}
