// Tables as the page carries them: only those that it reads; what a row means, not why it stands and who says so, which the server tells.
import { readFile } from 'node:fs/promises';
import type { Plugin } from 'esbuild';

const unread: ReadonlySet<string> = new Set(['source', 'reason', 'left', 'means', 'more']);
const kept = (key: string, value: unknown): unknown => (unread.has(key) ? undefined : value);

/** The bundler takes reading a property for a deed, and would keep each table for it. */
const harmless = (code: string): string => code.replace(/= (\w+Table\.rows)\b/g, '= /* @__PURE__ */ (() => $1)()');

export const tables: Plugin = {
  name: 'tables',
  setup: (build) => {
    build.onLoad({ filter: /\/data\/.*\.json$/ }, async ({ path }) => {
      const { about: _about, ...table } = JSON.parse(await readFile(path, 'utf8'), kept) as { about?: string };
      return { contents: JSON.stringify(table), loader: 'json' };
    });
    build.onLoad({ filter: /\/data\/\w+\.ts$/ }, async ({ path }) => ({
      contents: harmless(await readFile(path, 'utf8')),
      loader: 'ts',
    }));
  },
};
