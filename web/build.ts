// Builds the page into var/web: hashed scripts and styles, one HTML file a page, the service worker, the manifest, and
// each text file again in .br and .gz. `--if-stale` does nothing when no input has changed.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { type BuildOptions, build, type Metafile } from 'esbuild';
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

async function workers(): Promise<Record<string, string>> {
  const found = readdirSync(join(root, 'web'), { recursive: true, encoding: 'utf8' }).filter((path) =>
    /\.(worker|worklet)\.ts$/.test(path),
  );
  if (found.length === 0) return {};
  const entryPoints = found.map((path) => `web/${path}`);
  const { metafile } = await build({ ...shared, entryPoints, entryNames: 'assets/[name]-[hash]', outbase: 'web' });
  return Object.fromEntries(Object.entries(addresses(metafile)).map(([entry, url]) => [basename(entry, '.ts'), url]));
}

async function run(): Promise<void> {
  const state = inputs();
  if (process.argv.includes('--if-stale') && existsSync(stamp) && readFileSync(stamp, 'utf8') === state && existsSync(out))
    return;
  rmSync(stamp, { force: true });
  for (const old of existsSync(out) ? readdirSync(out) : []) {
    if (old !== 'voice') rmSync(join(out, old), { recursive: true });
  }
  mkdirSync(out, { recursive: true });

  const voice = await copyVoiceAssets(out);
  const define = { ASSETS: JSON.stringify({ ...(await workers()), ...voiceNames(voice) }) };
  const scripts = pages.map(({ id }) => `web/${id}/main.tsx`);
  const styles = pages.map(({ id }) => `web/styles/${id}.css`);
  const { metafile } = await build({
    ...shared,
    define,
    splitting: true,
    entryPoints: [...scripts, ...styles],
    entryNames: 'assets/[dir]-[name]-[hash]',
    chunkNames: 'assets/[name]-[hash]',
    outbase: 'web',
  });
  const at = addresses(metafile);
  for (const page of pages)
    write(`${page.id}.html`, html(page, at[`web/${page.id}/main.tsx`] ?? '', at[`web/styles/${page.id}.css`] ?? ''));
  for (const name of readdirSync(join(root, 'web/static'))) write(name, readFileSync(join(root, 'web/static', name), 'utf8'));
  writeFileSync(join(out, 'quiet.wav'), quietWav());

  const names = readdirSync(join(out, 'assets')).filter((name) => !name.endsWith('.map'));
  const shell = [
    ...names.map((name) => `/assets/${name}`),
    ...pages.map(({ id }) => `/${id}.html`),
    '/manifest.webmanifest',
    '/icon.svg',
  ];
  await build({
    ...shared,
    sourcemap: false,
    entryPoints: { sw: 'web/sw.ts' },
    entryNames: '[name]',
    define: { SHELL: JSON.stringify(shell), VOICE: JSON.stringify(voice), VERSION: JSON.stringify(version(shell)) },
  });
  const texts = readdirSync(out, { recursive: true, encoding: 'utf8' }).filter(
    (path) => !path.startsWith('voice') && ['.js', '.css', '.html', '.svg', '.webmanifest'].includes(extname(path)),
  );
  for (const path of texts) compress(join(out, path));
  writeFileSync(`${stamp}.new`, state);
  renameSync(`${stamp}.new`, stamp);
}

await run();
