// Which axles of the rack fit, best first.
import type { FieldId } from '#data';
import { essential, optional } from './checks/index.ts';
import type { Candidate, Finding, FitResult, Need, Verdict } from './types.ts';
import { judge, type Needs, resultOf } from './verdict.ts';

export interface Ranking<T extends Candidate> {
  /** The best `most` axles with their verdicts, best first. */
  readonly best: readonly (Verdict & { readonly candidate: T })[];
  readonly counts: Readonly<Record<FitResult, number>>;
}

const order: readonly FitResult[] = ['fits', 'fitsWithWork', 'cannotSayYet', 'doesNotFit'];

/** Ranks any number of axles; verdicts are written out for the best `most`, of one result alone where `only` says so. */
export function rank<T extends Candidate>(needs: Needs, axles: readonly T[], most = 10, only?: FitResult): Ranking<T> {
  const counts = { fits: 0, fitsWithWork: 0, cannotSayYet: 0, doesNotFit: 0 };
  const seen = byField(needs.needs);
  const scored: { readonly axle: T; readonly score: number }[] = [];
  for (const axle of axles) {
    const { result, score } = scoreOf(axle, seen);
    counts[result] += 1;
    if (only === undefined || only === result) scored.push({ axle, score });
  }
  scored.sort((a, b) => a.score - b.score || (a.axle.id < b.axle.id ? -1 : 1));
  const best = scored.slice(0, most).map(({ axle }) => ({ ...judge(needs, axle), candidate: axle }));
  return { best, counts };
}

interface Weighed {
  /** Index into `order`. */
  readonly worst: number;
  readonly off: number;
}

interface Seen {
  readonly field: FieldId;
  readonly find: (value: string | undefined) => Weighed;
}

/** A check looks at one field only, so what its checks find for a value holds for every axle that has it. */
function byField(needs: readonly Need[]): Seen[] {
  return [...new Set(needs.map(({ field }) => field))].map((field) => {
    const ofField = needs.filter((need) => need.field === field);
    const known = new Map<string | undefined, Weighed>();
    const weigh = (value: string | undefined): Weighed => {
      const weighed = weighedBy(ofField, value);
      known.set(value, weighed);
      return weighed;
    };
    return { field, find: (value) => known.get(value) ?? weigh(value) };
  });
}

function weighedBy(needs: readonly Need[], value: string | undefined): Weighed {
  const looked = needs.filter(({ check }) => value !== undefined || !optional.has(check));
  const found = looked.map((need) => ({ need, essential: essential.has(need.check), finding: need.judge(value) }));
  const result = resultOf(found.map(({ essential, finding }) => ({ essential, result: finding.result })));
  return { worst: order.indexOf(result), off: found.reduce((sum, { finding, need }) => sum + distance(finding, need), 0) };
}

/** Lower is better: first the result, then how many rows speak against it, then how far off they are. */
function scoreOf({ values }: Candidate, seen: readonly Seen[]): { readonly result: FitResult; readonly score: number } {
  let worst = 0;
  let against = 0;
  for (const { field, find } of seen) {
    const weighed = find(values[field]);
    worst = Math.max(worst, weighed.worst);
    against += weighed.off;
  }
  return { result: order[worst] ?? 'cannotSayYet', score: worst * 1e6 + against };
}

const cost: Readonly<Record<FitResult, number>> = { fits: 0, cannotSayYet: 1, fitsWithWork: 10, doesNotFit: 1000 };
const cardLost = 2;

/** What its kind costs, and how far off it is: an inch and a thousand pounds weigh the same. */
function distance({ result, code, by = 0 }: Finding, { field }: Need): number {
  if (code === 'candidateUnknown') return cardLost;
  const size = field === 'capacity' ? by / 1000 : by;
  return cost[result] + (result === 'fits' ? 0 : Math.min(9, Math.abs(size)));
}
