// What the content policy keeps out even where a page of ours should slip: text that becomes markup, scripts from elsewhere.
import { afterAll, beforeAll, expect, it } from 'vitest';
import { launch, openPage, openShop, type Shop, withBrowser } from '../support/browser.ts';

withBrowser('the content policy', () => {
  let shop: Shop;
  let browser: Awaited<ReturnType<typeof launch>>;
  beforeAll(async () => {
    shop = await openShop();
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  it.each(['/', '/log', '/jobs/1', '/jobs/1/sheet', '/pair', '/devices'])('holds on %s', async (path) => {
    const { page, faults } = await openPage(browser, shop.url + path);
    await page.locator('#page > *').first().waitFor();
    expect(faults).toEqual([]);
    const refused = await page.evaluate(() => {
      const name = (work: () => unknown): string => {
        try {
          return `made ${work()}`;
        } catch (error) {
          return error instanceof Error ? error.name : 'thrown';
        }
      };
      const inline = document.createElement('script');
      return [
        name(() => {
          document.body.innerHTML = '<img src="x">';
        }),
        name(() => new Worker('/assets/any.js')),
        name(() => {
          inline.textContent = 'document.title = "owned"';
        }),
        name(() => {
          inline.src = '/assets/any.js';
        }),
      ];
    });
    expect(refused).toEqual(['TypeError', 'TypeError', 'TypeError', 'TypeError']);
    expect(await page.title()).toMatch(/^Axlehand/);
    await page.context().close();
  });
});
