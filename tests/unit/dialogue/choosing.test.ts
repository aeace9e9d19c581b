// Choosing an axle in talk: by pointing, by its turn, by where it lies; and holding it beside the old one.
import { expect, test } from 'vitest';
import type { StockAxle } from '#data';
import { takeTurn, view } from '#dialogue';
import { understand } from '#intents';
import { emptyJob, fold, type JobRecord } from '#log/events';
import rack from '../../../data/demo/stock.json' with { type: 'json' };
import { know as plain } from '../../support/dialogue.ts';

const know = { ...plain, stock: rack.rows as readonly StockAxle[] };

interface Talk {
  readonly job: JobRecord | null;
  readonly code: string;
  readonly speak: string;
  readonly turn: number;
}

function say({ job, turn }: Talk, text: string): Talk {
  const at = new Date(Date.parse('2026-11-25T08:00:00.000Z') + turn * 5000).toISOString();
  const understanding = understand(text, job ? view(job, know).expects : undefined);
  const { events, reply } = takeTurn(
    job,
    { turn: `t${turn}`, understanding, heardBy: 'typed', runnersUp: [], heardAt: at },
    at,
    know,
  );
  const heard = {
    kind: 'heard' as const,
    text,
    heardBy: 'typed' as const,
    intents: understanding.intents,
    unclaimed: [],
    heardAt: at,
  };
  const replied = { kind: 'replied' as const, ...reply };
  const after = [heard, ...events, replied].reduce(
    (left, body, i) => fold(left, { seq: turn * 100 + i, job: '1', turn: `t${turn}`, at, who: '', body }),
    job ?? emptyJob('1'),
  );
  return { job: after, code: reply.code, speak: reply.speak, turn: turn + 1 };
}

const sayAll = (talk: Talk, ...texts: readonly string[]) => texts.reduce(say, talk);
const shown = sayAll(
  { job: null, code: '', speak: '', turn: 0 },
  'new job axle replacement',
  'single axle, electric brakes, slipper springs',
  'hub face seventy-two and three eighths, spring centre fifty-eight',
  'beam two and three eighths round',
  'capacity thirty-five hundred',
  'yes',
  'five on four and a half, brakes ten by two and a quarter',
  'what fits',
);

test.each([
  ['take that one', 'TB-3502'],
  ["I'll take the second one", 'TB-3503'],
  ['the upper one on rack two', 'TB-3502'],
  ['how about the one in bay three', 'TB-7001'],
  ['what about the lower one on rack two', 'TB-3501'],
  ['use the floor one on rack two', 'TB-3503'],
  ['the one on rack four', 'TB-3524'],
  ['does the one on rack four fit', 'TB-3524'],
])('"%s" is held against the trailer, and asked about', (words, stock) => {
  const asked = say(shown, words);
  expect(asked.job?.candidate?.stock).toBe(stock);
  expect(asked.speak).toMatch(/rack|bay/);
  expect([asked.job?.asked?.about, asked.job?.verdict?.accepted]).toEqual(['verdict', undefined]);
});

test('"take that one" to the verdict takes it; another place is another question', () => {
  const asked = say(shown, 'the upper one on rack two');
  expect(say(asked, 'take that one').job?.verdict?.accepted).toBe(true);
  const other = say(asked, 'the lower one on rack two');
  expect([other.job?.candidate?.stock, other.job?.verdict?.accepted]).toEqual(['TB-3501', undefined]);
});

test.each([
  ['the one in bay three', 'is it wider than the old one', 'wider, ninety-five inches against seventy-two and three eighths'],
  ['the one in bay three', 'is it stronger', 'thirty-five hundred pounds more, seven thousand pounds against'],
  ['the upper one on rack two', 'is the new one longer', 'Hub face: the same'],
])('%s: "%s"', (which, words, answered) => {
  const told = sayAll(shown, which, words);
  expect([told.code, told.speak.includes(answered), told.speak]).toEqual(['compare', true, told.speak]);
});
