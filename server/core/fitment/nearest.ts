// Axles that do not fit as they stand but could be made to, and what each would take.
import { rank } from './rank.ts';
import type { Candidate, RemedyId, Row, Verdict } from './types.ts';
import type { Needs } from './verdict.ts';

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
  'askTheState',
]);

export interface Making<T extends Candidate = Candidate> {
  readonly verdict: Verdict & { readonly candidate: T };
  readonly possible: boolean;
  /** Rows that stand in the way, each with its remedy. */
  readonly takes: readonly Row[];
}

/** What it would take to make this axle fit; `possible` is false where one row has no remedy but another axle. */
export function making<T extends Candidate>(verdict: Verdict & { readonly candidate: T }): Making<T> {
  const takes = verdict.rows.filter(({ result }) => result === 'doesNotFit' || result === 'fitsWithWork');
  return { verdict, possible: takes.every(({ remedy }) => remedy !== undefined && doable.has(remedy)), takes };
}

/** Looked at for what could be made to fit, nearest first: beyond it nothing is near. */
const looked = 200;

/** Of the axles that do not fit as they are, those that work would make fit, least work first. */
export function nearest<T extends Candidate>(needs: Needs, axles: readonly T[], most = 10): readonly Making<T>[] {
  return rank(needs, axles, looked, 'doesNotFit')
    .best.map(making)
    .filter(({ possible }) => possible)
    .sort((a, b) => a.takes.length - b.takes.length)
    .slice(0, most);
}
