// A bad file among the shop's procedures: nothing starts half.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;

it.each(['start', 'talk'])('%s ends with one line that names file, step and fault, and makes no log', (command) => {
  const folder = mkdtempSync(join(tmpdir(), 'axlehand-shop-'));
  const db = join(folder, 'shop.db');
  mkdirSync(join(folder, 'procedures'));
  writeFileSync(
    join(folder, 'procedures', 'hubs.json'),
    '{"id": "hubBearing", "steps": [{"id": "paintMark", "say": "Mark it."}]}',
  );
  const env = { ...process.env, PORT: '0', HOST: '', AXLEHAND_DB: db };
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'server/main.ts', command], {
    cwd: root,
    env,
    input: 'new job hub service\n',
  });
  expect(run.status).toBe(1);
  expect(String(run.stderr).trim()).toMatch(/^axlehand: hubs\.json, step 'paintMark': source: .*\. Mend the file[^\n]*$/);
  expect(existsSync(db)).toBe(false);
});
