// How fast phrases are read and how many come out right, for us and for the general libraries, in one run (started by parse.ts).
// The recognizers suite is run with lengths, weights and speeds alone, and with temperatures as well, since the phrases hold both.
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import numberWithUnit from '@microsoft/recognizers-text-suite';
import nlp from 'compromise';
import words from 'words-to-numbers';
import { understand } from '#intents';

interface Row {
  readonly text: string;
  readonly expect: readonly { readonly kind: string; readonly value?: string; readonly to?: string; readonly not?: string }[];
}

const rows = readFileSync('tests/acceptance/phrases/shop.jsonl', 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line) as Row);

/** The phrases whose every intent is a plain number: what a general library could read too. */
const numeric = rows.filter(
  ({ expect }) =>
    expect.length > 0 &&
    expect.every(({ value, not, to }) => value !== undefined && /^-?\d+(\/\d+)?$/.test(value) && !not && !to),
);
const wanted = ({ expect }: Row) => expect.map(({ value = '0' }) => asNumber(value));
const asNumber = (text: string) =>
  text
    .split('/')
    .map(Number)
    .reduce((top, bottom) => top / bottom);

interface Reader {
  readonly name: string;
  readonly read: (text: string) => readonly number[];
}

const { Culture, recognizeNumber, recognizeDimension, recognizeTemperature } = numberWithUnit;
const resolved = (found: readonly { resolution: Record<string, unknown> }[]) =>
  found.map(({ resolution }) => Number(resolution.value));

const readers: readonly Reader[] = [
  {
    name: 'ours',
    read: (text) => understand(text).intents.flatMap((intent) => ('value' in intent ? [asNumber(intent.value)] : [])),
  },
  {
    name: 'compromise',
    read: (text) =>
      (nlp(text).numbers().json() as readonly { number?: { num?: number } }[]).map(({ number }) => number?.num ?? Number.NaN),
  },
  {
    name: 'recognizers (number + dimension)',
    read: (text) => {
      recognizeDimension(text, Culture.English);
      return resolved(recognizeNumber(text, Culture.English));
    },
  },
  // The phrases hold temperatures, which are no dimension there but a recogniser of their own: ours reads them in the same breath.
  {
    name: 'recognizers (number + unit)',
    read: (text) => {
      recognizeDimension(text, Culture.English);
      recognizeTemperature(text, Culture.English);
      return resolved(recognizeNumber(text, Culture.English));
    },
  },
  {
    name: 'words-to-numbers',
    read: (text) =>
      String(words.wordsToNumbers(text) ?? '')
        .match(/-?\d+(\.\d+)?/g)
        ?.map(Number) ?? [],
  },
];

/** Values in the unit said: feet-and-inches count as right either way round, so a library is not marked down for units. */
function isRight(row: Row, values: readonly number[]): boolean {
  const all = wanted(row);
  return values.length === all.length && all.every((value, at) => Math.abs((values[at] ?? Number.NaN) - value) < 1e-9);
}

/** Every reader is warmed for this long before anything is timed, then they take turns, so that what else the machine does meets all. */
const warmMs = 2000;
const rounds = 25;

function warm({ read }: Reader): void {
  for (const end = performance.now() + warmMs; performance.now() < end; ) for (const { text } of rows) read(text);
}

function timeRound({ read }: Reader, times: readonly number[][]): void {
  for (const [at, { text }] of rows.entries()) {
    const start = performance.now();
    read(text);
    times[at]?.push((performance.now() - start) * 1000);
  }
}

/** Each phrase's time is its median over the rounds; percentiles are over phrases. */
function resultOf({ name, read }: Reader, times: readonly number[][]) {
  const medians = times.map((all) => middle([...all])).sort((a, b) => a - b);
  const at = (share: number) => Math.round(medians[Math.floor(medians.length * share)] ?? 0);
  const right = numeric.filter((row) => isRight(row, read(row.text))).length;
  const perSecond = Math.round(medians.length / (medians.reduce((sum, time) => sum + time, 0) / 1e6));
  const share = Number(((right / numeric.length) * 100).toFixed(1));
  return { reader: name, 'phrases/s': perSecond, 'p50 us': at(0.5), 'p99 us': at(0.99), 'right %': share };
}

const middle = (all: number[]) => all.sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? 0;

console.log(`${rows.length} shop phrases; right values on the ${numeric.length} that hold plain numbers only`);
readers.forEach(warm);
const times = readers.map(() => rows.map(() => [] as number[]));
for (let round = 0; round < rounds; round += 1) for (const [at, reader] of readers.entries()) timeRound(reader, times[at] ?? []);
const results = readers.map((reader, at) => resultOf(reader, times[at] ?? []));
console.table(results);
const [ours, ...others] = results;
for (const other of others) {
  const times = ours && (ours['phrases/s'] / other['phrases/s']).toFixed(1);
  console.log(`ours reads ${times} times as many phrases a second as ${other.reader}`);
}

const one = 'left hub face seventy two and three eighths ';
console.log('one utterance of n measurements, ms (best of 20):');
for (const count of [1, 10, 100, 1000]) {
  const text = one.repeat(count);
  const times = Array.from({ length: 20 }, () => {
    const start = performance.now();
    understand(text);
    return performance.now() - start;
  });
  console.log(`  ${String(count).padStart(4)}  ${Math.min(...times).toFixed(3)}`);
}

console.log('one utterance of 10,000 characters, ms (worst of 20 after warming):');
const long: Readonly<Record<string, string>> = {
  'one word': 'a'.repeat(10_000),
  digits: '7'.repeat(10_000),
  'number words': 'seven '.repeat(1667),
  points: 'point '.repeat(1667),
  'and, and': 'and a half '.repeat(909),
  letters: 'l m '.repeat(2500),
  'commas and marks': ',-/.'.repeat(2500),
  emoji: '\u{1F527}'.repeat(5000),
  names: 'hub face left '.repeat(714),
  questions: 'what is the '.repeat(833),
};
for (const [what, text] of Object.entries(long)) {
  for (let count = 0; count < 5; count += 1) understand(text);
  const spans = Array.from({ length: 20 }, () => {
    const start = performance.now();
    understand(text);
    return performance.now() - start;
  });
  console.log(`  ${what.padEnd(18)} ${Math.max(...spans).toFixed(1)}`);
}
