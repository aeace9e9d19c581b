// The recogniser's engine in Node: the same files and code as in the page's worker.
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import * as ort from 'onnxruntime-web/wasm';
import { speechModel } from '../../web/build/speech-model.ts';
import type { Spellings } from '../../web/recogniser/engine/lexicon.ts';
import { loadModel, type Model } from '../../web/recogniser/engine/model.ts';
import { spellingsFrom } from '../../web/recogniser/engine/spellings.ts';

export async function nodeHearing(): Promise<{ readonly model: Model; readonly spellings: Spellings }> {
  ort.env.wasm.numThreads = 1;
  ort.env.wasm.wasmPaths = `${dirname(createRequire(import.meta.url).resolve('onnxruntime-web/wasm'))}/`;
  const { encoder, decoder, words } = speechModel();
  return { model: await loadModel(ort, encoder, decoder), spellings: spellingsFrom(words) };
}
