// The speech model as the page gets it: the package's encoder, its decoder cut down to the tokens of use, and how our words are
// spelt in those.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { vocabulary } from '../recogniser/engine/language.ts';
import type { WordTable } from '../recogniser/engine/spellings.ts';
import { keptTokens, withTokens } from './decoder.ts';
import { renumberedWords, spellWords, tokensOf } from './words.ts';

export const moonshine = new URL('../../node_modules/@moonshine-ai/moonshine-js', import.meta.url).pathname;
const folder = join(moonshine, 'dist/model/tiny/quantized');

export interface SpeechModel {
  readonly encoder: Uint8Array;
  readonly decoder: Uint8Array;
  readonly words: WordTable;
}

export function speechModel(): SpeechModel {
  const words = spellWords(vocabulary());
  const { kept, renumbered } = keptTokens(tokensOf(words));
  return {
    encoder: readFileSync(join(folder, 'encoder_model.onnx')),
    decoder: withTokens(readFileSync(join(folder, 'decoder_model_merged.onnx')), kept),
    words: renumberedWords(words, renumbered),
  };
}
