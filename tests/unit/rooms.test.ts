// The doors of the house: which room may import what. A table of rules and one scan; it also counts what it saw.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;

/** Longest matching path rules. Own files by relative path are always free; `node:` is for rooms that say so. */
const rooms: Record<string, readonly string[]> = {
  data: [],
  'data/schema': ['zod', '#data', '#core'],
  intents: ['#data', 'fraction.js'],
  'intents/notes.ts': ['#data', 'compromise'],
  'server/core': ['#data', 'fraction.js'],
  'server/dialogue': ['#data', '#intents', '#core', '#log/events'],
  'server/log': ['#data', '#intents', '#log/events', 'zod', 'node:'],
  'server/log/events.ts': ['#data', '#intents'],
  'server/log/fold.ts': ['#data', '#intents'],
  'server/log/index.ts': ['better-sqlite3', '#data', '#intents', '#log/events', 'zod', 'node:'],
  'server/http': [
    '#data',
    '#data/schema',
    '#intents',
    '#intents/notes',
    '#core',
    '#dialogue',
    '#log',
    '#log/events',
    '#wire',
    'hono',
    '@hono/node-server',
    'zod',
    'papaparse',
    'qrcode',
    '@peculiar/x509',
    '../../voice',
    'node:',
  ],
  'server/commands': [
    '#data',
    '#data/schema',
    '#intents',
    '#intents/notes',
    '#core',
    '#dialogue',
    '#log',
    '#log/events',
    '#wire',
    '../http',
    'node:',
  ],
  'server/main.ts': ['./commands', 'node:'],
  web: [
    '#data',
    '#intents',
    '#intents/grammar',
    '#wire',
    'hono',
    'idb',
    'onnxruntime-web',
    'llama-tokenizer-js',
    'soundswallower',
  ],
  'web/build': ['esbuild', 'node:', 'llama-tokenizer-js', '#data', '#intents', '../../server/voice'],
  'server/voice': ['node:'],
};

const files = ['data', 'intents', 'server', 'web'].flatMap((room) =>
  readdirSync(root + room, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => `${room}/${path}`),
);

/** Every module named by an import, export-from or dynamic import, with whether it is for types only. */
function importsOf(source: string): { readonly name: string; readonly typeOnly: boolean }[] {
  const found = source.matchAll(
    /(?:^|\n)\s*(?:import|export)\s+(type\s)?[^'";]*?from\s*'([^']+)'|(?:^|\n)\s*import\s*'([^']+)'|import\('([^']+)'\)/g,
  );
  return [...found].map(([, type, from, bare, dynamic]) => ({ name: from ?? bare ?? dynamic ?? '', typeOnly: Boolean(type) }));
}

function ruleOf(file: string): readonly string[] {
  const key = Object.keys(rooms).filter((room) => file === room || file.startsWith(`${room}/`) || file.startsWith(`${room}.`));
  const longest = key.sort((a, b) => b.length - a.length)[0];
  if (longest === undefined) throw new TypeError(`no rule for ${file}`);
  return rooms[longest] ?? [];
}

/** Imports of a file that its room may not make. */
function trespasses(file: string, source: string): string[] {
  const allowed = ruleOf(file);
  return importsOf(source)
    .map(({ name }) => name)
    .filter((name) => !staysInside(file, name))
    .filter((name) => !allowed.some((door) => name === door || name.startsWith(door.endsWith(':') ? door : `${door}/`)));
}

function staysInside(file: string, name: string): boolean {
  if (!name.startsWith('.')) return false;
  const target = new URL(name, `file:///${file}`).pathname.slice(1);
  const room = (path: string) =>
    path
      .split('/')
      .slice(0, path.startsWith('server/') ? 2 : 1)
      .join('/');
  return room(target) === room(file);
}

describe('rooms', () => {
  it('sees the files it speaks about', () => {
    expect(files.length).toBeGreaterThan(80);
    for (const room of ['data/', 'intents/', 'server/core/', 'server/dialogue/', 'server/log/', 'server/http/', 'web/']) {
      expect(
        files.some((file) => file.startsWith(room)),
        room,
      ).toBe(true);
    }
  });

  it.each(files)('%s keeps to its doors', (file) => {
    expect(trespasses(file, readFileSync(root + file, 'utf8'))).toEqual([]);
  });

  it('catches a room that reaches past a door', () => {
    expect(trespasses('intents/x.ts', "import { openLog } from '#log';")).toEqual(['#log']);
    expect(trespasses('server/core/x.ts', "import '../dialogue/turn.ts';")).toEqual(['../dialogue/turn.ts']);
    expect(trespasses('server/dialogue/x.ts', "const x = await import('node:fs');")).toEqual(['node:fs']);
    expect(trespasses('web/page/x.ts', "export { y } from '../../intents/read.ts';")).toEqual(['../../intents/read.ts']);
    expect(trespasses('server/http/app.ts', "import Database from 'better-sqlite3';")).toEqual(['better-sqlite3']);
  });

  it('lets the page take only types from the wire', () => {
    const taken = files.filter((file) => file.startsWith('web/')).flatMap((file) => importsOf(readFileSync(root + file, 'utf8')));
    const wire = taken.filter(({ name }) => name === '#wire');
    expect(wire.every(({ typeOnly }) => typeOnly)).toBe(true);
  });
});
