// A command that was hardly heard is asked about on the page before the log hears of it: by voice, by hand, and let go.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { eventsIn, openFloor, say, withBrowser } from '../support/browser.ts';

/** A browser with ears of its own, which hear what the test puts into `next`. */
function standIn(): void {
  class Ears {
    onstart?: () => void;
    onend?: () => void;
    onresult?: (event: unknown) => void;
    start(): void {
      setTimeout(() => this.onstart?.());
    }
    stop(): void {
      const { next } = globalThis as unknown as { next: [transcript: string, confidence: number] };
      const [transcript, confidence] = next;
      this.onresult?.({ results: [[{ transcript, confidence }]] });
      this.onend?.();
    }
    abort(): void {
      this.onend?.();
    }
  }
  Object.assign(globalThis, { SpeechRecognition: Ears, webkitSpeechRecognition: Ears });
  localStorage.setItem('axlehand.device', JSON.stringify({ hearing: 'browser' }));
}

withBrowser('a command hardly heard', () => {
  const floor = openFloor();

  async function hear(page: Page, text: string, confidence: number): Promise<void> {
    await page.evaluate((next) => Object.assign(globalThis, { next }), [text, confidence]);
    await page.locator('.talk').hover();
    await page.mouse.down();
    await page.locator('.talk.listening').waitFor();
    // Shorter is a tap, which holds on.
    await page.waitForTimeout(500);
    await page.mouse.up();
  }

  it('waits for a yes, and is let go by a no or by something else', async () => {
    const { page, faults } = await floor.open('about:blank', { voice: true });
    page.setDefaultTimeout(10_000);
    await page.addInitScript(standIn);
    await page.goto(floor.shop.url);
    await page.locator('.talk.ready').waitFor();
    await say(page, 'open job doubts');
    const before = eventsIn(floor.shop.db).length;
    const done = page.locator('.question', { hasText: 'Did you say: done' });

    await hear(page, 'done', 0.4);
    await done.waitFor();
    expect(eventsIn(floor.shop.db)).toHaveLength(before);
    await hear(page, 'no', 0.4);
    await page.locator('.notice', { hasText: 'say it again' }).waitFor();
    await done.waitFor({ state: 'detached' });
    expect(eventsIn(floor.shop.db)).toHaveLength(before);

    await hear(page, 'done', 0.4);
    await done.waitFor();
    await hear(page, 'hub face 72', 0.9);
    await page.locator('.card .value', { hasText: '72 in' }).waitFor();
    expect(await done.count()).toBe(0);

    const steps = () => eventsIn(floor.shop.db).filter(({ kind }) => kind === 'stepDone').length;
    const stood = steps();
    await hear(page, 'done', 0.4);
    await done.waitFor();
    await hear(page, 'yes', 0.9);
    await page.locator('.last-heard', { hasText: 'done' }).waitFor();
    await expect.poll(steps).toBe(stood + 1);

    await hear(page, 'done', 0.4);
    await page.locator('.question button.yes').click();
    await expect.poll(steps).toBe(stood + 2);
    expect(faults).toEqual([]);
  });
});
