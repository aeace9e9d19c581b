// The page's files, from one built folder. Pages have short addresses; nothing outside the folder or hidden is given out.
import { serveStatic } from '@hono/node-server/serve-static';
import type { Hono } from 'hono';
import { problem } from './problem.ts';

const pages = { '/': 'bay', '/log': 'log', '/jobs/:id': 'review', '/jobs/:id/sheet': 'sheet', '/pair': 'pair' };

export function servePages(app: Hono, folder: string): void {
  for (const [address, page] of Object.entries(pages)) {
    app.get(address, serveStatic({ root: folder, path: `${page}.html`, precompressed: true }));
  }
  app.get('*', async (c, next) => {
    if (/(^|[/\\])\./.test(decoded(c.req.path))) return problem(c, 'notFound');
    if (c.req.path.startsWith('/assets/') || c.req.path.startsWith('/voice/'))
      c.header('Cache-Control', 'public, max-age=31536000, immutable');
    return next();
  });
  app.get('*', serveStatic({ root: folder, precompressed: true }));
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return '/.';
  }
}
