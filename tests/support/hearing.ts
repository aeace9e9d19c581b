// The recogniser's engine in Node: the same files and code as in the page's worker.
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import * as ort from 'onnxruntime-web/wasm';
import { refereeFile } from '../../web/build/referee.ts';
import { speechModel } from '../../web/build/speech-model.ts';
import type { Spellings } from '../../web/recogniser/engine/lexicon.ts';
import { loadModel, type Model } from '../../web/recogniser/engine/model.ts';
import { loadReferee, type Referee } from '../../web/recogniser/engine/referee.ts';
import { spellingsFrom } from '../../web/recogniser/engine/spellings.ts';

interface Hearing {
  readonly model: Model;
  readonly spellings: Spellings;
  readonly referee: Referee;
}

export async function nodeHearing(): Promise<Hearing> {
  ort.env.wasm.numThreads = 1;
  ort.env.wasm.wasmPaths = `${dirname(createRequire(import.meta.url).resolve('onnxruntime-web/wasm'))}/`;
  const { encoder, decoder, words } = speechModel();
  const model = await loadModel(ort, encoder, decoder);
  return { model, spellings: spellingsFrom(words), referee: await loadReferee(refereeFile(Object.keys(words.words))) };
}
