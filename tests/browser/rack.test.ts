// The rack at the desk: a list with a fault is taken line by line, and a job is held against what is left.
import { expect, it } from 'vitest';
import { openFloor, say, withBrowser } from '../support/browser.ts';

withBrowser('the rack', () => {
  const floor = openFloor();

  it('names the bad line, takes the good ones, and tells which fit the job', async () => {
    const bay = (await floor.open()).page;
    await say(bay, 'new job axle replacement');
    await say(bay, 'hub face 72 3/8, spring centre 58, five on four and a half');
    const { page, faults } = await floor.open('/rack');
    await page.getByRole('combobox', { name: 'Job' }).selectOption({ label: '2: Axle replacement' });
    const head = 'id,title,hubFace,springCentre,boltPattern';
    const list = `${head}\nA,right,72 3/8,58,5x9/2\nB,bad,wide,58,5x9/2\nC,other circle,72 3/8,58,5x5\n`;
    await page.getByLabel(/CSV file/).setInputFiles({ name: 'ours.csv', mimeType: 'text/csv', buffer: Buffer.from(list) });
    await page.getByRole('button', { name: /old list/ }).click();
    await page.locator('.count', { hasText: '2 axles taken from ours.csv. 1 fault below.' }).waitFor();
    expect(await page.locator('.faults tbody tr').allTextContents()).toEqual([expect.stringMatching(/^3hubFace.*not "wide"/)]);
    await page.locator('.axle', { hasText: 'other circle' }).waitFor();
    expect(await page.locator('.axle', { hasText: 'other circle' }).textContent()).toMatch(/Takes hubs with the right pattern/);
    await page.locator('.axle', { hasText: 'right' }).first().locator('summary').click();
    await page
      .getByRole('row', { name: /Spring centre 58 in 57 7\/8 in to 58 1\/8 in 1\/8 in Fits/ })
      .first()
      .waitFor();
    await page.setViewportSize({ width: 390, height: 844 });
    await page.locator('.faults td', { hasText: 'not "wide"' }).waitFor();
    await page.locator('.axle[open] td', { hasText: 'Spring centre: 58 in, the same' }).waitFor();
    const given = page.getByRole('link', { name: 'Give the list out' });
    expect(await (await fetch(`${floor.shop.url}${await given.getAttribute('href')}`)).text()).toMatch(
      /^id,title,place,quantity,hubFace.*\r?\nA,right,,1,579\/8/,
    );
    expect(faults).toEqual([]);
  });
});
