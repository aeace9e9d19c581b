// Settings hold at once and after a reload: how loud, how the shop speaks, light or dark; and each state has a sound and a buzz of its own.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { Settings } from '#wire';
import { kept, openFloor, say, withBrowser } from '../support/browser.ts';

interface Noted {
  readonly tones: { readonly hertz: number; readonly loud: number }[];
  readonly buzzes: number[][];
}

/** Writes down each tone and each buzz in place of making it. */
function note(page: Page): Promise<unknown> {
  return page.addInitScript(() => {
    const noted: Noted = { tones: [], buzzes: [] };
    Object.assign(globalThis, { noted });
    const start = OscillatorNode.prototype.start;
    OscillatorNode.prototype.start = function (when) {
      noted.tones.push({ hertz: this.frequency.value, loud: loudest });
      start.call(this, when);
    };
    let loudest = 0;
    const ramp = AudioParam.prototype.linearRampToValueAtTime;
    AudioParam.prototype.linearRampToValueAtTime = function (value, at) {
      if (value > 0) loudest = value;
      return ramp.call(this, value, at);
    };
    navigator.vibrate = (pattern) => {
      noted.buzzes.push([pattern as number[]].flat());
      return true;
    };
  });
}

const taken = (page: Page): Promise<Noted> =>
  page.evaluate(() => {
    const { noted } = globalThis as unknown as { noted: Noted };
    const copy = structuredClone(noted);
    noted.tones.length = 0;
    noted.buzzes.length = 0;
    return copy;
  });

withBrowser('the settings', () => {
  const floor = openFloor({ switches: ['--autoplay-policy=no-user-gesture-required'] });

  async function notedPage() {
    const { page, faults } = await floor.open('about:blank');
    await note(page);
    await page.goto(floor.shop.url);
    await page.locator('.link-state.up').waitFor();
    return { page, faults };
  }

  it('give each outcome a sound and a buzz that no other has, as loud as was chosen, and none where they are turned off', async () => {
    const { page, faults } = await notedPage();
    const heard: Record<string, Noted> = {};
    await say(page, 'open job sounds');
    await page.waitForTimeout(300);
    await taken(page);
    for (const [name, text] of [
      ['taken', 'hub face seventy-two'],
      ['refused', 'the moon is made of cheese'],
      ['ask', 'end play left four thousandths'],
    ] as const) {
      await say(page, text);
      heard[name] = await taken(page);
    }
    await page.route('**/api/turns', (route) => route.abort());
    await say(page, 'spring centre fifty-eight');
    heard.kept = await taken(page);
    await page.unroute('**/api/turns');

    const tunes = Object.values(heard).map(({ tones }) => tones.map(({ hertz }) => hertz).join(' '));
    const buzzes = Object.values(heard).map(({ buzzes }) => buzzes.join(' '));
    expect(
      tunes.every((tune) => tune !== ''),
      tunes.join(', '),
    ).toBe(true);
    expect(new Set(tunes).size).toBe(tunes.length);
    expect(new Set(buzzes).size).toBe(buzzes.length);

    const loud = heard.taken?.tones[0]?.loud ?? 0;
    await page.getByRole('button', { name: 'Settings' }).click();
    await page.getByRole('slider', { name: /Volume/ }).fill('0.5');
    await page.getByRole('button', { name: 'Close' }).click();
    await page.locator('.link-state', { hasText: 'In the log' }).waitFor({ timeout: 15_000 });
    await taken(page);
    await say(page, 'beam two and three eighths');
    expect((await taken(page)).tones[0]?.loud).toBeCloseTo(loud / 2);

    await page.getByRole('button', { name: 'Settings' }).click();
    await page.getByLabel('Short sounds and buzzes').uncheck();
    await page.getByRole('button', { name: 'Close' }).click();
    await say(page, 'drop zero');
    expect(await taken(page)).toEqual({ tones: [], buzzes: [] });
    expect(faults).toEqual([]);
  });

  it('say lengths in millimetres, spell as chosen and name the sides as the shop does, at once and on every device', async () => {
    const { page, faults } = await floor.open();
    await say(page, 'open job metric');
    await say(page, 'spring centre fifty inches');
    await say(page, 'left tread six thirty seconds');
    const job = await page.locator('.card-id').textContent();
    const { page: other } = await floor.open(`/?job=${job}`);
    await page.getByRole('button', { name: 'Settings' }).click();
    await page.getByLabel('Lengths').selectOption('mm');
    await page.getByLabel('Spelling').selectOption('american');
    await page.getByLabel('Left and right are called').selectOption('driver side/passenger side');
    await page.getByRole('button', { name: 'Close' }).click();
    const card = page.locator('.card table');
    await card.getByText('1270 mm').waitFor();
    await card.getByText('spring center').waitFor();
    await card.locator('.side', { hasText: 'driver side' }).waitFor();
    expect(await kept<Settings>(floor.shop, '/api/settings')).toMatchObject({ lengthUnit: 'mm', spelling: 'american' });
    expect(await say(page, 'hub face eighteen hundred millimetres')).toMatch(/hub face: 1800 mm/i);
    await other.locator('.card .value', { hasText: '1800 mm' }).waitFor();
    await page.reload();
    await card.getByText('1270 mm').waitFor();
    await page.getByRole('button', { name: 'Settings' }).click();
    expect(await page.getByLabel('Lengths').inputValue()).toBe('mm');
    await page.getByLabel('Lengths').selectOption('in');
    await page.getByLabel('Spelling').selectOption('british');
    await page.getByLabel('Left and right are called').selectOption('left/right');
    await page.getByRole('button', { name: 'Close' }).click();
    await card.getByText('spring centre').waitFor();
    expect(faults).toEqual([]);
  });

  it('turn the page dark or light against the device, also after a reload and on the other pages', async () => {
    const { page } = await floor.open('/', { colorScheme: 'light' });
    const bench = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    const light = await bench();
    await page.getByRole('button', { name: 'Settings' }).click();
    await page.getByLabel('Light or dark').selectOption('dark');
    expect(await bench()).not.toBe(light);
    await page.reload();
    expect(await bench()).not.toBe(light);
    await page.goto(`${floor.shop.url}/log`);
    expect(await bench()).not.toBe(light);
  });
});
