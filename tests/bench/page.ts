// What a first load costs and how long an answer takes on the page: npm run -s bench:page. One JSON object on standard output.
import { performance } from 'node:perf_hooks';
import { launch, openPage, openShop, say } from '../support/browser.ts';

const rounds = Number(process.argv[2] ?? 40);

function spread(times: number[]): { readonly p50: number; readonly p95: number; readonly worst: number } {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (part: number): number => Math.round(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? 0);
  return { p50: at(0.5), p95: at(0.95), worst: at(1) };
}

const shop = await openShop();
const browser = await launch();
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
  const { voiceReadyMs, voiceBytes } = await voice();
  console.log(
    JSON.stringify({ firstLoadMs, firstLoadBytes: bytes, turnToAnswerOnPageMs: spread(times), rounds, voiceReadyMs, voiceBytes }),
  );
} finally {
  await browser.close();
  await shop.close();
}

async function voice(): Promise<{ voiceReadyMs: number; voiceBytes: number }> {
  const { page } = await openPage(browser, 'about:blank', { voice: true });
  let voiceBytes = 0;
  page.on('response', (response) => {
    if (response.url().includes('/voice/')) voiceBytes += Number(response.headers()['content-length'] ?? 0);
  });
  const opened = performance.now();
  await page.goto(shop.url);
  await page.locator('.talk.ready').waitFor({ timeout: 60_000 });
  return { voiceReadyMs: Math.round(performance.now() - opened), voiceBytes };
}
