import { expect, it } from 'vitest';
import { openFloor, say, withBrowser } from '../support/browser.ts';

withBrowser('several pages on one job', () => {
  const floor = openFloor();

  it('stay in step: two bays on two devices, and the desk', async () => {
    const bay = (await floor.open()).page;
    await say(bay, 'open job shared work');
    const job = await bay.locator('.card-id').textContent();
    const other = (await floor.open(`/?job=${job}`)).page;
    const desk = (await floor.open(`/jobs/${job}`)).page;
    await other.locator('.job-title', { hasText: 'Shared work' }).waitFor();
    await say(bay, 'hub face seventy-two and three eighths');
    await other.locator('.card .value', { hasText: '72 3/8 in' }).waitFor();
    await other.locator('.tally-line.elsewhere').first().waitFor();
    await desk.locator('.standing .value', { hasText: '72 3/8 in' }).waitFor();
    await say(other, 'spring centre fifty-eight');
    await bay.locator('.card .value', { hasText: '58 in' }).waitFor();
  });

  it('let the desk correct a value with a reason, by keyboard alone', async () => {
    const bay = (await floor.open()).page;
    await say(bay, 'open job for the desk');
    await say(bay, 'hub face seventy-two and three eighths');
    const job = await bay.locator('.card-id').textContent();
    const { page: desk, faults } = await floor.open(`/jobs/${job}`);
    await desk.getByRole('button', { name: 'Correct: hub face' }).focus();
    await desk.keyboard.press('Enter');
    await desk.keyboard.type('72 5/8');
    await desk.keyboard.press('Tab');
    await desk.keyboard.type('tape was held <b>crooked</b>');
    await desk.keyboard.press('Enter');
    const group = desk.locator('.value-group', { hasText: 'hub face' });
    await group.locator('.standing .value', { hasText: '72 5/8' }).waitFor();
    expect(await group.locator('.past').textContent()).toMatch(/72 3\/8.*crooked/s);
    await bay.locator('.card .value', { hasText: '72 5/8' }).waitFor();
    await desk.getByRole('button', { name: 'Strike: hub face' }).click();
    await desk.getByLabel('Reason').fill('wrong trailer');
    await desk.getByRole('button', { name: 'Strike a value' }).click();
    await group.getByText('Nothing stands.').waitFor();
    expect(faults).toEqual([]);
  });

  it('lay what was fitted beside what was found, and hand the page on inside the shop', async () => {
    const bay = (await floor.open()).page;
    await say(bay, 'open job to be compared');
    await say(bay, 'hub face seventy-two and three eighths');
    await say(bay, 'fitted hub face seventy-two and a half');
    await say(bay, 'spring centre fifty-eight');
    await say(bay, 'fitted spring centre fifty-eight');
    const job = await bay.locator('.card-id').textContent();
    const { page: desk } = await floor.open('about:blank');
    // As a device on the shop's network sees it: by a name, without the rights of a safe page.
    await desk.route('http://shop.test/**', async (route) => {
      const { pathname, search } = new URL(route.request().url());
      if (pathname === '/api/stream') return route.abort();
      await route.fulfill({ response: await route.fetch({ url: floor.shop.url + pathname + search }) });
    });
    await desk.goto(`http://shop.test/jobs/${job}`);
    const row = (name: string) => desk.locator('.compare tr', { hasText: name });
    await row('hub face').waitFor();
    expect(await row('hub face').locator('td').allTextContents()).toEqual(['72 3/8 in', '72 1/2 in', 'differs']);
    expect(await row('spring centre').locator('td').allTextContents()).toEqual(['58 in', '58 in', 'same']);
    await desk.getByRole('button', { name: 'Share' }).click();
    expect(await desk.getByLabel('Address').inputValue()).toBe(`http://shop.test/jobs/${job}`);
    await desk.goto(`${floor.shop.url}/jobs/${job}/sheet`);
    await desk.getByRole('button', { name: 'Share' }).click();
    await desk.getByText('Only this computer reaches that address').waitFor();
  });

  it('let the desk confirm a value and remark on it', async () => {
    const bay = (await floor.open()).page;
    await say(bay, 'open job to be confirmed');
    await say(bay, 'hub face seventy-two and three eighths');
    const job = await bay.locator('.card-id').textContent();
    const { page: desk, faults } = await floor.open(`/jobs/${job}`);
    const standing = desk.locator('.value-group', { hasText: 'hub face' }).locator('.standing');
    await standing.locator('.value.heard em', { hasText: 'unconfirmed' }).waitFor();
    const open = desk.getByRole('region', { name: 'Open points' }).getByRole('heading');
    expect(await open.textContent()).toMatch(/^1 open, \d+ still to do$/);
    await desk.getByRole('button', { name: 'Confirm: hub face' }).click();
    await desk.getByLabel('Reason').fill('saw the tape');
    await desk.getByRole('button', { name: 'Confirm a value' }).click();
    await standing.locator('.value.confirmed').waitFor();
    expect(await open.textContent()).toMatch(/^\d+ still to do$/);
    expect(await desk.getByRole('button', { name: 'Confirm: hub face' }).count()).toBe(0);
    await desk.getByRole('button', { name: 'Remark: hub face' }).click();
    await desk.getByLabel('Remark', { exact: true }).fill('taken twice <i>same</i>');
    await desk.getByRole('button', { name: 'Remark on a value' }).click();
    await standing.locator('.remark', { hasText: 'taken twice <i>same</i>' }).waitFor();
    await bay.locator('.card .value.confirmed', { hasText: '72 3/8 in' }).waitFor();
    expect(faults).toEqual([]);
  });
});
