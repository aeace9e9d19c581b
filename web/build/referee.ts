// The referee's files as one: its runtime, its models of speech sounds, and how our words are said in those sounds.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import pronunciations from '../recogniser/pronunciations.json' with { type: 'json' };
import { joinParts } from '../shared/parts.ts';

const home = dirname(createRequire(import.meta.url).resolve('soundswallower'));
const folder = join(home, 'model/en-us');
const ours: Readonly<Record<string, readonly string[]>> = pronunciations.words;

/** Of the models of sounds. */
export const refereeLicence = join(folder, 'README.txt');

/** @param words all that can be heard */
export function refereeFile(words: readonly string[]): Uint8Array {
  const models = ['feat_params.json', 'noisedict.txt', 'mdef', 'transition_matrices', 'means', 'variances', 'sendump'];
  return joinParts([
    ['runtime.wasm', readFileSync(join(home, 'soundswallower.web.wasm'))],
    ['words.txt', Buffer.from(dictionary(words))],
    ...models.map((name) => [name, readFileSync(join(folder, name))] as const),
  ]);
}

/** Lines "word SOUNDS" and "word(2) OTHER SOUNDS". @throws TypeError for words nobody told how to say */
export function dictionary(words: readonly string[]): string {
  const known = knownWords();
  const sounds = (word: string): readonly string[] => ours[word] ?? known.get(word) ?? [];
  const unsaid = words.filter((word) => sounds(word).length === 0);
  if (unsaid.length > 0) throw new TypeError(`web/recogniser/pronunciations.json does not tell how to say: ${unsaid.join(', ')}`);
  const lines = words.flatMap((word) =>
    sounds(word).map((way, index) => `${word}${index === 0 ? '' : `(${index + 1})`} ${way}\n`),
  );
  return lines.join('');
}

function knownWords(): Map<string, string[]> {
  const known = new Map<string, string[]>();
  for (const line of readFileSync(join(folder, 'dict.txt'), 'utf8').split('\n')) {
    const [, word, way] = /^([^\s(]+)(?:\(\d+\))?\s+(\S.*)$/.exec(line.trim()) ?? [];
    if (word && way) known.set(word, [...(known.get(word) ?? []), way]);
  }
  return known;
}
