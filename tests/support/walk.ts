// A sentence walked through the recogniser's grammar.
import type { Automaton } from '#intents/grammar';

/** How seldom the words are said, in nats; infinite for what cannot be said. */
export function costOf({ start, next, cost, endCost }: Automaton, words: readonly string[]): number {
  let [state, sum] = [start, 0];
  for (const word of words) {
    const to = next(state).get(word);
    if (to === undefined) return Number.POSITIVE_INFINITY;
    sum += cost(state, word);
    state = to;
  }
  return sum + endCost(state);
}
