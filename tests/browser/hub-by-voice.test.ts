// A whole hub service by voice alone: each line of the shortest one is spoken while the bar is held. Whatever the page refuses, doubts
// or mishears is put right by voice too, as someone would who looks at the step on the screen.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { understand } from '#intents';
import type { JobRecord } from '#log/events';
import type { JobView } from '#wire';
import { read } from '../../web/recogniser/engine/language.ts';
import { anyMicrophone, eventsIn, kept, openFloor, withBrowser } from '../support/browser.ts';
import { aTechnician, standing } from '../support/conversation.ts';
import { hubServiceLines as lines } from '../support/hub-service.ts';
import { speak, withMouth } from '../support/mouth.ts';
import { hasVoice } from '../support/spoken.ts';

/** A line with the one before: a question of look-alikes may still stand from there. */
type Pair = readonly [before: string, line: string];
const mostTries = 8;

const nothing = { fields: [], yesNo: false };
const means = (text: string): string => read(text.replaceAll(',', ''), nothing).key;
/** Where a line leads: status, step, and whether something is asked. */
const placeOf = (view: JobView | null): string =>
  view ? `${view.status} ${view.step?.key ?? ''} ${view.question === undefined ? '' : 'asks'}` : '';

async function doubtfulOn(page: Page): Promise<string | undefined> {
  const asked = page.locator('.question.doubtful bdi');
  return (await asked.count()) > 0 ? ((await asked.textContent()) ?? '') : undefined;
}

/** Of the answers offered, the one whose value the lines say. */
function choiceIn(line: string, { choices = [] }: JobView): string | undefined {
  const values = (text: string) =>
    understand(text, nothing).intents.flatMap((intent) => ('value' in intent ? [intent.value] : []));
  return choices.find(({ show }) => values(line).includes(values(show)[0] ?? ''))?.say;
}

(hasVoice ? withBrowser : describe.skip)('a hub service by voice alone', () => {
  const floor = openFloor({ switches: anyMicrophone });
  const said: string[] = [];
  /** Heard otherwise than it was said, and sent. */
  const slips: string[] = [];

  const shown = async (page: Page): Promise<JobView> =>
    kept<JobView>(floor.shop, `/api/jobs/${await page.locator('.card-id').textContent()}`);

  /** @returns what to say next: nothing once the line has led where it leads. */
  async function sayOnce(page: Page, text: string, [before, line]: Pair, place: string): Promise<string | undefined> {
    const asked = await doubtfulOn(page);
    const { heard, doubtful } = await speak(page, text.replaceAll(',', ''));
    said.push(text);
    if (doubtful !== undefined) return means(doubtful) === means(text) ? 'yes' : 'no';
    if (heard === undefined) return asked ? line : text;
    const view = await shown(page);
    if (means(heard) !== means(asked ?? text)) {
      slips.push(`"${text}" heard as "${heard}"`);
      return view.question === undefined ? 'undo' : 'no';
    }
    if (text === 'no' || text === 'undo') return line;
    if (placeOf(view) === place) return undefined;
    if (view.question !== undefined) return view.choices ? (choiceIn(`${before}. ${line}`, view) ?? 'no') : 'yes';
    return text !== line && /done$/.test(line) ? 'done' : line;
  }

  it('is done, closed and in the log', async () => {
    const { page, faults } = await floor.open('about:blank', { voice: true });
    page.setDefaultTimeout(20_000);
    await withMouth(page);
    await page.goto(floor.shop.url);
    await page.locator('.talk.ready').waitFor({ timeout: 60_000 });
    const logged = eventsIn(floor.shop.db).length;
    const model = aTechnician();
    for (const [at, line] of lines.entries()) {
      const pair: Pair = [lines[at - 1] ?? '', line];
      const place = placeOf(model.say(line).view);
      let next: string | undefined = line;
      for (let tries = 0; next !== undefined && tries < mostTries; tries += 1) next = await sayOnce(page, next, pair, place);
      const { question } = await shown(page);
      expect(placeOf(await shown(page)), JSON.stringify({ said: said.slice(-mostTries), slips, question })).toBe(place);
    }
    const job = await kept<JobRecord>(floor.shop, `/api/jobs/${await page.locator('.card-id').textContent()}/record`);
    expect(standing(job).toSorted()).toEqual(standing(model.job()).toSorted());
    const heard = eventsIn(floor.shop.db)
      .slice(logged)
      .flatMap((body) => (body.kind === 'heard' ? [body.heardBy] : []));
    expect(new Set(heard)).toEqual(new Set(['builtIn']));
    // A job that takes many more presses than it has lines is no job by voice.
    expect(said.length, JSON.stringify({ said, slips })).toBeLessThan(1.3 * lines.length);
    expect(faults).toEqual([]);
    model.close();
  }, 300_000);
});
