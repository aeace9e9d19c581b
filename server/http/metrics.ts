// What the server did since it started, as numbers and as text for a scraper. Nothing about what was said.
import type { MiddlewareHandler } from 'hono';

const bucketsMs = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

export function createMetrics() {
  const requests = new Map<string, number>();
  const turnTimes = bucketsMs.map(() => 0);
  let turns = 0;
  let turnMs = 0;

  function tookTurn(ms: number): void {
    turns += 1;
    turnMs += ms;
    bucketsMs.forEach((bound, i) => {
      if (ms <= bound) turnTimes[i] = (turnTimes[i] ?? 0) + 1;
    });
  }

  const counted: MiddlewareHandler = async (c, next) => {
    const from = performance.now();
    await next();
    const status = `${Math.floor(c.res.status / 100)}xx`;
    requests.set(status, (requests.get(status) ?? 0) + 1);
    if (c.req.path === '/api/turns' && c.res.status === 200) tookTurn(performance.now() - from);
  };

  /** `gauges`: what is true now. */
  function text(gauges: Readonly<Record<string, number>>): string {
    const lines = [...requests].sort().map(([status, n]) => `axlehand_requests_total{status="${status}"} ${n}`);
    lines.push(...bucketsMs.map((bound, i) => `axlehand_turn_ms_bucket{le="${bound}"} ${turnTimes[i]}`));
    lines.push(
      `axlehand_turn_ms_bucket{le="+Inf"} ${turns}`,
      `axlehand_turn_ms_sum ${turnMs.toFixed(3)}`,
      `axlehand_turn_ms_count ${turns}`,
    );
    lines.push(...Object.entries(gauges).map(([name, value]) => `axlehand_${name} ${value}`));
    return `${lines.join('\n')}\n`;
  }

  return { counted, text };
}

export type Metrics = ReturnType<typeof createMetrics>;
