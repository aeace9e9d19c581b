// Puts the house together: the log, the language and the dialogue. Used by every command that talks.
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { StockAxle } from '#data';
import { openLog } from '#log';
import type { House } from './app.ts';
import { plainShop } from './know.ts';
import { createLogLine } from './lines.ts';
import { loadSpeech } from './load-speech.ts';
import { createTurns } from './turns.ts';

const root = new URL('../../', import.meta.url);
const wallClock = (): string => new Date().toISOString();

/** Where the log lies unless AXLEHAND_DB says otherwise. */
export function logPath(): string {
  return process.env.AXLEHAND_DB || new URL('var/axlehand.db', root).pathname;
}

/** Opens everything a conversation needs. @throws LogFault */
export async function openHouse(path = logPath(), clock = wallClock): Promise<House> {
  const speech = await loadSpeech(path);
  const line = createLogLine(process.env.AXLEHAND_LOG ?? 'info', wallClock, (text) => void process.stderr.write(`${text}\n`));
  return { log: openLog(path), speech, pages: new URL('var/web', root).pathname, clock, line };
}

/** Nobody's; every page and sheet that names the shop says so. */
const inventedName = 'Tin Gosling Trailer Works (invented)';

/** An invented name, rack and open job, so that a new shop has something to try things on. */
export async function addDemo({ log, speech, clock }: House): Promise<void> {
  log.putSetting('shop', { ...plainShop, name: inventedName });
  log.putStock(await demo<StockAxle>('stock'));
  const turns = createTurns(log, speech, clock);
  let job: string | null = null;
  for (const [i, text] of (await demo<string>('open-job')).entries()) {
    const taken = turns.take({ id: `demo-open-job-${i + 1}`, job, text, heardBy: 'typed', heardAt: clock() }, 'demo', true);
    if (taken.ok) job = taken.value.job;
  }
}

async function demo<T>(name: string): Promise<readonly T[]> {
  const file = new URL(`data/demo/${name}.json`, root);
  if (!existsSync(file)) return [];
  return (JSON.parse(await readFile(file, 'utf8')) as { rows: T[] }).rows;
}
