// The sheet on paper: A4 and Letter, one or two pages, the demo marked, what is not confirmed marked.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { beforeAll, expect, it } from 'vitest';
import { openFloor, say, withBrowser } from '../support/browser.ts';

const hasText = existsSync('/usr/bin/pdftotext');

function pagesIn(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page(?!s)/g)?.length ?? 0;
}

withBrowser('the sheet on paper', () => {
  const floor = openFloor();
  beforeAll(async () => {
    const { page } = await floor.open('/?job=1');
    await page.locator('.card table').waitFor();
    for (const text of [
      'left frame rail bent behind the hanger, cracked weld',
      'note customer wants new tyres quoted <b>today</b>',
      'tyre size ST205 75 R15',
      'spring width one and three quarters',
    ])
      await say(page, text);
  });

  /** Prints the sheet of a job; the words on it, where pdftotext is here to read them. */
  async function printed(job: string, format: string): Promise<{ pages: number; text: string }> {
    const { page } = await floor.open(`/jobs/${job}/sheet`);
    await page.locator('.measures').first().waitFor();
    const path = `/tmp/axlehand-sheet-${process.pid}-${format}.pdf`;
    const pdf = await page.pdf({ format, path, preferCSSPageSize: false });
    const text = hasText ? execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' }) : '';
    rmSync(path, { force: true });
    await page.close();
    return { pages: pagesIn(pdf), text };
  }

  it.each(['A4', 'Letter'])('fits one or two pages of %s and says what is open', async (format) => {
    const { pages, text } = await printed('1', format);
    expect(pages).toBeGreaterThanOrEqual(1);
    expect(pages).toBeLessThanOrEqual(2);
    if (!hasText) return;
    for (const words of [
      'INVENTED: A DEMONSTRATION',
      'hub face',
      '72 3/8 in',
      'unconfirmed',
      'Technician',
      'signs for nobody',
      '<b>today</b>',
    ])
      expect(text).toContain(words);
    expect(text).not.toContain('Log book');
  });

  it.each([
    ['an axle replacement', 'data/demo/axle-replacement.txt', '', 18],
    ['a tandem with brakes', 'tests/acceptance/conversations/tandem-brakes.txt', '> ', 12],
  ])('holds all of %s on two pages, for the customer and for the shop', async (_name, file, mark, cautions) => {
    const job = await played(floor.shop.url, saidIn(file, mark));
    const { page } = await floor.open(`/jobs/${job}/sheet`, { viewport: { width: 360, height: 740 } });
    await page.locator('.measures').first().waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth), 'on a telephone').toBeLessThanOrEqual(360);
    for (const format of ['A4', 'Letter']) {
      const { pages, text } = await printed(job, format);
      expect(pages, format).toBe(2);
      if (!hasText) continue;
      const [customers = '', shops = ''] = text.split('\f');
      for (const words of [
        'Torque, end play and heat',
        'U-bolt torque',
        'end play',
        'Cautions given',
        'Technician',
        'Open points',
      ])
        expect(customers).toContain(words);
      for (const words of ['For the shop', 'Measured', 'Parts', 'steps done']) expect(shops).toContain(words);
      const given = ((await sheetOf(job)).sheet as { cautions: string[] }).cautions;
      expect(given.length).toBeGreaterThanOrEqual(cautions);
      const words = text.replace(/\s+/g, ' ');
      for (const caution of given) expect(words).toContain(caution.split(' ').slice(0, 3).join(' '));
    }
  });

  const sheetOf = async (job: string) =>
    (await (await fetch(`${floor.shop.url}/api/jobs/${job}/sheet.json`)).json()) as { sheet: object };

  it('is also there as CSV and JSON', async () => {
    for (const format of ['csv', 'json']) {
      const answer = await fetch(`${floor.shop.url}/api/jobs/1/sheet.${format}`);
      expect(answer.status).toBe(200);
      expect(await answer.text()).toContain('579/8');
    }
  });
});

function saidIn(file: string, mark: string): readonly string[] {
  const lines = readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8').split('\n');
  const said = lines.filter((line) => line !== '' && !line.startsWith('#') && line.startsWith(mark));
  return said.map((line) => line.slice(mark.length));
}

/** Says it all to the server; the number of the job that it opened. */
async function played(url: string, said: readonly string[]): Promise<string> {
  let job: string | null = null;
  for (const text of said) {
    const turn: object = { id: crypto.randomUUID(), job, text, heardBy: 'typed', heardAt: new Date().toISOString() };
    const headers = { 'content-type': 'application/json', origin: url };
    const answer: Response = await fetch(`${url}/api/turns`, { method: 'POST', headers, body: JSON.stringify(turn) });
    expect(answer.status, text).toBe(200);
    job = ((await answer.json()) as { job: string | null }).job;
  }
  return job ?? '';
}
