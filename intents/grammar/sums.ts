// Sums asked mid-job, as the parser computes them (rules/compute.ts): "what's half of seventy-two and a quarter".
import { maybe, means, oneOf, type Phrase, phrase, seldom, seq } from '../phrase.ts';
import type { Intent } from '../types.ts';
import { feet, tape, wholes } from './numbers.ts';

const ask = phrase("(what is|what's)");
const asked = (of: Phrase): Phrase => means(of, { intent: { kind: 'question', topic: 'compute' } satisfies Intent });
const length = tape(1, 120, 16);
const torque = seq(wholes(5, 500), phrase('foot pounds'));

export const sums: Phrase = seldom(
  asked(
    oneOf(
      seq(ask, phrase('half of'), length),
      seq(maybe(ask), phrase('twice'), length),
      seq(ask, length, phrase('(plus|minus)'), length),
      seq(ask, length, phrase('in (millimetres|feet)')),
      seq(ask, torque, phrase('in (newton metres|inch pounds)')),
      seq(phrase('how many millimetres (is|in)'), length),
      seq(phrase('how many inches (is|in)'), feet(24, 120, 16)),
      seq(maybe(ask), phrase('[the] difference between'), length, phrase('and'), length),
    ),
  ),
  1,
);
