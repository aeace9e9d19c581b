// What goes wrong with a device: no room, no microphone, a wrong clock, hostile text. A plain word each time, nothing lost.
import { expect, it } from 'vitest';
import type { JobEvent, JobRecord } from '#log/events';
import { kept, openFloor, say, withBrowser } from '../support/browser.ts';

withBrowser('a device in trouble', () => {
  const floor = openFloor({ switches: ['--use-fake-device-for-media-stream'] });

  it('says that there is no room left, and sends all the same', async () => {
    const { page, faults } = await floor.open('about:blank');
    await page.addInitScript(() => {
      IDBObjectStore.prototype.add = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await page.goto(floor.shop.url);
    await say(page, 'open job full phone');
    await page.locator('.notice', { hasText: 'no room left' }).waitFor();
    await say(page, 'hub face seventy-two');
    await page.locator('.card .value', { hasText: '72 in' }).waitFor();
    expect(faults).toEqual([]);
  });

  it('fetches a damaged model anew; names a microphone refused, missing, taken or dumb; and the next press works', async () => {
    const { page, faults } = await floor.open('about:blank', { voice: true });
    let damage = true;
    await page.route('**/voice/encoder-*', (route) => (damage ? route.fulfill({ body: 'half of it' }) : route.continue()));
    await page.goto(floor.shop.url);
    await page.locator('.talk.unavailable', { hasText: 'came damaged' }).waitFor({ timeout: 60_000 });
    damage = false;
    await page.locator('.talk').click();
    await page.locator('.talk.ready').waitFor({ timeout: 60_000 });

    await page.locator('.talk').click();
    await page.locator('.notice', { hasText: 'not allowed' }).waitFor();
    for (const [name, words] of [
      ['NotFoundError', 'No microphone found'],
      ['NotReadableError', 'another program'],
    ] as const) {
      await page.evaluate((fault) => {
        navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', fault));
      }, name);
      await page.locator('.talk.ready').click();
      await page.locator('.notice', { hasText: words }).waitFor();
    }
    await page.evaluate(() => {
      const silence = new AudioContext().createMediaStreamDestination();
      navigator.mediaDevices.getUserMedia = () => Promise.resolve(silence.stream);
    });
    await page.locator('.talk.ready').hover();
    await page.mouse.down();
    await page.locator('.talk.listening').waitFor();
    await page.waitForTimeout(600);
    await page.mouse.up();
    await page.locator('.notice', { hasText: 'Heard nothing' }).waitFor();
    await page.locator('.talk.ready').waitFor();
    await say(page, 'open job by hand alone');
    await page.locator('.job-title', { hasText: 'By hand alone' }).waitFor();
    expect(faults).toEqual([]);
  });

  it.each(['2019-01-01T03:00:00Z', '2031-01-01T03:00:00Z'])('takes a yes from a device whose clock says %s', async (time) => {
    const { page, faults } = await floor.open('about:blank');
    await page.clock.install({ time: new Date(time) });
    await page.goto(floor.shop.url);
    await say(page, 'open job wrong clock');
    await say(page, 'end play left four thousandths');
    await say(page, 'yes');
    await page.locator('.card .value.confirmed', { hasText: '0.004' }).waitFor();
    const job = await page.locator('.card-id').textContent();
    const { openedAt } = await kept<JobRecord>(floor.shop, `/api/jobs/${job}/record`);
    expect(Math.abs(Date.now() - Date.parse(openedAt))).toBeLessThan(600_000);
    expect(faults).toEqual([]);
  });

  it('keeps dictated markup, right-to-left marks and emoji as they are, on every page that shows them', async () => {
    const { page, faults } = await floor.open();
    const notes = [
      'note <img src=x onerror="document.title=1"><script>document.title=2</script>',
      'note \u202eturned round\u202c and \u05e9\u05dc\u05d5\u05dd',
      'note grease 🛠️👩🏽‍🔧 everywhere',
    ];
    await say(page, 'open job hostile notes');
    for (const note of notes) await say(page, note);
    const job = await page.locator('.card-id').textContent();
    const { events } = await kept<{ events: JobEvent[] }>(floor.shop, `/api/jobs/${job}/events`);
    expect(events.flatMap(({ body }) => (body.kind === 'heard' ? [body.text] : [])).slice(1)).toEqual(notes);
    for (const [path, ready] of [
      ['', '.card-id'],
      [`/jobs/${job}`, '.turn'],
      [`/jobs/${job}/sheet`, 'main'],
      ['/log', '.jobs tbody tr'],
    ]) {
      await page.goto(floor.shop.url + path);
      await page
        .locator(ready ?? '')
        .first()
        .waitFor();
      expect(await page.locator('#page script, #page img').count(), path).toBe(0);
      expect(await page.title()).toMatch(/Axlehand/);
    }
    await page.goto(`${floor.shop.url}/jobs/${job}`);
    for (const note of notes) await page.locator('.told.heard dd', { hasText: note }).waitFor();
    expect(faults).toEqual([]);
  });

  it('refuses a note of five thousand characters plainly, and gives it back to be shortened', async () => {
    const { page } = await floor.open();
    await say(page, 'open job long note');
    const note = `note ${'long '.repeat(999)}`.trim();
    expect(await say(page, note)).toMatch(/500/);
    await page.locator('.last.refused').waitFor();
    expect(await page.inputValue('#typed')).toBe(note);
    await page.fill('#typed', '');
    await say(page, 'note short');
    await page.locator('.last.taken, .last.answer').waitFor();
  });

  it('keeps the screen awake while a job is open, and asks again when the page comes back', async () => {
    const { page } = await floor.open('about:blank');
    await page.addInitScript(() => {
      const counts = globalThis as unknown as { asked: number; sentinel: { released: boolean } };
      counts.asked = 0;
      counts.sentinel = { released: false };
      const request = async () => {
        counts.asked += 1;
        counts.sentinel = { released: false };
        return counts.sentinel;
      };
      Object.defineProperty(navigator, 'wakeLock', { value: { request } });
    });
    await page.goto(floor.shop.url);
    const asked = () => page.evaluate(() => (globalThis as unknown as { asked: number }).asked);
    await page.locator('.resume').waitFor();
    expect(await asked()).toBe(0);
    await say(page, 'open job awake');
    await page.locator('.job-title', { hasText: 'Awake' }).click();
    await expect.poll(asked).toBe(1);
    await page.evaluate(() => {
      (globalThis as unknown as { sentinel: { released: boolean } }).sentinel.released = true;
      document.dispatchEvent(new Event('visibilitychange'));
    });
    await expect.poll(asked).toBe(2);
  });
});
