// The real server as its own process, for tests that pull its plug.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { spoken } from './server.ts';

const root = new URL('../..', import.meta.url).pathname;

export interface Running {
  readonly child: ChildProcess;
  /** http://127.0.0.1:PORT */
  readonly address: string;
  /** What it wrote, both streams. */
  readonly output: () => string;
}

/** Starts it on a free port. @throws Error with its output when it does not come up */
export async function startServer(
  db: string,
  env: Readonly<Record<string, string>> = {},
  args: readonly string[] = [],
): Promise<Running> {
  const all = { ...process.env, PORT: '0', HOST: '', AXLEHAND_DB: db, ...env };
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts', 'start', ...args], { cwd: root, env: all });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (data) => (output += data));
  const address = await new Promise<string>((resolve, reject) => {
    const look = (): void => {
      const found = /Axlehand is at (\S+)\//.exec(output)?.[1];
      if (found) resolve(found);
    };
    child.stdout.on('data', look);
    child.once('exit', (code) => reject(new Error(`server ended with ${code}: ${output}`)));
  });
  return { child, address, output: () => output };
}

/** @returns its exit code, or the signal that ended it */
export async function ended({ child }: Running): Promise<number | string | null> {
  if (child.exitCode !== null || child.signalCode !== null) return child.exitCode ?? child.signalCode;
  const [code, signal] = await once(child, 'exit');
  return code ?? signal;
}

/** Sends one turn. @throws when the server is gone before it answers */
export async function post(address: string, turn: ReturnType<typeof spoken>): Promise<{ status: number; body: unknown }> {
  const headers = { 'content-type': 'application/json', origin: address };
  const response = await fetch(`${address}/api/turns`, { method: 'POST', headers, body: JSON.stringify(turn) });
  return { status: response.status, body: await response.json() };
}
