// How sure the search is. Chatter and noise fit the grammar badly (low mean); a number mistaken for another fits well but has
// a close rival (small lead). The figures are fitted by tests/bench/voice.ts on sentences of its own.
import type { Candidate } from './search.ts';
import thresholds from './thresholds.json' with { type: 'json' };

/** What kind of thing was said, as far as doubt goes. */
export type Kind = 'measure' | 'bare' | 'command' | 'grave';

export interface Judged {
  readonly band: 'take' | 'ask' | 'refuse';
  readonly confidence: number;
}

/** Mean log-probability per token, the end of sentence included. */
export const meanOf = ({ logProb, tokens }: Candidate): number => logProb / (tokens + 1);

/** `lead`: log-probability ahead of the best candidate that means something else. */
export function judge(kind: Kind, mean: number, lead: number): Judged {
  const { take, ask } = thresholds.kinds[kind];
  const confidence = Math.exp(Math.min(0, mean) / 2) * (1 - Math.exp(-Math.max(0, lead)));
  if (mean >= take.mean && lead >= take.lead) return { band: 'take', confidence: Math.max(thresholds.taken, confidence) };
  if (mean >= ask.mean && lead >= ask.lead) return { band: 'ask', confidence: Math.min(thresholds.taken - 0.05, confidence) };
  return { band: 'refuse', confidence };
}
