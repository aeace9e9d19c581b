// The recogniser's engine in Node: the same files and code as in the page's worker.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import * as ort from 'onnxruntime-web/wasm';
import { spellWords } from '../../web/build/words.ts';
import { vocabulary } from '../../web/recogniser/engine/language.ts';
import type { Spellings } from '../../web/recogniser/engine/lexicon.ts';
import { loadModel, type Model } from '../../web/recogniser/engine/model.ts';
import { spellingsFrom } from '../../web/recogniser/engine/spellings.ts';

const root = new URL('../..', import.meta.url).pathname;
const folder = join(root, 'node_modules/@moonshine-ai/moonshine-js/dist/model/tiny/quantized');

export async function nodeModel(): Promise<Model> {
  ort.env.wasm.numThreads = 1;
  ort.env.wasm.wasmPaths = `${dirname(createRequire(import.meta.url).resolve('onnxruntime-web/wasm'))}/`;
  return loadModel(
    ort,
    readFileSync(join(folder, 'encoder_model.onnx')),
    readFileSync(join(folder, 'decoder_model_merged.onnx')),
  );
}

export const nodeSpellings = (): Spellings => spellingsFrom(spellWords(vocabulary()));
