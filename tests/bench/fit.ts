// How long a verdict and a ranking take. Prints; asserts nothing. Run: npm run -s bench:fit
import { judge, needsOf, rank, sensitivity, verdictOf } from '#core';
import { demoStock, type StockAxle } from '#data';
import { readings, rightAxle, wholeTrailer } from '../support/readings.ts';

const trailer = readings(wholeTrailer);
const kinds = demoStock.length;

/** A rack of any size in the shape of the demo's, every hub face and spring centre different where `distinct`. */
function rackOf(count: number, distinct: boolean): StockAxle[] {
  return Array.from({ length: count }, (_, at) => {
    const base = demoStock[at % kinds] as StockAxle;
    const spread = distinct ? { hubFace: `${4 * 64 * 64 + at}/256`, springCentre: `${56 * 1024 + (at % 4096)}/1024` } : {};
    return { ...base, id: `axle-${at}`, values: { ...base.values, ...spread } };
  });
}

interface Took {
  readonly middle: number;
  readonly worst: number;
  /** Processor time of one run on average: what it takes however busy the machine is with other work. */
  readonly cpu: number;
}

/** Milliseconds: middle and worst of the runs, after warming up. */
function time(runs: number, work: () => unknown): Took {
  for (let i = 0; i < Math.min(runs, 20); i++) work();
  const before = process.cpuUsage();
  const took = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const { user, system } = process.cpuUsage(before);
  return { middle: took[runs >> 1] ?? 0, worst: took.at(-1) ?? 0, cpu: (user + system) / 1000 / runs };
}

const line = (name: string, { middle, worst, cpu }: Took, wanted = '') => {
  const figures = (
    [
      ['middle', middle],
      ['worst', worst],
      ['cpu', cpu],
    ] as const
  ).map(([word, ms]) => `${ms.toFixed(3).padStart(9)} ms ${word}`);
  console.log(`${name.padEnd(46)} ${figures.join(' ')}  ${wanted}`);
};

const needs = needsOf(trailer);
line(
  'one verdict, readings to rows',
  time(2000, () => verdictOf(trailer, rightAxle)),
  'wanted: under 0.2 ms',
);
line(
  'one verdict on a trailer made ready',
  time(2000, () => judge(needs, rightAxle)),
);
line(
  'which measurement decides',
  time(200, () => sensitivity(trailer, rightAxle)),
);
for (const count of [100, 1000, 10_000, 100_000]) {
  const runs = count > 10_000 ? 5 : 20;
  const usual = rackOf(count, false);
  const distinct = rackOf(count, true);
  const wanted = count === 10_000 ? 'wanted: under 100 ms' : '';
  line(
    `rank ${count} axles, sizes as shops have them`,
    time(runs, () => rank(needsOf(trailer), usual)),
    wanted,
  );
  line(
    `rank ${count} axles, every size different`,
    time(runs, () => rank(needsOf(trailer), distinct)),
    wanted,
  );
}
