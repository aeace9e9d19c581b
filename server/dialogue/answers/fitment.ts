// The fitment topics and who answers them.
import type { Topic } from '#intents';
import type { Answerer } from '../types.ts';
import { again } from './fitment-again.ts';
import { bearing } from './fitment-bearing.ts';
import { brakeLaw } from './fitment-brake-law.ts';
import { clearance } from './fitment-clearance.ts';
import { compare } from './fitment-compare.ts';
import { fits, why } from './fitment-fits.ts';
import { load } from './fitment-load.ts';
import { namedByPlace } from './fitment-named.ts';
import { nearest } from './fitment-nearest.ts';
import { parts } from './fitment-parts.ts';
import { boltPattern } from './fitment-pattern.ts';
import { rideHeight } from './fitment-ride.ts';
import { seal } from './fitment-seal.ts';
import { straight } from './fitment-straight.ts';
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

/** "What's on rack four" lists what lies there; "does rack four fit" asks of it. */
const onRack: Answerer = (question, job, know, now) => {
  const there = namedByPlace(question, know.stock);
  if (there.length === 0) return whatFits(question, job, know, now);
  const lists = /^(?:what|which)/.test(question.words ?? '');
  return lists ? whatFits(question, job, { ...know, stock: there }, now) : fits(question, job, know, now);
};

export const fitmentAnswers: Partial<Record<Topic, Answerer>> = {
  fits: orPart(fits),
  whatFits: orPart(onRack),
  why,
  clearance,
  load,
  tyre,
  bearing,
  seal,
  boltPattern,
  parts: orPart(parts),
  brakeLaw,
  nearest,
  again,
  compare,
  rideHeight,
  straight,
};
