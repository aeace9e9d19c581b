// Plays a whole invented job through the real server on this computer's own loopback and a log in a temporary folder.
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sheet, sheetText } from '#dialogue';
import type { TurnRequest, TurnResponse } from '#wire';
import { hostWithPort } from '../http/addresses.ts';
import { createApp, createServices, type Services } from '../http/app.ts';
import { addDemo, openHouse } from '../http/house.ts';
import { listen } from '../http/serve.ts';
import { complain } from './complain.ts';

const script = new URL('../../data/demo/axle-replacement.txt', import.meta.url);
const host = '127.0.0.1';

/** `demo`: prints the conversation, then the job sheet. Nothing of it is kept. */
export async function run(): Promise<number> {
  const folder = await mkdtemp(join(tmpdir(), 'axlehand-demo-'));
  try {
    const lines = (await readFile(script, 'utf8')).split('\n').filter((line) => line !== '' && !line.startsWith('#'));
    await play(join(folder, 'demo.db'), lines);
    return 0;
  } catch (error) {
    return complain(error);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function play(path: string, lines: readonly string[]): Promise<void> {
  const house = { ...(await openHouse(path)), line: () => undefined };
  await addDemo(house);
  const services = createServices(house);
  let at = 0;
  const gate = {
    hosts: () => [hostWithPort(host, at, 80)],
    scheme: 'http' as const,
    trusted: true,
    limit: { perSecond: 1000, burst: 1000 },
  };
  const server = await listen(createApp(services, gate), host, 0);
  at = server.port;
  try {
    const job = await converse(services, `http://${hostWithPort(host, at, 80)}`, lines);
    const record = services.log.job(job);
    if (record) console.log(`\n${sheetText(sheet(record, services.turns.know()))}`);
  } finally {
    services.listeners.bye();
    await server.stop();
    house.log.close();
  }
}

/** The first line opens the job, marked as invented; the rest comes over http like any page's. */
async function converse({ turns, clock }: Services, address: string, [first = '', ...rest]: readonly string[]): Promise<string> {
  const request = (text: string, job: string | null): TurnRequest => ({
    id: crypto.randomUUID(),
    job,
    text,
    heardBy: 'typed',
    heardAt: clock(),
  });
  const opened = turns.take(request(first, null), 'demo', true);
  if (!opened.ok || opened.value.job === null) throw new TypeError(`the demo's first line opens no job: ${first}`);
  const { job } = opened.value;
  tell(first, opened.value);
  for (const text of rest) tell(text, await post(`${address}/api/turns`, address, request(text, job)));
  return job;
}

async function post(url: string, origin: string, body: TurnRequest): Promise<TurnResponse> {
  const response = await fetch(url, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Origin: origin },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new TypeError(`the server answered ${response.status}: ${await response.text()}`);
  return (await response.json()) as TurnResponse;
}

function tell(said: string, { reply }: TurnResponse): void {
  console.log(`\n  "${said}"\n${reply.speak}`);
}
