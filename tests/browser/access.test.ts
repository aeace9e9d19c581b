// Every view in both themes: no fault that axe can find, nothing cut off at 320 px, AAA contrast for the step and the values.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { openFloor, say, withBrowser } from '../support/browser.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Found {
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}
declare global {
  var axe: { run(root: Document, options: object): Promise<{ violations: Found[] }> };
}

/** The content policy refuses a script tag; the tester's own evaluate is outside it. */
async function faultsOf(page: Page, only?: readonly string[]): Promise<readonly string[]> {
  await page.evaluate(axeSource);
  const options = only
    ? { runOnly: { type: 'rule', values: [...only] } }
    : { rules: { 'color-contrast-enhanced': { enabled: false } } };
  const { violations } = await page.evaluate((chosen) => globalThis.axe.run(document, chosen), options);
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

withBrowser('for everyone', () => {
  const floor = openFloor();
  beforeAll(async () => {
    const { page } = await floor.open();
    await say(page, 'open job white enclosed');
    await say(page, 'hub face seventy-two and three eighths');
    await say(page, 'end play left four thousandths');
    await say(page, 'open job nuts of the white enclosed');
    await say(page, 'bolt pattern five on four and a half');
    await say(page, 'what order for the wheel nuts');
    await page.context().close();
  });

  const open = (name: string) => (page: Page) => page.getByRole('button', { name }).first().click();
  const asIs = async (): Promise<void> => undefined;
  const views: readonly (readonly [name: string, path: string, ready: string, then: (page: Page) => Promise<void>])[] = [
    ['the bay while something is asked', '/?job=2', '.question', asIs],
    ['the bay while nuts are tightened', '/?job=3', '.leads .drawing', asIs],
    ['the bay without a job', '/', '.resume .big', asIs],
    ['the settings', '/?job=2', '.card table', open('Settings')],
    ['the log book', '/log', '.jobs tbody tr', asIs],
    ['the review', '/jobs/2', '.value-group', asIs],
    ['a correction', '/jobs/2', '.value-group', open('Correct')],
    ['sharing', '/jobs/2', '.value-group', open('Share')],
    ['the sheet', '/jobs/2/sheet', '.measures', asIs],
    ['pairing', '/pair', 'form', asIs],
    ['the devices', '/devices', 'form', asIs],
    ['the rack', '/rack', 'table', asIs],
    ['the rack held against a job', '/rack?job=2', '.axle', (page) => page.locator('.axle summary').first().click()],
  ];

  it.each(views)(
    '%s has no fault that axe finds in either theme, nothing too small to be hit and nothing cut off',
    async (...view) => {
      const [name, path, ready, then] = view;
      const { page } = await floor.open(path);
      await page.locator(ready).first().waitFor();
      await then(page);
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await faultsOf(page), colorScheme).toEqual([]);
        if (name.startsWith('the bay')) expect(await faultsOf(page, ['color-contrast-enhanced']), colorScheme).toEqual([]);
      }
      // WCAG 2.2, 2.5.8: 24 by 24 CSS pixels at least.
      const sizes = await page
        .locator('button:visible, summary:visible, input:visible, select:visible, a.plain:visible')
        .evaluateAll((all) => all.map((each) => [each.textContent, each.getBoundingClientRect().toJSON() as DOMRect] as const));
      for (const [what, { width, height }] of sizes) expect(Math.min(width, height), String(what)).toBeGreaterThanOrEqual(24);
      // Nothing is cut off at 320 px, nor with text twice as large.
      await page.setViewportSize({ width: 320, height: 640 });
      const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
      expect(await wide()).toBeLessThanOrEqual(320);
      await page.setViewportSize({ width: 640, height: 800 });
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      expect(await wide()).toBeLessThanOrEqual(640);
      await page.context().close();
    },
  );

  it('marks an unconfirmed value by a broken line and a word, also in forced colours', async () => {
    const { page } = await floor.open('/?job=2', { forcedColors: 'active' });
    const value = page.locator('.card .value.heard').first();
    expect(await value.evaluate((element) => getComputedStyle(element).borderTopStyle)).toBe('dashed');
    expect(await value.locator('em').textContent()).toBe('unconfirmed');
  });

  it('stands still where motion is not wanted', async () => {
    const { page } = await floor.open('/?job=2', { reducedMotion: 'reduce' });
    await page.locator('.talk').evaluate((bar) => bar.classList.add('hearing'));
    expect(await page.locator('.talk-shape').evaluate((shape) => getComputedStyle(shape).animationName)).toBe('none');
  });

  it('announces each line once: one insertion into the log, no second live region around it', async () => {
    const { page } = await floor.open('/?job=2');
    await page.locator('.card table').waitFor();
    const log = page.locator('[role=log]');
    expect(await log.count()).toBe(1);
    await log.evaluate((element) => {
      const counts = globalThis as unknown as { added: number };
      counts.added = 0;
      new MutationObserver((changes) => {
        counts.added += changes.reduce((sum, { addedNodes }) => sum + addedNodes.length, 0);
      }).observe(element, { childList: true });
    });
    await say(page, 'what is next');
    await say(page, 'what is next');
    expect(await page.evaluate(() => (globalThis as unknown as { added: number }).added)).toBe(4);
    expect(await page.locator('[role=log] [aria-live], [aria-live] [role=log]').count()).toBe(0);
  });
});
