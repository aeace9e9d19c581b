// The speech model's decoder with fewer tokens. At each step it weighs every token it knows, and unpacks their table anew to do
// so: most of its time and half of its size go to tokens that are never said in a shop.
// The file is a protocol buffer; the field numbers below are those of onnx.proto3.
import { changed, fieldsOf } from './protobuf.ts';

export interface KeptTokens {
  /** Old numbers in the order of the new ones. */
  readonly kept: readonly number[];
  /** @throws TypeError for a token that was dropped */
  renumbered(token: number): number;
}

/** Tokens are numbered by how common they are. These share out what is not for us; without them all talk would look like ours. */
const common = 8192;

/** The commonest tokens under their own numbers, then the others of our words. */
export function keptTokens(ours: Iterable<number>): KeptTokens {
  const rare = [...new Set(ours)].filter((token) => token >= common).sort((a, b) => a - b);
  const numbers = new Map(rare.map((token, index) => [token, common + index]));
  return {
    kept: [...Array.from({ length: common }, (_, token) => token), ...rare],
    renumbered(token) {
      const number = token < common ? token : numbers.get(token);
      if (number === undefined) throw new TypeError(`token ${token} was not kept`);
      return number;
    },
  };
}

const tableName = 'model.decoder.embed_tokens.weight_merged_0_quantized';
const knownTokens = 32_768;
const model = { graph: 7 };
const graph = { node: 1, initializer: 5, output: 12, valueInfo: 13 };
const node = { attribute: 5 };
const attribute = { graph: 6 };
const tensor = { dims: 1, name: 8, rawData: 9 };
const value = { type: 2 };
const type = { tensor: 1 };
const tensorType = { shape: 2 };
const shape = { dim: 1 };
const dim = { size: 1 };

/** @throws TypeError when the model has no such table of tokens */
export function withTokens(decoder: Uint8Array, kept: readonly number[]): Uint8Array {
  let tables = 0;
  const resized = (size: number): number => (size === knownTokens ? kept.length : size);
  const within = (field: number, change: (bytes: Uint8Array) => Uint8Array) => (bytes: Uint8Array) =>
    changed(bytes, { bytes: { [field]: change } });
  const size = (bytes: Uint8Array): Uint8Array => changed(bytes, { numbers: { [dim.size]: resized } });
  const info = within(value.type, within(type.tensor, within(tensorType.shape, within(shape.dim, size))));
  const table = (bytes: Uint8Array): Uint8Array => {
    if (nameOf(bytes) !== tableName) return bytes;
    tables += 1;
    return changed(bytes, { numbers: { [tensor.dims]: resized }, bytes: { [tensor.rawData]: (rows) => picked(rows, kept) } });
  };
  const branches = (bytes: Uint8Array): Uint8Array =>
    changed(bytes, {
      bytes: { [graph.initializer]: table, [graph.output]: info, [graph.valueInfo]: info, [graph.node]: nested },
    });
  const nested = within(node.attribute, within(attribute.graph, branches));
  const smaller = changed(decoder, { bytes: { [model.graph]: branches } });
  if (tables !== 1) throw new TypeError(`the model has ${tables} tables named ${tableName}`);
  return smaller;
}

function picked(rows: Uint8Array, kept: readonly number[]): Uint8Array {
  const width = rows.length / knownTokens;
  const some = new Uint8Array(kept.length * width);
  kept.forEach((token, index) => {
    some.set(rows.subarray(token * width, (token + 1) * width), index * width);
  });
  return some;
}

function nameOf(bytes: Uint8Array): string {
  const name = [...fieldsOf(bytes)].find(({ number }) => number === tensor.name);
  return name?.value instanceof Uint8Array ? new TextDecoder().decode(name.value) : '';
}
