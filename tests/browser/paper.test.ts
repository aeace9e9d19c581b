// The sheet on paper: A4 and Letter, one or two pages, the demo marked, what is not confirmed marked.
import { execFileSync } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { launch, openPage, openShop, type Shop, say, withBrowser } from '../support/browser.ts';

const hasText = existsSync('/usr/bin/pdftotext');

function pagesIn(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page(?!s)/g)?.length ?? 0;
}

withBrowser('the sheet on paper', () => {
  let shop: Shop;
  let browser: Awaited<ReturnType<typeof launch>>;
  beforeAll(async () => {
    shop = await openShop();
    browser = await launch();
    const { page } = await openPage(browser, `${shop.url}/?job=1`);
    await page.locator('.card table').waitFor();
    for (const text of [
      'left frame rail bent behind the hanger, cracked weld',
      'note customer wants new tyres quoted <b>today</b>',
      'tyre size ST205 75 R15',
      'spring width one and three quarters',
    ])
      await say(page, text);
  });
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  it.each(['A4', 'Letter'])('fits one or two pages of %s and says what is open', async (format) => {
    const { page } = await openPage(browser, `${shop.url}/jobs/1/sheet`);
    await page.locator('.measures').waitFor();
    const path = `/tmp/axlehand-sheet-${process.pid}-${format}.pdf`;
    const pdf = await page.pdf({ format, path, preferCSSPageSize: false });
    expect(pagesIn(pdf)).toBeGreaterThanOrEqual(1);
    expect(pagesIn(pdf)).toBeLessThanOrEqual(2);
    if (hasText) {
      const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
      for (const words of ['hub face', '72 3/8 in', 'unconfirmed', 'Technician', 'signs for nobody', '<b>today</b>'])
        expect(text).toContain(words);
      expect(text).not.toContain('Log book');
    }
    rmSync(path, { force: true });
  });

  it('is also there as CSV and JSON', async () => {
    for (const format of ['csv', 'json']) {
      const answer = await fetch(`${shop.url}/api/jobs/1/sheet.${format}`);
      expect(answer.status).toBe(200);
      expect(await answer.text()).toContain('579/8');
    }
  });
});
