import { expect, it } from 'vitest';
import type { JobRecord } from '#log/events';
import { kept, openFloor, say, withBrowser } from '../support/browser.ts';

withBrowser('the bay, by typing', () => {
  const floor = openFloor();

  it('opens a job, takes measures, corrects one, and shows what is not confirmed', async () => {
    const { page, faults } = await floor.open();
    await say(page, 'open job red tipper bent axle');
    await page.locator('.job-title', { hasText: 'red tipper' }).waitFor();
    await say(page, 'hub face seventy-two and three eighths');
    await say(page, 'spring centre fifty-eight');
    const card = page.locator('.card table');
    await card.getByText('72 3/8 in').waitFor();
    await card.locator('.value.heard', { hasText: '58 in' }).waitFor();
    expect(await card.locator('.value.heard em').first().textContent()).toBe('unconfirmed');
    await say(page, 'no, fifty-eight and a half');
    await card.getByText('58 1/2 in').waitFor();
    const job = new URL(await page.locator('a', { hasText: 'Review' }).evaluate((a: HTMLAnchorElement) => a.href)).pathname.split(
      '/',
    )[2];
    const record = await kept<JobRecord>(floor.shop, `/api/jobs/${job}/record`);
    const centres = record.values.filter(({ field }) => field === 'springCentre').map(({ value, status }) => [value, status]);
    expect(centres).toContainEqual(['58', 'corrected']);
    expect(centres.at(-1)?.[0]).toBe('117/2');
    expect(faults).toEqual([]);
  });

  it('answers a question with the big buttons', async () => {
    const { page } = await floor.open();
    await say(page, 'open job grey car hauler');
    await say(page, 'end play left four thousandths');
    await page.locator('.answer.yes').click();
    await page.locator('.card .value.confirmed', { hasText: '0.004' }).waitFor();
  });

  it('keeps what is hostile as plain text, and says so when a line is too long', async () => {
    const { page, faults } = await floor.open();
    await say(page, 'open job <img src=x onerror=alert(1)>');
    await say(page, 'note <script>document.title="owned"</script> \u202eright to left\u202c 🛠️');
    await say(page, `note ${'long '.repeat(1000)}`);
    expect(await page.locator('#page script, #page img').count()).toBe(0);
    expect(await page.title()).toBe('Axlehand: the bay');
    expect(faults).toEqual([]);
  });

  it('has a talk bar over the whole width and no control too small for a glove or a thumb', async () => {
    for (const viewport of [
      { width: 360, height: 740 },
      { width: 1280, height: 800 },
    ]) {
      const { page } = await floor.open('/', {
        viewport,
        hasTouch: viewport.width < 800,
        isMobile: viewport.width < 800,
      });
      await page.locator('.talk').waitFor();
      const bar = await page.locator('.talk').boundingBox();
      // 25 mm: 94.5 px at 96 px an inch, 157.5 px at a phone's 160 px an inch.
      expect(bar?.height).toBeGreaterThanOrEqual(viewport.width < 800 ? 157 : 95);
      expect(bar?.width).toBeGreaterThanOrEqual(viewport.width * 0.94);
      const sizes = await page
        .locator('button:visible, a.plain:visible, input:visible')
        .evaluateAll((all) =>
          all.map((element) => ({ what: element.textContent, box: element.getBoundingClientRect().toJSON() as DOMRect })),
        );
      expect(sizes.length).toBeGreaterThan(3);
      for (const { what, box } of sizes) expect(Math.min(box.width, box.height), String(what)).toBeGreaterThanOrEqual(44);
      await page.context().close();
    }
  });

  it('shows the caution and the drawing also while something is asked', async () => {
    const { page: desk } = await floor.open();
    await say(desk, 'open job black dump trailer');
    const job = await desk.locator('.card-id').textContent();
    await say(desk, 'end play left four thousandths');
    for (const [viewport, what] of [
      [{ width: 360, height: 740 }, ['.cautions p', '.step-say']],
      [{ width: 768, height: 1024 }, ['.cautions p', '.step-say']],
      [{ width: 1280, height: 800 }, ['.cautions p', '.step-say', '.drawing']],
      [{ width: 1920, height: 1080 }, ['.cautions p', '.step-say', '.drawing']],
    ] as const) {
      const { page } = await floor.open(`/?job=${job}`, {
        viewport,
        hasTouch: true,
        isMobile: viewport.width < 800,
      });
      await page.locator('.answer.yes').waitFor();
      const hand = (await page.locator('.hand').boundingBox())?.y ?? 0;
      for (const each of what) {
        const box = await page.locator(each).first().boundingBox();
        expect(box && box.y >= 0 && box.height > 20 && box.y + box.height <= hand, `${each} at ${viewport.width}`).toBe(true);
      }
      await page.context().close();
    }
  });

  it('writes the step large enough for two metres', async () => {
    const { page } = await floor.open('/?job=1', { viewport: { width: 1280, height: 800 } });
    // NUREG-0700 1.3.1-4: at least 16 minutes of arc; at 2 m that is 9.3 mm of capital height, 35 px at 96 px an inch.
    const step = page.locator('.step-say', { hasText: 'Park' });
    const height = await step.evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize) * 0.7);
    expect(height).toBeGreaterThanOrEqual(35);
  });

  it('loads in under 100 KB compressed, all but the model', async () => {
    const { page } = await floor.open('about:blank');
    const taken = new Map<string, number>();
    page.on('response', (response) => {
      const { pathname } = new URL(response.url());
      if (/\.(js|css)$|^\/$/.test(pathname) && !/voice|worker|sw\.js/.test(pathname))
        taken.set(pathname, Number(response.headers()['content-length'] ?? Number.NaN));
    });
    await page.goto(floor.shop.url);
    await page.locator('.talk').waitFor();
    expect([...taken.keys()].map((path) => path.split('.').at(-1))).toEqual(expect.arrayContaining(['/', 'js', 'css']));
    expect([...taken.values()].reduce((sum, bytes) => sum + bytes, 0)).toBeLessThan(100_000);
  });
});
