// How sure the search is. Chatter and noise fit the grammar badly (low fit); a number mistaken for another fits well but has a
// close rival (small lead). The figures are fitted by tests/bench/voice.ts on sentences of its own.
import type { Kind } from '../types.ts';
import type { Candidate } from './search.ts';
import thresholds from './thresholds.json' with { type: 'json' };

export interface Judged {
  readonly band: 'take' | 'ask' | 'refuse';
  /** From 0 to 1. */
  readonly confidence: number;
}

/** How much more than anyhow the model expected the sentence when it heard it, and the better the likelier it is to be said: nats a
 * token, the end of sentence included. What is not for us comes out as something seldom said. */
export const fitOf = ({ gain, cost, tokens }: Candidate): number => (gain - cost) / (tokens + 1);

/** A lead that is larger makes no surer. */
const mostLead = 6;

/** `lead`: score ahead of the best candidate that means something else. */
export function judge(kind: Kind, fit: number, lead: number): Judged {
  const { take, ask } = thresholds.kinds[kind];
  const ahead = 2 * fit + Math.min(mostLead, lead) - take.sure;
  const confidence = 1 / (1 + Math.exp(-ahead));
  if (fit >= take.fit && lead >= take.lead && ahead >= 0)
    return { band: 'take', confidence: Math.max(thresholds.taken, confidence) };
  return { band: fit >= ask.fit ? 'ask' : 'refuse', confidence: Math.min(thresholds.asked, confidence) };
}
