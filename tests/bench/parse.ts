// npm run -s bench:parse: bundles the readers as the page and the server are bundled, then runs them in a plain Node process; a
// development loader would slow every function that keeps its name.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

const folder = mkdtempSync(join(tmpdir(), 'axlehand-bench-'));
const outfile = join(folder, 'parse.cjs');
try {
  const entryPoints = [join(import.meta.dirname, 'parse-run.ts')];
  await build({ entryPoints, outfile, bundle: true, packages: 'external', platform: 'node', format: 'cjs', target: 'node20' });
  const env = { ...process.env, NODE_PATH: join(import.meta.dirname, '../../node_modules') };
  process.exitCode = spawnSync(process.execPath, [outfile], { stdio: 'inherit', env }).status ?? 1;
} finally {
  rmSync(folder, { recursive: true });
}
