// The same script in every text field that the server takes, seen as plain text on every page.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { openFloor, withBrowser } from '../support/browser.ts';

const script = '<img src=x onerror=owned=1>';

withBrowser('a script in every text field', () => {
  const floor = openFloor();

  async function send(method: string, path: string, body: unknown, type = 'application/json') {
    const { url } = floor.shop;
    const text = typeof body === 'string' ? body : JSON.stringify(body);
    const response = await fetch(url + path, { method, body: text, headers: { 'content-type': type, origin: url } });
    const answer = await response.text();
    expect(response.status, `${path}: ${answer}`).toBe(200);
    return JSON.parse(answer);
  }

  const says = (text: string, job: string | null, n: number) =>
    send('POST', '/api/turns', { id: `inert-${n}-xxxx`, job, text, heardBy: 'typed', heardAt: new Date().toISOString() });

  /** Fills every field there is. @returns the job's number */
  async function fill(): Promise<string> {
    await send('PUT', '/api/settings', {
      name: `shop ${script}`,
      lengthUnit: 'in',
      spelling: 'british',
      sides: { left: script, right: `r${script}` },
    });
    await send('POST', '/api/stock', `id,title,place,hubFace\nA-1,axle ${script},rack ${script},72\n`, 'text/csv');
    const { job } = await says(`open job ${script}`, null, 0);
    const sayings = [
      'left end play four thousandths',
      'yes',
      `note ${script}`,
      `remind me to ${script}`,
      'next',
      `skip, ${script}`,
      'what fits',
      script,
    ];
    for (const [i, saying] of sayings.entries()) await says(saying, job, i + 1);
    const desk = async (action: string, target: string, more = {}) => {
      const { version } = await (await fetch(`${floor.shop.url}/api/jobs/${job}`)).json();
      await send('POST', `/api/jobs/${job}/desk`, {
        id: `inert-${action}-${version}`,
        version,
        action,
        target,
        reason: script,
        ...more,
      });
    };
    const { values } = await (await fetch(`${floor.shop.url}/api/jobs/${job}/record`)).json();
    await desk('annotate', values[0].id);
    await desk('correct', values[0].id, { value: '0.005' });
    const { code } = await send('POST', '/api/devices/codes', { role: 'bay' });
    await send('POST', '/api/pair', { code, name: `bay ${script}` });
    return job;
  }

  async function say(page: Page, words: string): Promise<void> {
    await page.fill('#typed', words);
    await page.press('#typed', 'Enter');
    await page.locator('.card-id').waitFor();
  }

  it('runs nowhere, makes no element, and stands there to be read', async () => {
    const job = await fill();
    const pages: readonly (readonly [path: string, ready: string, times: number])[] = [
      ['/', '.talk', 2],
      ['/log', '.jobs tbody tr', 1],
      [`/log?q=${encodeURIComponent(script)}`, '#page > *', 0],
      [`/jobs/${job}`, '.turn', 5],
      [`/jobs/${job}/sheet`, 'main', 5],
      ['/devices', '.count', 1],
      [`/pair#${encodeURIComponent(script)}`, '#page > *', 0],
    ];
    for (const [path, ready, times] of pages) {
      const { page, faults } = await floor.open(path);
      page.on('dialog', (dialog) => faults.push(`dialog: ${dialog.message()}`));
      await page.locator(ready).first().waitFor();
      if (path === '/') await say(page, `resume job ${job}`);
      const seen = await page.evaluate(() => ({
        owned: (globalThis as { owned?: unknown }).owned,
        made: document.querySelectorAll('img, [onerror], #page script').length,
        text: document.body.textContent + [...document.querySelectorAll('input')].map(({ value }) => value).join('\n'),
      }));
      expect([seen.owned, seen.made], path).toEqual([undefined, 0]);
      expect(seen.text.split('onerror=owned=1').length - 1, path).toBeGreaterThanOrEqual(times);
      expect(faults, path).toEqual([]);
      await page.context().close();
    }
  });

  it('is no formula in the files for a spreadsheet', async () => {
    const { url } = floor.shop;
    const { job } = await says('open job =1+2 trailer', null, 50);
    for (const [i, cell] of ['=cmd|calc', '+1+2', '-1+2', '@sum(1)', '\t=1', '＝1'].entries())
      await says(`note ${cell}`, job, 51 + i);
    for (const path of [`/api/jobs/${job}/sheet.csv`, '/api/stock?format=csv']) {
      const csv = await (await fetch(url + path)).text();
      const cells = csv.split(/\r?\n/).flatMap((line) => line.split(','));
      expect(
        cells.filter((cell) => /^"?\s*[=+@\t＝]/.test(cell)),
        path,
      ).toEqual([]);
    }
  });
});
