// What a first load costs and how long an answer takes on the page, typed and by voice: npm run -s bench:page. One JSON object on
// standard output.
import { readdirSync, readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import type { Page } from 'playwright-core';
import { anyMicrophone, launch, openPage, openShop, say } from '../support/browser.ts';
import { speak, withMouth } from '../support/mouth.ts';

const rounds = Number(process.argv[2] ?? 40);

/** Up to four seconds long. */
const sentences = [
  'yes',
  'done',
  'next',
  'hub face seventy two and three eighths',
  'spring centre fifty eight and a half',
  'five on four and a half',
  'wheel nuts ninety foot pounds',
  'left end play five thousandths',
  'tyre pressure sixty five',
  'what is the end play',
  'read it back',
  'spring width one and three quarters',
  'no seventy two and five eighths',
  'hub temperature right one hundred twenty',
  'overhang eight and three quarters',
  'capacity thirty five hundred pounds',
];

function spread(times: number[]): { readonly p50: number; readonly p95: number; readonly worst: number } {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (part: number): number => Math.round(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? 0);
  return { p50: at(0.5), p95: at(0.95), worst: at(1) };
}

const shop = await openShop();
const browser = await launch(anyMicrophone);
try {
  const { page } = await openPage(browser, 'about:blank', { serviceWorkers: 'allow' });
  const bytes = { script: 0, style: 0, html: 0 };
  page.on('response', (response) => {
    const size = Number(response.headers()['content-length'] ?? 0);
    const { pathname } = new URL(response.url());
    if (/worker|sw\.js|voice/.test(pathname)) return;
    if (pathname.endsWith('.js')) bytes.script += size;
    else if (pathname.endsWith('.css')) bytes.style += size;
    else if (pathname === '/') bytes.html += size;
  });
  const opened = performance.now();
  await page.goto(shop.url);
  await page.locator('.talk').waitFor();
  const firstLoadMs = Math.round(performance.now() - opened);
  await say(page, 'open job bench');
  const times: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const sent = performance.now();
    await say(page, `spring width one and ${round % 2 === 0 ? 'three quarters' : 'a half'}`);
    times.push(performance.now() - sent);
  }
  console.log(
    JSON.stringify({ firstLoadMs, firstLoadBytes: bytes, turnToAnswerOnPageMs: spread(times), rounds, ...(await voice()) }),
  );
} finally {
  await browser.close();
  await shop.close();
}

declare global {
  interface Window {
    /** Milliseconds from an answer's arrival at the page to its first sound leaving it, by where the sound comes from. */
    firstSounds: { readonly bank: number[]; readonly server: number[] };
  }
}

/** Runs in the page. */
function timeFirstSounds(): void {
  let came: number | undefined;
  let from: 'bank' | 'server' = 'bank';
  window.firstSounds = { bank: [], server: [] };
  document.addEventListener('pointerdown', () => (came = undefined), { capture: true });
  const { json, arrayBuffer } = Response.prototype;
  Response.prototype.arrayBuffer = function () {
    if (new URL(this.url).pathname === '/api/speech') from = 'server';
    return arrayBuffer.call(this);
  };
  Response.prototype.json = async function () {
    const body: unknown = await json.call(this);
    if (new URL(this.url).pathname === '/api/turns') [came, from] = [performance.now(), 'bank'];
    return body;
  };
  const { start } = AudioBufferSourceNode.prototype;
  AudioBufferSourceNode.prototype.start = function (at = 0, ...rest: number[]) {
    const { currentTime, baseLatency } = this.context as AudioContext;
    // The clicks that say "heard" are oscillators; clips of the bank are not.
    if (came !== undefined)
      window.firstSounds[from].push(performance.now() - came + 1000 * (Math.max(0, at - currentTime) + baseLatency));
    came = undefined;
    start.call(this, at, ...rest);
  };
}

async function voice() {
  const { page } = await openPage(browser, 'about:blank', { voice: true, serviceWorkers: 'allow' });
  await withMouth(page);
  await page.addInitScript(timeFirstSounds);
  let voiceBytes = 0;
  page.on('response', (response) => {
    if (response.url().includes('/voice/')) voiceBytes += Number(response.headers()['content-length'] ?? 0);
  });
  const voiceReadyMs = await ready(page, () => page.goto(shop.url));
  await page.locator('.link-state', { hasText: 'works without network' }).waitFor();
  const voiceReadyFromCacheMs = await ready(page, () => page.reload());
  await say(page, 'open job bench by voice');
  for (const text of [...sentences, ...sentences]) await speak(page, text);
  const { waits, firstSounds } = await page.evaluate(() => ({ waits: window.waits, firstSounds: window.firstSounds }));
  return {
    voiceReadyMs,
    voiceBytes,
    voiceReadyFromCacheMs,
    releaseToTextMs: spread(waits),
    said: waits.length,
    answerToFirstSoundMs: { bank: spread(firstSounds.bank), server: spread(firstSounds.server) },
    answersSpoken: { bank: firstSounds.bank.length, server: firstSounds.server.length },
    pageMB: pageMB(),
  };
}

async function ready(page: Page, go: () => Promise<unknown>): Promise<number> {
  const began = performance.now();
  await go();
  await page.locator('.talk.ready').waitFor({ timeout: 60_000 });
  return Math.round(performance.now() - began);
}

/** Memory of the page with its worker: the largest of the browser's page processes, as /proc tells it. */
function pageMB(): number {
  const sizes = readdirSync('/proc').flatMap((pid) => {
    try {
      if (!readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('--type=renderer')) return [];
      return [Number(/VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0)];
    } catch {
      return [];
    }
  });
  return Math.round(Math.max(0, ...sizes) / 1000);
}
