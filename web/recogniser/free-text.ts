// What a recogniser of free text has made of a press so far -> one hearing. The meaning is found later, as of typed text.
import { policy } from '#data';
import type { Heard } from './types.ts';

/** What it means is not known yet. */
export type Guessed = Omit<Heard, 'kind' | 'answers'>;

interface Guess {
  readonly transcript: string;
  readonly confidence: number;
}

export interface Results {
  readonly length: number;
  readonly [index: number]: { readonly length: number; readonly [index: number]: Guess };
}

/** Some browsers give 0 for "cannot say": taken and read back, as anything is. */
const unknown = 0.7;

/** All pieces joined; each other guess at the last piece makes an alternative. Undefined where nothing was said. */
export function gather(results: Results): Guessed | undefined {
  const pieces = Array.from({ length: results.length }, (_, index) => guesses(results, index));
  const first = pieces.map(([best]) => best?.transcript ?? '');
  const text = joined(first);
  if (text === '') return undefined;
  const others = (pieces.at(-1) ?? []).slice(1).map(({ transcript }) => joined([...first.slice(0, -1), transcript]));
  const given = pieces.flatMap(([best]) => (best && best.confidence > 0 ? [best.confidence] : []));
  const confidence = given.length > 0 ? Math.min(...given) : unknown;
  const alternatives = [...new Set(others)].filter((other) => other !== '' && other !== text);
  return { ok: true, text, confidence, alternatives, band: confidence >= policy.confidence ? 'take' : 'ask' };
}

function guesses(results: Results, index: number): Guess[] {
  const piece = results[index];
  return piece ? Array.from({ length: piece.length }, (_, at) => piece[at] ?? { transcript: '', confidence: 0 }) : [];
}

const joined = (parts: readonly string[]): string => parts.join(' ').replace(/\s+/g, ' ').trim();
