// Shop phrases with the intents they must give: one JSON object a line, {id, text, expect}. Further keys of an intent are free.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { understand } from '#intents';

interface Row {
  readonly id: string;
  readonly text: string;
  readonly expect: readonly Readonly<Record<string, unknown>>[];
}

const rows = readFileSync(new URL('./shop.jsonl', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line) as Row);

function isMet(row: Row): boolean {
  const got = understand(row.text).intents as unknown as readonly Readonly<Record<string, unknown>>[];
  return (
    got.length === row.expect.length &&
    row.expect.every((wanted, at) => Object.entries(wanted).every(([key, value]) => got[at]?.[key] === value))
  );
}

it(`meets at least 98% of ${rows.length} shop phrases`, () => {
  const missed = rows
    .filter((row) => !isMet(row))
    .map(({ id, text }) => `${id} ${text}: ${JSON.stringify(understand(text).intents)}`);
  expect(rows.length).toBeGreaterThan(200);
  expect(missed.length / rows.length, missed.join('\n')).toBeLessThanOrEqual(0.02);
});
