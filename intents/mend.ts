// Mishearings and spellings put right before reading. Rows live in data/mishearings.json.
import type { Token } from './tokens.ts';

export function mend(tokens: readonly Token[]): Token[] {
  return [...tokens];
}
