// Shop phrases with the intents they must give: one JSON object a line, {id, text, expect}. Further keys of an intent are free.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { understand } from '#intents';

interface Row {
  readonly id: string;
  readonly text: string;
  readonly expect: readonly Readonly<Record<string, unknown>>[];
}

const read = (file: string) =>
  readFileSync(new URL(file, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Row);

/** `shop.jsonl`: phrases with their intents, set from outside. `own.jsonl`: our own sayings, each reading checked by eye when added. */
const shop = read('./shop.jsonl');
const own = read('./own.jsonl');

function isMet(row: Row): boolean {
  const got = understand(row.text).intents as unknown as readonly Readonly<Record<string, unknown>>[];
  return (
    got.length === row.expect.length &&
    row.expect.every((wanted, at) =>
      Object.entries(wanted).every(([key, value]) => JSON.stringify(got[at]?.[key]) === JSON.stringify(value)),
    )
  );
}

const missedOf = (rows: readonly Row[]) =>
  rows.filter((row) => !isMet(row)).map(({ id, text }) => `${id} ${text}: ${JSON.stringify(understand(text).intents)}`);

it(`meets at least 98% of ${shop.length} shop phrases`, () => {
  const missed = missedOf(shop);
  expect(shop.length).toBeGreaterThan(200);
  expect(missed.length / shop.length, missed.join('\n')).toBeLessThanOrEqual(0.02);
});

it(`meets all ${own.length} sayings of our own`, () => {
  expect(own.length).toBeGreaterThan(1000);
  expect(missedOf(own)).toEqual([]);
});
