// The fitment topics and who answers them.
import type { Topic } from '#intents';
import type { Answerer } from '../types.ts';
import { bearing } from './fitment-bearing.ts';
import { clearance } from './fitment-clearance.ts';
import { fits, why } from './fitment-fits.ts';
import { load } from './fitment-load.ts';
import { parts } from './fitment-parts.ts';
import { boltPattern } from './fitment-pattern.ts';
import { seal } from './fitment-seal.ts';
import { tyre } from './fitment-tyre.ts';
import { whatFits } from './fitment-what-fits.ts';

/** "What bearing fits this journal", "what cup goes with it": asked as a fit or a bill, meant of a part. */
const ofPart: Readonly<Record<string, Answerer>> = {
  bearing,
  innerBearing: bearing,
  outerBearing: bearing,
  cup: bearing,
  seal,
  tyreSize: tyre,
};

const orPart =
  (answer: Answerer): Answerer =>
  (question, ...rest) => {
    const given = question.given?.flatMap((said) => (said.kind === 'measure' ? [said.field] : [])) ?? [];
    const part = [question.of ?? '', ...given].find((field) => field in ofPart);
    return (ofPart[part ?? ''] ?? answer)(question, ...rest);
  };

export const fitmentAnswers: Partial<Record<Topic, Answerer>> = {
  fits: orPart(fits),
  whatFits: orPart(whatFits),
  why,
  clearance,
  load,
  tyre,
  bearing,
  seal,
  boltPattern,
  parts: orPart(parts),
};
