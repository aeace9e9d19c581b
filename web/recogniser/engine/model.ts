// The neural model as two calls: sound -> frames, and one decoder step for several hypotheses at once.
// Tensor names and shapes are the ONNX export's own; the encoder's keys and values come back from the first step only.
import type * as Ort from 'onnxruntime-web/wasm';
import { letGo } from '../../shared/bytes.ts';

const layers = 6;
const heads = 8;
const headSize = 36;
const startToken = 1;

export type Runtime = typeof Ort;
type Feeds = Record<string, Ort.Tensor>;

/** Decoder memory of `size` hypotheses after some tokens. */
export interface Memory {
  readonly size: number;
  readonly frames: Ort.Tensor;
  readonly crossed: Feeds;
  readonly past: Feeds;
}

export interface Stepped {
  readonly memory: Memory;
  /** What may come next, one row a hypothesis. */
  readonly rows: readonly Row[];
  /** Gives back what this step took; of the first step also what all later ones look at. */
  free(): void;
}

/** The log-probability of a token. */
export type Row = (token: number) => number;

export interface Model {
  /** `samples`: mono, 16 kHz. */
  encode(samples: Float32Array): Promise<Ort.Tensor>;
  /** The first step, one hypothesis. */
  begin(frames: Ort.Tensor): Promise<Stepped>;
  /** Appends `tokens[i]` to hypothesis `parents[i]` of `memory`. */
  step(memory: Memory, parents: readonly number[], tokens: readonly number[]): Promise<Stepped>;
  free(): Promise<void>;
}

type Bytes = Uint8Array | Promise<Uint8Array>;

/** The encoder is made while the decoder may still be on its way. */
export async function loadModel(ort: Runtime, encoderBytes: Bytes, decoderBytes: Bytes): Promise<Model> {
  const encoder = await ort.InferenceSession.create(await encoderBytes);
  const decoder = await ort.InferenceSession.create(await decoderBytes);
  const flag = (on: boolean) => new ort.Tensor('bool', [on], [1]);
  const nothing = () => new ort.Tensor('float32', new Float32Array(0), [0, heads, 1, headSize]);

  async function run(memory: Memory, tokens: readonly number[], cached: boolean): Promise<Stepped> {
    const ids = new ort.Tensor('int64', BigInt64Array.from(tokens, BigInt), [tokens.length, 1]);
    const feeds = {
      input_ids: ids,
      encoder_hidden_states: memory.frames,
      use_cache_branch: flag(cached),
      ...memory.past,
      ...memory.crossed,
    };
    const out = await decoder.run(feeds, cached ? ofLater : ofFirst);
    const past = present(out, 'decoder');
    const crossed = cached ? memory.crossed : present(out, 'encoder');
    return {
      memory: { size: tokens.length, frames: memory.frames, crossed, past },
      rows: rowsOf(out.logits, tokens.length),
      free: () => Object.values(out).forEach(drop),
    };
  }

  return {
    async encode(samples) {
      const out = await encoder.run({ input_values: new ort.Tensor('float32', samples, [1, samples.length]) });
      const frames = out.last_hidden_state;
      if (!frames) throw new TypeError('encoder gave no last_hidden_state');
      return frames;
    },
    begin: (frames) => {
      const empty = (kind: string) => Object.fromEntries(keys(kind).map((key) => [key, nothing()]));
      return run({ size: 1, frames, past: empty('decoder'), crossed: empty('encoder') }, [startToken], false);
    },
    async step(memory, parents, tokens) {
      const past = Object.fromEntries(Object.entries(memory.past).map(([key, tensor]) => [key, gather(ort, tensor, parents)]));
      const stepped = await run({ ...memory, past }, tokens, true);
      Object.values(past).forEach(drop);
      return stepped;
    },
    async free() {
      await encoder.release();
      await decoder.release();
    },
  };
}

const drop = (tensor: Ort.OnnxValue): void => letGo((tensor as Ort.Tensor).data as Float32Array);

function keys(kind: string): string[] {
  return Array.from({ length: layers }, (_, layer) =>
    ['key', 'value'].map((part) => `past_key_values.${layer}.${kind}.${part}`),
  ).flat();
}

const presentName = (key: string): string => key.replace('past_key_values', 'present');
/** What is fetched: the encoder's part does not change after the first step, and is large. */
const ofLater = ['logits', ...keys('decoder').map(presentName)];
const ofFirst = [...ofLater, ...keys('encoder').map(presentName)];

function present(out: Ort.InferenceSession.OnnxValueMapType, kind: string): Feeds {
  return Object.fromEntries(
    keys(kind).map((key) => {
      const tensor = out[presentName(key)] as Ort.Tensor | undefined;
      if (!tensor) throw new TypeError(`decoder gave no ${key}`);
      return [key, tensor];
    }),
  );
}

/** Picks hypotheses out of a [size, heads, time, headSize] tensor. */
function gather(ort: Runtime, tensor: Ort.Tensor, parents: readonly number[]): Ort.Tensor {
  const [, ...rest] = tensor.dims;
  const length = rest.reduce((product, size) => product * size, 1);
  const data = tensor.data as Float32Array;
  const picked = new Float32Array(length * parents.length);
  parents.forEach((parent, index) => {
    picked.set(data.subarray(parent * length, (parent + 1) * length), index * length);
  });
  return new ort.Tensor('float32', picked, [parents.length, ...rest]);
}

function rowsOf(logits: Ort.Tensor | undefined, size: number): Row[] {
  if (!logits) throw new TypeError('decoder gave no logits');
  const data = logits.data as Float32Array;
  const width = data.length / size;
  return Array.from({ length: size }, (_, row) => logSoftmax(data.subarray(row * width, (row + 1) * width)));
}

/** What lies so far below the best adds nothing that can be seen in the sum. */
const faint = 20;

function logSoftmax(row: Float32Array): Row {
  let top = Number.NEGATIVE_INFINITY;
  for (const value of row) if (value > top) top = value;
  let sum = 0;
  for (const value of row) if (value > top - faint) sum += Math.exp(value - top);
  const shift = top + Math.log(sum);
  return (token) => (row[token] ?? Number.NEGATIVE_INFINITY) - shift;
}
