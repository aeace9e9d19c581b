// The server gone for twenty turns and back: none lost, none doubled, in order. And the page itself starts without it.
import { expect, it } from 'vitest';
import type { JobEvent } from '#log/events';
import { kept, openFloor, say, withBrowser } from '../support/browser.ts';

withBrowser('without the server', () => {
  const floor = openFloor();

  it('keeps twenty turns, reads them back, survives a reload, and sends each once and in order', async () => {
    const { page, faults } = await floor.open('/', { serviceWorkers: 'allow' });
    await say(page, 'open job green stock trailer');
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await floor.shop.down();
    const notes = Array.from({ length: 20 }, (_, index) => `note number ${index + 1} of the offline run`);
    expect(await say(page, 'spring width one and three quarters')).toMatch(/1 3\/4 in.*not sent/s);
    for (const note of notes.slice(0, 12)) await say(page, note);
    await page.locator('.link-state', { hasText: '13 kept on this device, not sent' }).waitFor();
    await page.locator('.kept-values', { hasText: '1 3/4 in' }).waitFor();

    await page.reload();
    await page.locator('.link-state', { hasText: '13 kept' }).waitFor();
    await page.locator('.job-title', { hasText: 'Green stock trailer' }).waitFor();
    for (const note of notes.slice(12)) await say(page, note);
    await page.locator('.link-state', { hasText: '21 kept' }).waitFor();

    await floor.shop.up();
    await page.locator('.link-state', { hasText: 'In the log' }).waitFor({ timeout: 30_000 });
    const job = await page.locator('.card-id').textContent();
    const { events } = await kept<{ events: JobEvent[] }>(floor.shop, `/api/jobs/${job}/events`);
    const heard = events.flatMap(({ body }) => (body.kind === 'heard' ? [body.text] : []));
    expect(heard).toEqual(['open job green stock trailer', 'spring width one and three quarters', ...notes]);
    expect(faults).toEqual([]);
  });

  it('ties turns said after an offline "open job" to that job', async () => {
    const { page } = await floor.open('/', { serviceWorkers: 'allow' });
    await page.locator('.link-state.up').waitFor();
    await floor.shop.down();
    await say(page, 'open job opened while offline');
    await say(page, 'hub face seventy');
    await floor.shop.up();
    await page.locator('.job-title', { hasText: 'Opened while offline' }).waitFor({ timeout: 30_000 });
    await page.locator('.card table', { hasText: '70 in' }).waitFor();
  });

  it('sends what two open tabs kept each once, and both show it', async () => {
    const { page } = await floor.open('/', { serviceWorkers: 'allow' });
    await say(page, 'open job two tabs');
    const job = await page.locator('.card-id').textContent();
    const tab = await page.context().newPage();
    await tab.goto(`${floor.shop.url}/?job=${job}`);
    await tab.locator('.link-state.up').waitFor();
    await floor.shop.down();
    const notes = ['one', 'two', 'three', 'four', 'five', 'six'].map((word) => `note ${word} of two tabs`);
    for (const [index, note] of notes.entries()) await say(index % 2 === 0 ? page : tab, note);
    await floor.shop.up();
    for (const each of [page, tab]) await each.locator('.link-state', { hasText: 'In the log' }).waitFor({ timeout: 30_000 });
    const heard = async () => {
      const { events } = await kept<{ events: JobEvent[] }>(floor.shop, `/api/jobs/${job}/events`);
      return events.flatMap(({ body }) => (body.kind === 'heard' ? [body.text] : []));
    };
    await expect.poll(heard, { timeout: 15_000 }).toEqual(['open job two tabs', ...notes]);
    for (const each of [page, tab]) expect(await each.locator('.tally-mark', { hasText: 'not sent' }).count()).toBe(0);
  });

  it('sends a turn once that was on its way when the page was closed', async () => {
    const { page } = await floor.open('/', { serviceWorkers: 'allow' });
    await say(page, 'open job closed in between');
    const job = await page.locator('.card-id').textContent();
    await page.route('**/api/turns', () => undefined);
    await page.fill('#typed', 'note cut off in between');
    await page.press('#typed', 'Enter');
    await page.locator('.tally-line', { hasText: 'on its way' }).waitFor();
    const again = await page.context().newPage();
    await page.close();
    await again.goto(`${floor.shop.url}/?job=${job}`);
    await expect
      .poll(async () => {
        const { events } = await kept<{ events: JobEvent[] }>(floor.shop, `/api/jobs/${job}/events`);
        return events.filter(({ body }) => body.kind === 'heard' && body.text === 'note cut off in between').length;
      })
      .toBe(1);
  });

  it('leaves one turn in the log when the answer got lost on the way', async () => {
    const { page } = await floor.open('/', { serviceWorkers: 'allow' });
    await say(page, 'open job lost answer');
    let cut = true;
    await page.route('**/api/turns', async (route) => {
      if (!cut) return route.continue();
      cut = false;
      await route.fetch();
      await route.abort();
    });
    await page.fill('#typed', 'note said once');
    await page.press('#typed', 'Enter');
    await page.locator('.tally-line', { hasText: 'not sent' }).first().waitFor();
    await page.locator('.link-state', { hasText: 'In the log' }).waitFor({ timeout: 30_000 });
    const job = await page.locator('.card-id').textContent();
    const { events } = await kept<{ events: JobEvent[] }>(floor.shop, `/api/jobs/${job}/events`);
    expect(events.filter(({ body }) => body.kind === 'heard' && body.text === 'note said once')).toHaveLength(1);
  });
});
