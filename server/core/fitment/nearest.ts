// Axles that do not fit as they stand but could be made to, and what each would take.
import type { RemedyId, Row, Verdict } from './types.ts';

/** Work a shop can do; buying another axle is none. */
const doable: ReadonlySet<RemedyId> = new Set([
  'moveSeats',
  'newSeats',
  'slingSwap',
  'changeHubs',
  'centringRing',
  'otherNuts',
  'wireBrakes',
  'convertBrakes',
  'newBackingPlates',
  'relabel',
  'strongerTyres',
  'matchPair',
  'otherSprings',
]);

export interface Making {
  readonly verdict: Verdict;
  readonly possible: boolean;
  /** Rows that stand in the way, each with its remedy. */
  readonly takes: readonly Row[];
}

/** What it would take to make this axle fit; `possible` is false where one row has no remedy but another axle. */
export function making(verdict: Verdict): Making {
  const takes = verdict.rows.filter(({ result }) => result === 'doesNotFit' || result === 'fitsWithWork');
  return { verdict, possible: takes.every(({ remedy }) => remedy !== undefined && doable.has(remedy)), takes };
}

/** Of ranked verdicts that do not fit, those that work would make fit, least work first. */
export function nearest(verdicts: readonly Verdict[]): readonly Making[] {
  return verdicts
    .filter(({ result }) => result === 'doesNotFit')
    .map(making)
    .filter(({ possible }) => possible)
    .sort((a, b) => a.takes.length - b.takes.length);
}
