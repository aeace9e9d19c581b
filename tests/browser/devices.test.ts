// The desk lets a device join, names it, makes it read-only and puts it out.
import { expect, it } from 'vitest';
import { openFloor, withBrowser } from '../support/browser.ts';

withBrowser('the list of devices', () => {
  const floor = openFloor();

  it('shows a code, then the device that used it; renames it, makes it read-only, and asks once more before it is out', async () => {
    const { page, faults } = await floor.open('/devices');
    await page.locator('.count', { hasText: '0 devices joined.' }).waitFor();
    await page.getByRole('button', { name: 'Make a code' }).click();
    const code = (await page.locator('.code').textContent()) ?? '';
    expect(code).toMatch(/^[2-9A-Z]{6}$/);
    const { page: other } = await floor.open('/pair');
    await other.getByLabel('Code').fill(code);
    await other.getByLabel('Name of this device').fill('bay <b>1</b>');
    await other.getByRole('button', { name: 'Pair' }).click();
    await other.locator('[role=status]', { hasText: 'bay <b>1</b>' }).waitFor();

    const entry = page.getByRole('form', { name: 'bay <b>1</b>' });
    await entry.waitFor();
    await page.locator('.code').waitFor({ state: 'detached' });
    await entry.getByLabel('Name').fill('bay 7');
    await entry.getByLabel('May do').selectOption('reader');
    await entry.getByRole('button', { name: 'Keep the change' }).click();
    const renamed = page.getByRole('form', { name: 'bay 7' });
    await renamed.waitFor();
    const known = async () => (await (await fetch(`${floor.shop.url}/api/devices`)).json()).devices[0];
    expect(await known()).toMatchObject({ name: 'bay 7', role: 'reader' });

    await renamed.getByRole('button', { name: 'Revoke' }).click();
    expect((await known()).revokedAt).toBeUndefined();
    await renamed.getByRole('button', { name: 'Press again to put "bay 7" out' }).click();
    await page.getByText(/bay 7, reader: revoked/).waitFor();
    await page.locator('.count', { hasText: '0 devices joined.' }).waitFor();
    expect(faults).toEqual([]);
  });
});
