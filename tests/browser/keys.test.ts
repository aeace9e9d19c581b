// Every way to talk besides the bar itself: Space, a pedal that was taught, a tap that latches; and every way a press ends.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { anyMicrophone, openFloor, say, withBrowser } from '../support/browser.ts';

withBrowser('talking without the bar', () => {
  const floor = openFloor({ switches: anyMicrophone });

  let page: Page;
  /** One page for all: loading the recogniser is what takes long. */
  async function readyPage(): Promise<Page> {
    page ??= await opened();
    await page.mouse.up();
    await page.locator('.talk.ready').waitFor({ timeout: 60_000 });
    return page;
  }

  async function opened(): Promise<Page> {
    const { page } = await floor.open('about:blank', { voice: true });
    // The stream is kept where a test can pull its plug.
    await page.addInitScript(() => {
      const { mediaDevices } = navigator;
      const open = mediaDevices?.getUserMedia.bind(mediaDevices);
      if (open)
        mediaDevices.getUserMedia = async (wish) => {
          const stream = await open(wish);
          Object.assign(globalThis, { stream });
          return stream;
        };
    });
    await page.goto(floor.shop.url);
    return page;
  }

  it('holds with Space, and types a space where a line is being typed', async () => {
    const page = await readyPage();
    await page.keyboard.down('Space');
    await page.locator('.talk.listening').waitFor();
    await page.waitForTimeout(500);
    await page.keyboard.up('Space');
    await page.locator('.talk:not(.listening)').waitFor();
    await page.focus('#typed');
    await page.keyboard.type('hub face');
    expect(await page.inputValue('#typed')).toBe('hub face');
    expect(await page.locator('.talk.listening').count()).toBe(0);
  });

  it('learns a pedal, which then talks even from the typed line and types nothing', async () => {
    const page = await readyPage();
    await page.getByRole('button', { name: 'Settings' }).click();
    await page.getByRole('button', { name: 'Teach the pedal' }).click();
    await page.keyboard.press('b');
    await page.locator('.pedal b', { hasText: 'KeyB' }).waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.fill('#typed', '');
    await page.focus('#typed');
    await page.keyboard.down('b');
    await page.locator('.talk.listening').waitFor();
    await page.waitForTimeout(500);
    await page.keyboard.up('b');
    await page.locator('.talk:not(.listening)').waitFor();
    expect(await page.inputValue('#typed')).toBe('');
  });

  it('latches on a tap and ends on the next', async () => {
    const page = await readyPage();
    await page.locator('.talk').click();
    await page.locator('.talk.listening', { hasText: 'tap to end' }).waitFor();
    await page.locator('.talk').click();
    await page.locator('.talk:not(.listening)').waitFor();
  });

  it.each(['blur', 'pagehide'])('ends on %s, so that no microphone stays open', async (event) => {
    const page = await readyPage();
    await page.locator('.talk').hover();
    await page.mouse.down();
    await page.locator('.talk.listening').waitFor();
    await page.evaluate((name) => dispatchEvent(new Event(name)), event);
    await page.locator('.talk:not(.listening)').waitFor();
  });

  it('ends when the tab is put to sleep, and talks again when it wakes', async () => {
    const page = await readyPage();
    const devtools = await page.context().newCDPSession(page);
    await page.fill('#typed', 'half a sentence');
    await page.locator('.talk').hover();
    await page.mouse.down();
    await page.locator('.talk.listening').waitFor();
    await page.evaluate(() => {
      Object.defineProperty(document, 'visibilityState', { value: 'hidden', configurable: true });
      document.dispatchEvent(new Event('visibilitychange'));
    });
    await devtools.send('Page.setWebLifecycleState', { state: 'frozen' });
    await devtools.send('Page.setWebLifecycleState', { state: 'active' });
    await page.evaluate(() => {
      Reflect.deleteProperty(document, 'visibilityState');
      document.dispatchEvent(new Event('visibilitychange'));
    });
    await page.locator('.talk:not(.listening)').waitFor();
    await page.mouse.up();
    expect(await page.inputValue('#typed')).toBe('half a sentence');
    await page.fill('#typed', '');
    await page.locator('.talk.ready').click();
    await page.locator('.talk.listening').waitFor();
    await page.locator('.talk').click();
    await page.locator('.talk:not(.listening)').waitFor();
  });

  it('shows how loud it is while it listens, and nothing when it does not', async () => {
    const page = await readyPage();
    const lit = page.locator('.meter .lit');
    expect(await lit.count()).toBe(0);
    await page.locator('.talk').hover();
    await page.mouse.down();
    // The fake microphone beeps once a second.
    await expect.poll(() => lit.count(), { timeout: 10_000 }).toBeGreaterThan(3);
    await page.mouse.up();
    await page.locator('.talk:not(.listening)').waitFor();
    expect(await lit.count()).toBe(0);
  });

  it('says that the microphone is gone while the bar is still held, and the next press works', async () => {
    const page = await readyPage();
    await page.locator('.talk').hover();
    await page.mouse.down();
    await page.locator('.talk.listening').waitFor();
    await page.evaluate(() => {
      const [track] = (globalThis as unknown as { stream: MediaStream }).stream.getAudioTracks();
      track?.stop();
      track?.dispatchEvent(new Event('ended'));
    });
    await page.locator('.notice', { hasText: 'microphone' }).waitFor();
    await page.locator('.talk:not(.listening)').waitFor();
    await page.mouse.up();
    await page.locator('.talk.ready').click();
    await page.locator('.talk.listening').waitFor();
    await page.locator('.talk').click();
    await page.locator('.talk:not(.listening)').waitFor();
  });

  it('speaks at the chosen rate, and falls silent the moment the bar is pressed', async () => {
    const page = await readyPage();
    await page.evaluate(() => {
      const playing = new Set<AudioScheduledSourceNode>();
      const rates: number[] = [];
      Object.assign(globalThis, { playing, rates });
      const { start, stop } = AudioBufferSourceNode.prototype;
      AudioBufferSourceNode.prototype.start = function (...when) {
        playing.add(this);
        rates.push(this.playbackRate.value);
        start.apply(this, when);
      };
      AudioBufferSourceNode.prototype.stop = function (when) {
        playing.delete(this);
        stop.call(this, when);
      };
    });
    const spoken = () => page.evaluate(() => (globalThis as unknown as { rates: number[] }).rates.splice(0));
    const hearIt = async (rate: string): Promise<number> => {
      await page.getByRole('button', { name: 'Settings' }).click();
      await page.getByRole('slider', { name: /Speaking rate/ }).fill(rate);
      await page.getByRole('button', { name: 'Hear it' }).click();
      await page.locator('.talk.speaking').waitFor();
      await page.getByRole('button', { name: 'Close' }).click();
      return (await spoken())[0] ?? 0;
    };
    const usual = await hearIt('1');
    const silent = await page.evaluate(() => {
      const { playing } = globalThis as unknown as { playing: Set<AudioScheduledSourceNode> };
      const before = playing.size;
      document.dispatchEvent(new KeyboardEvent('keydown', { code: 'Space', bubbles: true }));
      return { before, after: playing.size };
    });
    expect(silent.before).toBeGreaterThan(0);
    expect(silent.after).toBe(0);
    await page.locator('.talk.listening').waitFor();
    await page.waitForTimeout(400);
    await page.evaluate(() => document.dispatchEvent(new KeyboardEvent('keyup', { code: 'Space', bubbles: true })));
    await page.locator('.talk.ready').waitFor();
    expect(await hearIt('0.6')).toBeLessThan(usual);
  });

  it("talks by a headset's button once that is turned on, and lets it go when it is turned off", async () => {
    const page = await readyPage();
    await page.evaluate(() => {
      const handlers: Record<string, (() => void) | null> = {};
      Object.assign(globalThis, { handlers });
      navigator.mediaSession.setActionHandler = (action, handler) => {
        handlers[action] = handler && (() => handler({ action }));
      };
    });
    const press = (button: 'play' | 'pause') =>
      page.evaluate((name) => {
        const { handlers } = globalThis as unknown as { handlers: Record<string, (() => void) | null> };
        handlers[name]?.();
        return typeof handlers[name] === 'function';
      }, button);
    const choose = async (on: boolean): Promise<void> => {
      await page.getByRole('button', { name: 'Settings' }).click();
      await page.getByLabel('Headset button').setChecked(on);
      await page.getByRole('button', { name: 'Close' }).click();
    };
    expect(await press('play')).toBe(false);
    await choose(true);
    await expect.poll(() => press('pause')).toBe(true);
    await page.locator('.talk.listening', { hasText: 'tap to end' }).waitFor();
    expect(await press('play')).toBe(true);
    await page.locator('.talk:not(.listening)').waitFor();
    await page.locator('.talk.ready').waitFor();
    await choose(false);
    expect(await press('play')).toBe(false);
  });

  it('does a whole stretch of work by keyboard alone', async () => {
    const page = await readyPage();
    await say(page, 'open job keyboard only');
    await say(page, 'end play left four thousandths');
    for (let tabs = 0; tabs < 40; tabs += 1) {
      await page.keyboard.press('Tab');
      if (await page.locator('.answer.yes:focus').count()) break;
    }
    const outline = await page.locator('.answer.yes').evaluate((element) => getComputedStyle(element).outlineStyle);
    expect(outline).toBe('solid');
    await page.keyboard.press('Enter');
    await page.locator('.card .value.confirmed').waitFor();
  });
});
