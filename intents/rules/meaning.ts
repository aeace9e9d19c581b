// "What's a tie plate": asks what a trade word means, and nothing besides.
import { glossary } from '#data';
import { lexicon } from '../lexicon.ts';
import { spanOf } from '../refine/intents.ts';
import type { QuestionIntent } from '../types.ts';
import type { Hearing } from '../understand.ts';
import { meaningOpeners, meaningTails, termOpeners, valueOpeners } from '../words/meaning.ts';
import { questionAt } from './question.ts';

/** `sure`: whatever follows is a word; else it may as well be a value of the job that is asked for, and with its article something else. */
const openers = lexicon([
  ['sure' as const, meaningOpeners],
  ['maybe' as const, termOpeners],
  ['value' as const, valueOpeners],
]);
const tails = lexicon([[true, meaningTails]]);
const terms = lexicon(glossary.map((row) => [row, row.said] as const));

/** The question at `at`, where it names a word of the glossary and ends there. */
export function meaningAt(hearing: Hearing, at: number): { intent: QuestionIntent; end: number } | undefined {
  const { tokens, stops } = hearing;
  const stop = stops[at] ?? tokens.length;
  const opener = openers.longest(tokens, at);
  const term = opener && terms.longest(tokens, opener.end);
  if (!term) return undefined;
  const tail = tails.longest(tokens, term.end);
  if ((tail?.end ?? term.end) !== stop) return undefined;
  const means = opener.meaning === 'sure' || tail !== undefined;
  if (opener.meaning === 'value' && !means && questionAt(hearing, at)) return undefined;
  const words = tokens.slice(at, stop).map(({ word }) => word);
  const span = spanOf(tokens, at, stop);
  return {
    intent: {
      kind: 'question',
      topic: 'meaning',
      of: term.meaning.id,
      words: words.join(' '),
      ...(means && { told: true }),
      span,
    },
    end: stop,
  };
}
