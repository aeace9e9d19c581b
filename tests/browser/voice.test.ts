// The main job by voice: pressed and held, recognised, logged, read back, corrected by a second sentence, found at the desk and in SQLite.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { eventsIn, launch, openPage, openShop, type Shop, say, withBrowser } from '../support/browser.ts';
import { hasVoice, hold, microphone, recordTape, type Spoken } from '../support/spoken.ts';

const tape = `/tmp/axlehand-tape-${process.pid}.wav`;
const gapMs = 5000;

(hasVoice ? withBrowser : describe.skip)('the bay, by voice', () => {
  let shop: Shop;
  let browser: Awaited<ReturnType<typeof launch>>;
  let marks: readonly Spoken[];
  beforeAll(async () => {
    marks = recordTape(tape, ['hub face seventy two and three eighths', 'no, seventy two and five eighths'], gapMs);
    shop = await openShop();
    browser = await launch(microphone(tape));
  });
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  it('hears, logs and reads back, and a second sentence corrects', async () => {
    const { page, faults } = await openPage(browser, shop.url, { voice: true });
    await say(page, 'open job silver box van');
    await page.locator('.talk.ready').waitFor({ timeout: 60_000 });
    const [first, second] = marks;
    const start = await hold(page);
    await page.waitForTimeout((first?.endMs ?? 0) + 400);
    await page.mouse.up();
    await page.locator('.card .value', { hasText: '72 3/8 in' }).waitFor();
    expect(await page.locator('.last-heard').textContent()).toContain('hub face');
    await page.waitForTimeout(Math.max(0, (second?.startMs ?? 0) - 900 - (Date.now() - start)));
    await hold(page);
    await page.waitForTimeout(Math.max(0, (second?.endMs ?? 0) + 600 - (Date.now() - start)));
    await page.mouse.up();
    await page.locator('.card .value', { hasText: '72 5/8 in' }).waitFor();
    expect(faults).toEqual([]);

    await page.locator('a', { hasText: 'Review' }).click();
    const group = page.locator('.value-group', { hasText: 'hub face' });
    await group.locator('.standing .value', { hasText: '72 5/8' }).waitFor();
    expect(await group.locator('.past .value.corrected').textContent()).toContain('72 3/8');
    expect(await page.locator('.turn-head', { hasText: 'by voice' }).count()).toBe(2);

    const bodies = eventsIn(shop.db);
    const heard = bodies.filter((body) => body.kind === 'heard' && body.heardBy === 'builtIn');
    expect(heard).toHaveLength(2);
    const values = bodies.flatMap((body) =>
      body.kind === 'valueHeard' && body.value.field === 'hubFace' ? [body.value.value] : [],
    );
    expect(values.slice(-2)).toEqual(['579/8', '581/8']);
    expect(bodies.some(({ kind }) => kind === 'valueCorrected')).toBe(true);
  });
});
