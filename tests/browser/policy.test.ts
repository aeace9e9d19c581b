// What the content policy keeps out even where a page of ours should slip: text that becomes markup, scripts from elsewhere.
import { expect, it } from 'vitest';
import { openFloor, withBrowser } from '../support/browser.ts';

withBrowser('the content policy', () => {
  const floor = openFloor();

  it.each(['/', '/log', '/jobs/1', '/jobs/1/sheet', '/pair', '/devices', '/rack'])('holds on %s', async (path) => {
    const { page, faults } = await floor.open(path);
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
