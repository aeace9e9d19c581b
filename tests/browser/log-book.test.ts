// Five thousand jobs in the log book: found by title, by a measured value, by what is open.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openLog } from '#log';
import type { EventBody } from '#log/events';
import { openFloor, say, scratch, withBrowser } from '../support/browser.ts';

const jobs = 5000;
const vin = '1J9RP1A36A1644345';
const titles = ['flatbed', 'boat trailer', 'horse box', 'car hauler', 'stock trailer'];

function fill(path: string): void {
  const log = openLog(path);
  for (let number = 1; number <= jobs; number += 1) {
    const at = new Date(Date.UTC(2026, 0, 1) + number * 3_600_000).toISOString();
    const title = number === 1234 ? 'The purple gooseneck' : `${titles[number % titles.length]} ${number}`;
    const events: EventBody[] = [{ kind: 'jobOpened', jobKind: 'inspection', title, invented: true }];
    if (number === 1234) events.push({ kind: 'noteTaken', id: 'n', text: 'cracked weld at the tongue' });
    if (number === 4321)
      events.push({
        kind: 'valueHeard',
        value: {
          id: 'v',
          field: 'hubFace',
          stage: 'found',
          value: '1111/16',
          unit: 'in',
          raw: 'hub face 69 7/16',
          heardBy: 'typed',
        },
      });
    if (number === 42)
      events.push(
        { kind: 'valueHeard', value: { id: 'v', field: 'vin', stage: 'found', value: vin, raw: vin, heardBy: 'typed' } },
        { kind: 'stepDone', step: 'inspectMeasure/hangers' },
        { kind: 'reminderSet', id: 'nuts', text: 'check the wheel nuts again', dueAt: '2026-03-01' },
        { kind: 'closed', open: [] },
      );
    log.append({ turn: `seed-${number}`, job: null, at, who: 'seed', events, receipt: { digest: String(number) } });
  }
  log.close();
}

withBrowser('the log book with five thousand jobs', () => {
  const folder = scratch();
  beforeAll(async () => {
    fill(join(folder, 'log.db'));
  });
  const floor = openFloor({ db: join(folder, 'log.db') });
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('finds one by its title, by a value and by what is open', async () => {
    const { page, faults } = await floor.open('/log');
    await page.locator('.count', { hasText: '5000 jobs' }).waitFor();
    await page.getByLabel('Look for').fill('purple goose');
    await page.locator('.count', { hasText: /^1 job\./ }).waitFor();
    expect(await page.locator('.jobs tbody th').textContent()).toContain('The purple gooseneck');
    await page.getByLabel('Look for').fill('hub face 69 7/16');
    await page.locator('.jobs .number', { hasText: '4321' }).waitFor();
    await page.getByLabel('Look for').fill('');
    await page.getByLabel('with open points only').check();
    await page.locator('.jobs .number', { hasText: '4321' }).waitFor();
    await page.getByLabel('From').fill('2026-01-02');
    await page.getByLabel('To').fill('2026-01-02');
    await page.getByLabel('with open points only').uncheck();
    await page.locator('.count', { hasText: '24 jobs' }).waitFor();
    expect(faults).toEqual([]);
  });

  it('finds all jobs of a trailer by its VIN and a note by its words, and takes an old job up again', async () => {
    const { page, faults } = await floor.open('/log');
    await page.getByLabel('Look for').fill(vin);
    await page.locator('.count', { hasText: /^1 job\./ }).waitFor();
    expect(await page.locator('.jobs .number').textContent()).toBe('42');
    await page.getByLabel('Look for').fill(vin.slice(-6));
    await expect.poll(() => page.locator('.jobs .number').allTextContents()).toEqual(['42']);
    await page.getByLabel('Look for').fill('gooseneck cracked tongue');
    await page.locator('.count', { hasText: /^1 job\./ }).waitFor();
    await page.getByRole('link', { name: 'Take up job 1234 in the bay' }).click();
    await page.locator('.job-title', { hasText: 'The purple gooseneck' }).waitFor();
    await page.locator('.step-say').waitFor();
    await say(page, 'hub face seventy-two');
    await page.locator('.card .value', { hasText: '72 in' }).waitFor();
    await page.goto(`${floor.shop.url}/log`);
    // The job that was worked on last stands first.
    await expect.poll(() => page.locator('.jobs .number').first().textContent()).toBe('1234');
    expect(faults).toEqual([]);
  });

  it('says what is due over all jobs, and lets the desk deal with a reminder', async () => {
    const { page, faults } = await floor.open('/log');
    const due = page.locator('.due');
    await due.locator('.due', { hasText: 'check the wheel nuts again, by 1 March 2026' }).waitFor();
    await due.getByText('1 later').click();
    await due.locator('.notYet', { hasText: `yearly inspection` }).waitFor();
    expect(await due.locator('.notYet').textContent()).toContain(vin);
    await due.locator('.due a').click();
    const point = page.locator('.point', { hasText: 'check the wheel nuts again' });
    await point.getByLabel('Closed because').fill('checked at the gate');
    await point.getByRole('button', { name: 'Close point' }).click();
    await point.waitFor({ state: 'detached' });
    await page.locator('.told.desk', { hasText: 'checked at the gate' }).waitFor();
    await page.goto(`${floor.shop.url}/log`);
    await page.getByText('Nothing is due').waitFor();
    expect(faults).toEqual([]);
  });
});
