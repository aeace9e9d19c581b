// Token buckets: each caller may do `burst` at once and `perSecond` after that.

export interface Limit {
  readonly perSecond: number;
  readonly burst: number;
}

const callersKept = 10_000;

/** @returns a function that says how many seconds a caller must wait; 0 = go on. `now` in milliseconds */
export function createLimiter({ perSecond, burst }: Limit, now: () => number = performance.now.bind(performance)) {
  const buckets = new Map<string, { level: number; at: number }>();
  return (caller: string): number => {
    const at = now();
    const before = buckets.get(caller) ?? { level: burst, at };
    const level = Math.min(burst, before.level + ((at - before.at) / 1000) * perSecond);
    const goes = level >= 1;
    buckets.delete(caller);
    buckets.set(caller, { level: goes ? level - 1 : level, at });
    if (buckets.size > callersKept) for (const oldest of buckets.keys()) return buckets.delete(oldest) && goes ? 0 : 1;
    return goes ? 0 : Math.ceil((1 - level) / perSecond);
  };
}
