// A real Chromium against a real server with a log of its own. No Chromium: skipped aloud, or failed where CI is set.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe } from 'vitest';
import type { EventBody } from '#log/events';

const root = new URL('../..', import.meta.url).pathname;
const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/usr/bin/google-chrome-stable'];
const found = [process.env.AXLEHAND_CHROMIUM, ...places].find((path) => path && existsSync(path));

const howTo = `No Chromium or Chrome at ${places.join(', ')}: browser tests cannot run. Get one with: apt-get install chromium (or set AXLEHAND_CHROMIUM).`;
if (!found && process.env.CI === 'true') throw new Error(howTo);
if (!found) console.warn(`\n*** ${howTo} ***\n`);

/** `describe`, or a loud skip where there is no browser. */
export const withBrowser = found ? describe : describe.skip;

/** Switches that give the browser a microphone and leave to open it. */
export const anyMicrophone = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'];

/** Switches that make it silent and have it call nobody. */
export const quietSwitches = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--mute-audio',
];

export const chromiumPath = (): string => found ?? '';

/** Headless and quiet. `extra`: more switches, such as a fake microphone. */
export function launch(extra: readonly string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: chromiumPath(), args: [...quietSwitches, ...extra] });
}

export interface Shop {
  readonly url: string;
  readonly db: string;
  /** Stops the server; the log stays. */
  down(): Promise<void>;
  /** Starts it again at the same port. */
  up(): Promise<void>;
  /** Stops it and throws the log away. */
  close(): Promise<void>;
}

/** A folder in memory where there is one: a disk would be asked to write through at each turn. */
export const scratch = (): string => mkdtempSync(join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'axlehand-'));

/** A server of its own on a free port. `db`: a log made beforehand. */
export async function openShop(db?: string): Promise<Shop> {
  const folder = scratch();
  const path = db ?? join(folder, 'log.db');
  let { child, url } = await start(path, '0');
  const { port } = new URL(url);
  return {
    url,
    db: path,
    down: () => stop(child),
    up: async () => {
      ({ child, url } = await start(path, port));
    },
    close: async () => {
      await stop(child);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function start(db: string, port: string): Promise<{ child: ChildProcess; url: string }> {
  const env = { ...process.env, HOST: '127.0.0.1', PORT: port, AXLEHAND_DB: db };
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts', 'start'], { cwd: root, env });
  return new Promise((resolve, reject) => {
    let said = '';
    const hear = (chunk: Buffer): void => {
      said += chunk;
      const url = /http:\/\/\S+?:\d+/.exec(said)?.[0];
      if (url) resolve({ child, url });
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
  });
}

async function stop(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await gone;
}

export interface Bay {
  readonly page: Page;
  /** What the page complained of: console errors and uncaught faults. */
  readonly faults: string[];
}

interface PageOptions extends BrowserContextOptions {
  /** Loads the recogniser, which costs seconds of a processor; without it the page works by typing. */
  readonly voice?: boolean;
}

const usual = { viewport: { width: 1280, height: 800 }, serviceWorkers: 'block' } as const;

/** A fresh device with the page open. Nothing is installed on it, unless the service worker is allowed. */
export async function openPage(browser: Browser, url: string, { voice = false, ...options }: PageOptions = {}): Promise<Bay> {
  const context = await browser.newContext({ ...usual, ...options });
  if (!voice) await context.route('**/voice/**', (route) => route.abort());
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    // A refused request is the server's to report; the page shows it.
    if (message.type() === 'error' && !message.text().startsWith('Failed to load resource')) faults.push(message.text());
  });
  await page.goto(url);
  return { page, faults };
}

export interface Floor {
  readonly shop: Shop;
  readonly browser: Browser;
  /** A fresh device with this page of the shop open. */
  open(path?: string, options?: PageOptions): Promise<Bay>;
}

/** A shop and a browser of their own for all tests of a `describe`. `db`: a log made beforehand. */
export function openFloor({ switches = [], db }: { switches?: readonly string[]; db?: string } = {}): Floor {
  let shop: Shop | undefined;
  let browser: Browser | undefined;
  beforeAll(async () => {
    [shop, browser] = await Promise.all([openShop(db), launch(switches)]);
  });
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });
  const there = <T>(thing: T | undefined): T => {
    if (thing === undefined) throw new TypeError('the shop and its browser are there only while tests run');
    return thing;
  };
  return {
    get shop() {
      return there(shop);
    },
    get browser() {
      return there(browser);
    },
    open: (path = '/', options = {}) => openPage(there(browser), new URL(path, there(shop).url).href, options),
  };
}

/** Types a sentence and waits for its answer to be shown. */
export async function say(page: Page, text: string): Promise<string> {
  const answers = page.locator('.tally-line.answered');
  const before = await answers.count();
  await page.fill('#typed', text);
  await page.press('#typed', 'Enter');
  await answers.nth(before).waitFor();
  return ((await answers.nth(before).textContent()) ?? '').replace(/^Said\s*/, '');
}

/** What the server keeps. */
export async function kept<T>(shop: Shop, path: string): Promise<T> {
  return (await (await fetch(shop.url + path)).json()) as T;
}

/** All that the log at `path` holds. */
export function eventsIn(path: string): readonly EventBody[] {
  const db = new Database(path, { readonly: true });
  const rows = db.prepare('SELECT body FROM events ORDER BY seq').all() as { body: string }[];
  db.close();
  return rows.map(({ body }) => JSON.parse(body) as EventBody);
}
