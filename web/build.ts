// Builds the page into var/web: hashed scripts and styles, one HTML file a page, the service worker, the manifest, and
// each text file again in .br and .gz. `--if-stale` does nothing when no input has changed.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { type BuildOptions, build, type Metafile } from 'esbuild';
import { tables } from './build/tables.ts';
import { copyVoiceAssets, voiceNames } from './build/voice.ts';

const root = new URL('..', import.meta.url).pathname;
const out = join(root, 'var/web');
const stamp = join(root, 'var/web.stamp');

const pages = [
  { id: 'bay', title: 'Axlehand: the bay' },
  { id: 'log', title: 'Axlehand: log book' },
  { id: 'review', title: 'Axlehand: review of a job' },
  { id: 'sheet', title: 'Axlehand: job sheet' },
  { id: 'pair', title: 'Axlehand: pair a device' },
  { id: 'devices', title: 'Axlehand: devices' },
  { id: 'rack', title: 'Axlehand: the rack' },
] as const;

const shared = {
  bundle: true,
  format: 'esm',
  target: 'es2022',
  minify: true,
  sourcemap: 'linked',
  metafile: true,
  jsx: 'automatic',
  jsxImportSource: 'hono/jsx/dom',
  outdir: out,
  absWorkingDir: root,
  logLevel: 'warning',
  plugins: [tables],
  alias: { 'blob-polyfill': './web/build/blob.ts' },
} as const satisfies BuildOptions;

/** Names, sizes and times of all that goes in: equal text means nothing to do. */
function inputs(): string {
  const folders = ['web', 'data', 'intents'].map((room) => join(root, room));
  const files = folders.flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((path) => join(folder, path)),
  );
  const lines = [...files, join(root, 'package-lock.json')].sort().flatMap((path) => {
    const { mtimeMs, size } = statSync(path);
    return statSync(path).isFile() ? [`${path} ${size} ${mtimeMs}`] : [];
  });
  return createHash('sha256').update(lines.join('\n')).digest('hex');
}

const served = (path: string): string => `/${path.replace(/^var\/web\//, '')}`;

/** Entry name -> the address it is served at. */
function addresses({ outputs }: Metafile): Record<string, string> {
  const entries = Object.entries(outputs).filter(([path, { entryPoint }]) => entryPoint && !path.endsWith('.map'));
  return Object.fromEntries(entries.map(([path, { entryPoint }]) => [entryPoint ?? '', served(path)]));
}

function html(page: (typeof pages)[number], script: string, style: string): string {
  return `<!doctype html>
<html lang="en" data-page="${page.id}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta name="color-scheme" content="light dark">
<meta name="theme-color" content="#b4bab5" media="(prefers-color-scheme: light)">
<meta name="theme-color" content="#111416" media="(prefers-color-scheme: dark)">
<title>${page.title}</title>
<link rel="manifest" href="/manifest.webmanifest">
<link rel="icon" href="/icon.svg" type="image/svg+xml">
<link rel="stylesheet" href="${style}">
<script type="module" src="${script}"></script>
</head>
<body><div id="page"></div>
<noscript>This page needs JavaScript. The job sheet is also printed by: npm run -s sheet -- JOB</noscript></body>
</html>
`;
}

function write(path: string, text: string): void {
  writeFileSync(join(out, path), text);
}

function compress(path: string): void {
  const raw = readFileSync(path);
  writeFileSync(`${path}.gz`, gzipSync(raw, { level: 9 }));
  const params = { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: raw.length };
  writeFileSync(`${path}.br`, brotliCompressSync(raw, { params }));
}

function version(files: readonly string[]): string {
  return createHash('sha256').update(files.join('\n')).digest('hex').slice(0, 10);
}

/** One second that can hardly be heard: what a headset's button needs to be playing. */
function quietWav(): Buffer {
  const rate = 8000;
  const wav = Buffer.alloc(44 + rate, 128);
  wav.write('RIFF', 0);
  wav.writeUInt32LE(36 + rate, 4);
  wav.write('WAVEfmt ', 8);
  wav.writeUInt32LE(16, 16);
  wav.writeUInt32LE(0x0001_0001, 20);
  wav.writeUInt32LE(rate, 24);
  wav.writeUInt32LE(rate, 28);
  wav.writeUInt32LE(0x0008_0001, 32);
  wav.write('data', 36);
  wav.writeUInt32LE(rate, 40);
  for (let i = 0; i < rate; i += 40) wav[44 + i] = 129;
  return wav;
}

interface Behind {
  /** Entry name -> address: "recogniser.worker" -> "/assets/...". */
  readonly addresses: Readonly<Record<string, string>>;
  readonly files: readonly string[];
}

async function workers(): Promise<Behind> {
  const found = readdirSync(join(root, 'web'), { recursive: true, encoding: 'utf8' }).filter((path) =>
    /\.(worker|worklet)\.ts$/.test(path),
  );
  const entryPoints = found.map((path) => `web/${path}`);
  const { metafile } = await build({ ...shared, entryPoints, entryNames: 'assets/[name]-[hash]', outbase: 'web' });
  const named = Object.entries(addresses(metafile)).map(([entry, url]) => [basename(entry, '.ts'), url]);
  return { addresses: Object.fromEntries(named), files: Object.keys(metafile.outputs) };
}

/** Writes the new files over the old and then removes what is stale: a server that runs meanwhile never misses a file. */
async function run(): Promise<void> {
  const state = inputs();
  const isFresh = existsSync(out) && existsSync(stamp) && readFileSync(stamp, 'utf8') === state;
  if (process.argv.includes('--if-stale') && isFresh) return;
  rmSync(stamp, { force: true });
  mkdirSync(out, { recursive: true });

  const voice = await copyVoiceAssets(out);
  const behind = await workers();
  const { metafile } = await build({
    ...shared,
    define: { ASSETS: JSON.stringify({ ...behind.addresses, ...voiceNames(voice) }) },
    splitting: true,
    entryPoints: pages.flatMap(({ id }) => [`web/${id}/main.tsx`, `web/styles/${id}.css`]),
    entryNames: 'assets/[dir]-[name]-[hash]',
    chunkNames: 'assets/[name]-[hash]',
    outbase: 'web',
  });
  const at = addresses(metafile);
  const statics = [...putPages(at), ...putStatics()];
  const made = [...behind.files, ...Object.keys(metafile.outputs)].map((path) => path.replace(/^var\/web\//, ''));
  const shell = [...made.filter((path) => !path.endsWith('.map')), ...statics].map((path) => `/${path}`);
  await build({
    ...shared,
    sourcemap: false,
    entryPoints: { sw: 'web/sw.ts' },
    entryNames: '[name]',
    define: { SHELL: JSON.stringify(shell), VOICE: JSON.stringify(voice), VERSION: JSON.stringify(version(shell)) },
  });
  const current = new Set([...made, ...statics, 'sw.js']);
  for (const path of current) if (squeezed.has(extname(path))) compress(join(out, path));
  sweep(current);
  writeFileSync(`${stamp}.new`, state);
  renameSync(`${stamp}.new`, stamp);
}

const squeezed = new Set(['.js', '.css', '.html', '.svg', '.webmanifest']);

function putPages(at: Readonly<Record<string, string>>): string[] {
  for (const page of pages)
    write(`${page.id}.html`, html(page, at[`web/${page.id}/main.tsx`] ?? '', at[`web/styles/${page.id}.css`] ?? ''));
  return pages.map(({ id }) => `${id}.html`);
}

function putStatics(): string[] {
  const names = readdirSync(join(root, 'web/static'));
  for (const name of names) write(name, readFileSync(join(root, 'web/static', name), 'utf8'));
  writeFileSync(join(out, 'quiet.wav'), quietWav());
  return [...names, 'quiet.wav'];
}

function sweep(current: ReadonlySet<string>): void {
  const all = readdirSync(out, { recursive: true, encoding: 'utf8' }).filter((path) => statSync(join(out, path)).isFile());
  for (const path of all) {
    if (!path.startsWith('voice') && !current.has(path.replace(/\.(br|gz)$/, ''))) rmSync(join(out, path));
  }
}

await run();
