// Where the search finds several meanings close, the referee has a say: the search's score and the referee's likelihood, summed.
import type { Reading } from './hear.ts';
import type { Candidate } from './search.ts';

/** The referee is asked of so many meanings whose scores lie so close, and what it says weighs so much. */
const close = { within: 6, most: 3, weight: 0.003 };

/** The candidates with the referee's say in their scores, best first. What it was not asked of gains nothing. */
export function refereed(
  found: readonly Candidate[],
  read: (text: string) => Reading,
  likelihood: (text: string) => number | undefined,
): readonly Candidate[] {
  const best = found.find(({ text }) => !read(text).repeats);
  if (!best) return found;
  const meanings = new Map<string, Candidate>();
  for (const candidate of found) {
    const { key, repeats } = read(candidate.text);
    if (!repeats && best.score - candidate.score < close.within && !meanings.has(key)) meanings.set(key, candidate);
  }
  const asked = [...meanings].slice(0, close.most);
  if (asked.length < 2) return found;
  const said = asked.map(([, { text }]) => likelihood(text));
  const own = said[0];
  if (own === undefined || said.includes(undefined)) return found;
  const gains = new Map(asked.map(([key], index) => [key, close.weight * ((said[index] ?? own) - own)]));
  const least = Math.min(...gains.values());
  return found
    .map((candidate) => ({ ...candidate, score: candidate.score + (gains.get(read(candidate.text).key) ?? least) }))
    .sort((a, b) => b.score - a.score);
}
