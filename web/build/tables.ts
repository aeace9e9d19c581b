// Tables as the page carries them: what a row means is needed there, why it stands and who says so is told by the server.
import { readFile } from 'node:fs/promises';
import type { Plugin } from 'esbuild';

const kept = (key: string, value: unknown): unknown => (key === 'source' || key === 'reason' ? undefined : value);

export const tables: Plugin = {
  name: 'tables',
  setup: (build) =>
    build.onLoad({ filter: /\/data\/.*\.json$/ }, async ({ path }) => {
      const { about: _about, ...table } = JSON.parse(await readFile(path, 'utf8'), kept) as { about?: string };
      return { contents: JSON.stringify(table), loader: 'json' };
    }),
};
