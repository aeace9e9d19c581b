// The recogniser off the page's thread: takes sound as it comes, decodes at each pause, answers when the bar is let go.
import * as ort from 'onnxruntime-web/wasm';
import type { Expects } from '#intents';
import { letGo } from '../shared/bytes.ts';
import { type Engine, engine } from './engine/hear.ts';
import { language } from './engine/language.ts';
import { loadModel } from './engine/model.ts';
import { loadReferee } from './engine/referee.ts';
import { spellingsFrom, type WordTable } from './engine/spellings.ts';
import { fault } from './faults.ts';
import { fetchChecked } from './fetch-files.ts';
import { breath, type Listening, listen } from './listen.ts';
import type { FromWorker, ToWorker, VoiceFiles } from './messages.ts';

declare const self: DedicatedWorkerGlobalScope;

/** All voice files, unpacked. */
const allBytes = 39_600_000;

const warmSteps = 3;

let ready: Engine | undefined;
let current: Listening | undefined;

const tell = (message: FromWorker): void => self.postMessage(message);

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  switch (data.kind) {
    case 'load':
      void start(data.files).catch((cause: unknown) =>
        tell({ kind: 'broken', message: cause instanceof Error ? cause.message : String(cause) }),
      );
      return;
    case 'begin':
      current?.cancel();
      current = begin(data.press, data.rate, data.expects);
      return;
    case 'block':
      current?.block(data.samples);
      return;
    default:
      current?.[data.kind]();
  }
};

function begin(press: number, rate: number, expects: Expects): Listening | undefined {
  const answer = (hearing: Parameters<Parameters<typeof listen>[3]>[0]): void => tell({ kind: 'heard', press, hearing });
  if (ready) return listen(ready, rate, expects, answer);
  answer(fault('notReady'));
  return undefined;
}

const absolute = (path: string): string => new URL(path, self.location.href).href;

async function start(files: VoiceFiles): Promise<void> {
  ready = await load(files);
  tell({ kind: 'ready' });
  await warm(ready);
}

async function load(files: VoiceFiles): Promise<Engine> {
  let got = 0;
  const fetched = (url: string) =>
    fetchChecked(url, (bytes) => {
      got += bytes;
      tell({ kind: 'progress', part: Math.min(0.95, (got / allBytes) * 0.95) });
    });
  const [wasm, encoder, decoder] = [fetched(files.wasm), fetched(files.encoder), fetched(files.decoder)];
  const [words, referee] = [fetched(files.words), fetched(files.referee)];
  const whole = Promise.all([wasm, encoder, decoder, words, referee]);
  whole.catch(() => undefined);
  // The runtime is fetched for the sake of its being whole; from its address the browser can keep what it compiled.
  await wasm;
  ort.env.wasm.numThreads = 1;
  ort.env.wasm.wasmPaths = { mjs: absolute(files.runtime), wasm: absolute(files.wasm) };
  const model = await loadModel(ort, encoder, decoder);
  const table = JSON.parse(new TextDecoder().decode(await words)) as WordTable;
  const made = engine(model, spellingsFrom(table), language, await loadReferee(await referee));
  (await whole).forEach(letGo);
  return made;
}

/** The first run is slow: let a second in which nobody speaks have it. A few steps of it warm all that there is to warm; a press ends
 * it. Half of it is loud, so that it counts as clear and is heard at one speed only. */
async function warm(made: Engine): Promise<void> {
  let steps = 0;
  await made.hear(new Float32Array(16_000).fill(1, 8000), { fields: [], yesNo: false }, async () => {
    await breath();
    steps += 1;
    return steps < warmSteps && current === undefined;
  });
}
