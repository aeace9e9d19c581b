// The page's files, from one built folder. Pages have short addresses; nothing outside the folder or hidden is given out.
import { mkdirSync } from 'node:fs';
import { serveStatic } from '@hono/node-server/serve-static';
import type { Context, Hono } from 'hono';
import { problem } from './problem.ts';

const pages = {
  '/': 'bay',
  '/log': 'log',
  '/jobs/:id': 'review',
  '/jobs/:id/sheet': 'sheet',
  '/pair': 'pair',
  '/devices': 'devices',
  '/rack': 'rack',
};

export function servePages(app: Hono, folder: string): void {
  mkdirSync(folder, { recursive: true });
  app.get('*', async (c, next) => {
    await next();
    if (c.res.status === 416) c.res = problem(c, 'badRange');
  });
  const files = { root: folder, precompressed: true, onFound: kept };
  for (const [address, page] of Object.entries(pages)) app.get(address, serveStatic({ ...files, path: `${page}.html` }));
  app.get('*', async (c, next) => (/(^|[/\\])\./.test(decoded(c.req.path)) ? problem(c, 'notFound') : next()));
  app.get('*', serveStatic(files));
}

/** Names with a hash in them never change; the others are asked for anew each time. */
function kept(_path: string, c: Context): void {
  const isHashed = /^\/(assets|voice)\//.test(c.req.path);
  c.header('Cache-Control', isHashed ? 'public, max-age=31536000, immutable' : 'no-cache');
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return '/.';
  }
}
