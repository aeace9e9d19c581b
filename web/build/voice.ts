// The voice files of the page: model, runtime, word tokens, referee and phrase bank, under names that change with their content,
// each with its .br beside it. What is there already is kept.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants } from 'node:zlib';
import { voiceLicence } from '../../server/voice/flite.ts';
import { bankKey, renderBank } from './bank.ts';
import { refereeFile, refereeLicence } from './referee.ts';
import { moonshine, speechModel } from './speech-model.ts';

const squeeze = promisify(brotliCompress);
const { resolve } = createRequire(import.meta.url);
const runtime = dirname(resolve('onnxruntime-web/wasm'));

interface Asset {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Brotli quality. Weights do not get smaller above 5, only slower. */
  readonly quality: number;
}

const file = (path: string, name: string, quality: number): Asset => ({ name, bytes: readFileSync(path), quality });

function assets(): readonly Asset[] {
  const { encoder, decoder, words } = speechModel();
  return [
    { name: 'encoder.onnx', bytes: encoder, quality: 5 },
    { name: 'decoder.onnx', bytes: decoder, quality: 5 },
    file(join(runtime, 'ort-wasm-simd-threaded.wasm'), 'runtime.wasm', 9),
    file(join(runtime, 'ort-wasm-simd-threaded.mjs'), 'runtime.mjs', 9),
    { name: 'referee.bin', bytes: refereeFile(Object.keys(words.words)), quality: 9 },
    file(refereeLicence, 'referee-licence.txt', 9),
    file(join(moonshine, 'LICENSE'), 'model-licence.txt', 9),
    file(voiceLicence, 'voice-licence.txt', 9),
    { name: 'words.json', bytes: Buffer.from(JSON.stringify(words)), quality: 9 },
  ];
}

function hashed({ name, bytes }: Asset): string {
  const hash = createHash('sha256').update(bytes).digest('hex').slice(0, 10);
  return name.replace('.', `-${hash}.`);
}

/** Puts the voice files into `outDir`/voice and gives back their addresses ("/voice/encoder-0123456789.onnx"). */
export async function copyVoiceAssets(outDir: string): Promise<string[]> {
  const folder = join(outDir, 'voice');
  mkdirSync(folder, { recursive: true });
  const all = assets();
  // Rendering takes seconds, so the bank is named for what goes in, not for what comes out.
  const bank = `bank-${bankKey()}.bin`;
  const names = [...all.map(hashed), bank];
  for (const old of readdirSync(folder)) {
    if (!names.includes(basename(old, '.br'))) rmSync(join(folder, old));
  }
  await Promise.all(all.map((asset) => put(join(folder, hashed(asset)), asset)));
  if (!existsSync(join(folder, `${bank}.br`)))
    await put(join(folder, bank), { name: bank, bytes: await renderBank(), quality: 9 });
  return names.map((name) => `/voice/${name}`);
}

async function put(path: string, { bytes, quality }: Asset): Promise<void> {
  if (existsSync(`${path}.br`)) return;
  const params = {
    [constants.BROTLI_PARAM_QUALITY]: quality,
    [constants.BROTLI_PARAM_LGWIN]: 24,
    [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
  };
  writeFileSync(path, bytes);
  writeFileSync(`${path}.br`, await squeeze(bytes, { params }));
}

/** Addresses by plain name: `encoder.onnx` -> "/voice/encoder-0123456789.onnx". */
export function voiceNames(addresses: readonly string[]): Record<string, string> {
  return Object.fromEntries(addresses.map((address) => [basename(address).replace(/-[0-9a-f]{10}\./, '.'), address]));
}
