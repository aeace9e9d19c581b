// What the engine is told about the language: what can be said now, what a text says, which words the model tends to miss.
import { fields } from '#data';
import { type Expects, type Intent, understand } from '#intents';
import { grammar, wordList } from '#intents/grammar';
import priors from '../priors.json' with { type: 'json' };
import type { Language, Reading } from './hear.ts';

/** How much of what the model expects beforehand is taken back. */
const share = 0.3;
const expected: Readonly<Record<string, readonly number[]>> = priors.words;

/** The model all but never expects these, and takes a number alone for the whole where it misses one. Fitted on clean and 20 dB speech. */
const missed: Readonly<Record<string, number>> = { hub: 4 };

function boost(word: string): readonly [number, number] {
  const [first = 0, ...others] = expected[word] ?? [];
  return [(missed[word] ?? 0) - share * first, -share * others.reduce((sum, part) => sum + part, 0)];
}

export const language: Language = {
  grammar,
  read,
  boost,
};

/** Every word that can be heard, whatever is waited for. */
export const vocabulary = (): readonly string[] => wordList({ fields: fields.map(({ id }) => id), yesNo: true });

/** Commands that lose or settle something. */
const grave: readonly string[] = ['undo', 'deny', 'confirm', 'closeJob', 'closeAnyway', 'skip', 'told'];

/** @param text as the search spelt it */
export function read(text: string, expects: Expects): Reading {
  const { intents, unclaimed } = understand(text, expects);
  return { key: JSON.stringify([intents.map(meaning), unclaimed]), kind: kindOf(intents), repeats: repeats(intents) };
}

function repeats(intents: readonly Intent[]): boolean {
  const measured = intents.flatMap((intent) =>
    intent.kind === 'measure' ? [[intent.field, intent.side, intent.axle, intent.stage].join(' ')] : [],
  );
  return new Set(measured).size < measured.length;
}

/** A unit said and the same unit understood are one meaning. */
function meaning(intent: Intent): unknown {
  const {
    span: _span,
    alternatives: _alternatives,
    unitSaid: _unitSaid,
    ...rest
  } = intent as Intent & { alternatives?: unknown; unitSaid?: unknown };
  return rest;
}

function kindOf(intents: readonly Intent[]): Reading['kind'] {
  if (intents.some((intent) => intent.kind === 'measure' || (intent.kind === 'correct' && intent.field))) return 'measure';
  if (intents.some(({ kind }) => kind === 'quantity' || kind === 'correct')) return 'bare';
  return intents.some((intent) => intent.kind === 'strike' || (intent.kind === 'command' && grave.includes(intent.name)))
    ? 'grave'
    : 'command';
}
