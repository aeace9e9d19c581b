// Which axles of the rack fit, best first.
import { essential, optional } from './checks/index.ts';
import type { Candidate, Finding, FitResult, Need, Verdict } from './types.ts';
import { judge, type Needs, resultOf } from './verdict.ts';

export interface Ranking<T extends Candidate> {
  /** The best `most` axles with their verdicts, best first. */
  readonly best: readonly (Verdict & { readonly candidate: T })[];
  readonly counts: Readonly<Record<FitResult, number>>;
}

const order: readonly FitResult[] = ['fits', 'fitsWithWork', 'cannotSayYet', 'doesNotFit'];

interface Scored<T> {
  readonly axle: T;
  readonly score: number;
}

/** Ranks any number of axles; verdicts are written out for the best `most`. */
export function rank<T extends Candidate>(needs: Needs, axles: readonly T[], most = 10): Ranking<T> {
  const counts = { fits: 0, fitsWithWork: 0, cannotSayYet: 0, doesNotFit: 0 };
  const seen = needs.needs.map(remembering);
  const scored: Scored<T>[] = [];
  for (const axle of axles) {
    const { result, score } = scoreOf(axle, seen);
    counts[result] += 1;
    scored.push({ axle, score });
  }
  scored.sort((a, b) => a.score - b.score || (a.axle.id < b.axle.id ? -1 : 1));
  const best = scored.slice(0, most).map(({ axle }) => ({ ...judge(needs, axle), candidate: axle }));
  return { best, counts };
}

interface Seen {
  readonly need: Need;
  readonly essential: boolean;
  readonly find: (value: string | undefined) => Finding & { readonly off: number };
}

/** A check looks at one value only, so what it found for that value holds for every axle that has it. */
function remembering(need: Need): Seen {
  const known = new Map<string | undefined, Finding & { readonly off: number }>();
  const find = (value: string | undefined) => {
    const before = known.get(value);
    if (before) return before;
    const found = need.judge(value);
    const finding = { ...found, off: distance(found) };
    known.set(value, finding);
    return finding;
  };
  return { need, essential: essential.has(need.check), find };
}

/** Lower is better: first the result, then how many rows speak against it, then how far off they are. */
function scoreOf(axle: Candidate, seen: readonly Seen[]): { readonly result: FitResult; readonly score: number } {
  let against = 0;
  const findings: { result: FitResult; essential: boolean }[] = [];
  for (const { need, essential, find } of seen) {
    const value = axle.values[need.field];
    if (value === undefined && optional.has(need.check)) continue;
    const { result, off } = find(value);
    findings.push({ result, essential });
    against += off;
  }
  const result = resultOf(findings);
  return { result, score: order.indexOf(result) * 1e6 + against };
}

const cost: Readonly<Record<FitResult, number>> = { fits: 0, cannotSayYet: 1, fitsWithWork: 10, doesNotFit: 1000 };
const cardLost = 2;

/** What its kind costs, and how far off it is: an inch and a thousand pounds weigh the same. */
function distance({ result, code, margin }: Finding): number {
  if (code === 'candidateUnknown') return cardLost;
  const by = margin?.value.valueOf() ?? 0;
  const size = margin?.unit === 'lb' ? by / 1000 : by;
  return cost[result] + (result === 'fits' ? 0 : Math.min(9, Math.abs(size)));
}
