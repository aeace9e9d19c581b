// What a first load costs and how long an answer takes on the page, typed and by voice: npm run -s bench:page. One JSON object on
// standard output.
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { anyMicrophone, launch, openPage, openShop, say, scratch } from '../support/browser.ts';
import { speak, withMouth } from '../support/mouth.ts';
import { openPlain, pause } from '../support/plain-browser.ts';
import { rate, voiceNamed } from '../support/speech.ts';
import { microphone, wavOf } from '../support/spoken.ts';

/** Seconds of the tape that a sentence is given. */
const slot = 4;
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
    JSON.stringify({
      firstLoadMs,
      firstLoadBytes: bytes,
      turnToAnswerOnPageMs: spread(times),
      rounds,
      ...(await voice()),
      alone: await alone(),
    }),
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
  await page.goto(shop.url);
  await page.locator('.talk.ready').waitFor({ timeout: 60_000 });
  await say(page, 'open job bench by voice');
  for (const text of [...sentences, ...sentences]) await speak(page, text);
  const { waits, firstSounds } = await page.evaluate(() => ({ waits: window.waits, firstSounds: window.firstSounds }));
  return {
    voiceBytes,
    releaseToTextMs: spread(waits),
    said: waits.length,
    answerToFirstSoundMs: { bank: spread(firstSounds.bank), server: spread(firstSounds.server) },
    answersSpoken: { bank: firstSounds.bank.length, server: firstSounds.server.length },
  };
}

/** A tape of all sentences, for the fake microphone. */
function record(path: string): void {
  const rms = voiceNamed('rms');
  const parts = sentences.map((text) => {
    const whole = new Float32Array(slot * rate);
    whole.set(rms.say(text).subarray(0, slot * rate), rate / 4);
    return whole;
  });
  writeFileSync(path, wavOf(parts));
}

/** How soon the page is ready from what the device keeps, and how much memory it takes: where nothing else looks on. */
async function alone() {
  const folder = scratch();
  const tape = join(folder, 'tape.wav');
  record(tape);
  const page = await openPlain(microphone(tape, 'again and again'));
  const ready = `Boolean(document.querySelector('.talk.ready'))`;
  const timed = async (go: () => Promise<void>): Promise<number> => {
    const began = performance.now();
    await go();
    await page.until(ready);
    return Math.round(performance.now() - began);
  };
  try {
    const readyMs = await timed(() => page.goto(shop.url));
    await page.until(`document.querySelector('.link-state').textContent.includes('works without network')`);
    const fromCache: number[] = [];
    for (let time = 0; time < 5; time += 1) {
      await page.goto('about:blank');
      // The page that goes has its own work to do.
      await pause(2000);
      fromCache.push(await timed(() => page.goto(shop.url)));
    }
    const whenReady = page.memory();
    const inUse: ReturnType<typeof page.memory>[] = [];
    for (const _ of [...sentences, ...sentences]) {
      await page.hold('.talk', 3000);
      await page.until(ready);
      inUse.push(page.memory());
    }
    const most = inUse.reduce((one, other) => (other.own > one.own ? other : one));
    return { readyMs, readyFromCacheMs: spread(fromCache), pageMB: { whenReady, mostInUse: most } };
  } finally {
    await page.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
