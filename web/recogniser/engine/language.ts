// What the engine is told about the language: what can be said now, and what a text says.
import { fields } from '#data';
import { type Expects, gist, type Intent, understand } from '#intents';
import { grammar, wordList } from '#intents/grammar';
import type { Language, Reading } from './hear.ts';

export const language: Language = {
  grammar,
  read,
};

/** Every word that can be heard, whatever is waited for. */
export const vocabulary = (): readonly string[] => wordList({ fields: fields.map(({ id }) => id), yesNo: true });

/** Commands that lose or settle something. */
const grave: readonly string[] = ['undo', 'deny', 'confirm', 'done', 'openJob', 'closeJob', 'closeAnyway', 'skip', 'told'];

/** @param text as the search spelt it */
export function read(text: string, expects: Expects): Reading {
  const { intents, unclaimed } = understand(text, expects);
  return {
    key: JSON.stringify([intents.map(meaning), unclaimed]),
    kind: kindOf(intents),
    repeats: repeats(intents),
    answers: answerOf(intents),
  };
}

function answerOf([first, ...rest]: readonly Intent[]): Reading['answers'] {
  if (first?.kind !== 'command' || rest.length > 0) return undefined;
  return first.name === 'confirm' ? 'yes' : first.name === 'deny' ? 'no' : undefined;
}

function repeats(intents: readonly Intent[]): boolean {
  const measured = intents.flatMap((intent) =>
    intent.kind === 'measure' ? [[intent.field, intent.side, intent.axle, intent.stage].join(' ')] : [],
  );
  return new Set(measured).size < measured.length;
}

/** A unit said and the same unit understood are one meaning; so are two names of one part in a question, and a sum in other words. */
function meaning(intent: Intent): unknown {
  const {
    span: _span,
    alternatives: _alternatives,
    unitSaid: _unitSaid,
    ...rest
  } = intent as Intent & { alternatives?: unknown; unitSaid?: unknown };
  if (rest.kind === 'question' && rest.sum) return { ...rest, of: undefined };
  return rest.kind === 'question' && rest.words ? { ...rest, words: gist(rest.words) } : rest;
}

function kindOf(intents: readonly Intent[]): Reading['kind'] {
  if (intents.some((intent) => intent.kind === 'measure' || (intent.kind === 'correct' && intent.field))) return 'measure';
  if (intents.some(({ kind }) => kind === 'quantity' || kind === 'correct')) return 'bare';
  return intents.some((intent) => intent.kind === 'strike' || (intent.kind === 'command' && grave.includes(intent.name)))
    ? 'grave'
    : 'command';
}
