// The speech model with fewer tokens: the rows of those that stay are as they were, and nothing else has changed.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { keptTokens, withTokens } from '../../../web/build/decoder.ts';
import { changed, fieldsOf } from '../../../web/build/protobuf.ts';

const path = '../../../node_modules/@moonshine-ai/moonshine-js/dist/model/tiny/quantized/decoder_model_merged.onnx';
const whole = new Uint8Array(readFileSync(new URL(path, import.meta.url)));
const { kept, renumbered } = keptTokens([5, 20_000, 9000, 20_000]);

const isBytes = (value: unknown): value is Uint8Array => value instanceof Uint8Array;
const inside = (bytes: Uint8Array, field: number): Uint8Array[] =>
  [...fieldsOf(bytes)].flatMap(({ number, value }) => (number === field && isBytes(value) ? [value] : []));

/** onnx.proto3: ModelProto.graph 7, GraphProto.initializer 5, TensorProto.name 8, .dims 1, .raw_data 9. */
function tableOf(model: Uint8Array): { dims: unknown[]; rows: Uint8Array } {
  const [table] = inside(model, 7)
    .flatMap((graph) => inside(graph, 5))
    .filter((tensor) =>
      inside(tensor, 8).some((name) => new TextDecoder().decode(name).includes('embed_tokens.weight_merged_0_q')),
    );
  if (!table) throw new Error('no table of tokens');
  const dims = [...fieldsOf(table)].filter(({ number }) => number === 1).map(({ value }) => value);
  return { dims, rows: inside(table, 9)[0] ?? new Uint8Array() };
}

describe('the tokens kept', () => {
  it('are the common ones under their own numbers and then ours', () => {
    expect(kept.slice(-3)).toEqual([8191, 9000, 20_000]);
    expect([5, 8191, 9000, 20_000].map(renumbered)).toEqual([5, 8191, 8192, 8193]);
    expect(() => renumbered(9001)).toThrow('9001');
  });
});

describe('the decoder with these tokens', () => {
  const smaller = withTokens(whole, kept);

  it('has their rows, and is smaller by the others', () => {
    const [before, after] = [tableOf(whole), tableOf(smaller)];
    expect(after.dims).toEqual([8194, 288]);
    expect(whole.length - smaller.length - (32_768 - 8194) * 288).toBeLessThan(64);
    for (const token of [0, 5, 8191, 9000, 20_000]) {
      const row = (rows: Uint8Array, at: number) => [...rows.subarray(at * 288, (at + 1) * 288)];
      expect(row(after.rows, renumbered(token))).toEqual(row(before.rows, token));
    }
  });

  it('of all its tokens is the decoder itself', () => {
    const all = Array.from({ length: 32_768 }, (_, token) => token);
    expect(Buffer.compare(withTokens(whole, all), whole)).toBe(0);
  });

  it('of another model is refused', () => {
    expect(() => withTokens(Uint8Array.of(8, 1), kept)).toThrow(/0 tables/);
  });
});

// The bytes of the first two are the examples of the encoding's published description: field 1 is 150, field 2 is "testing".
describe('a protocol buffer', () => {
  const number = Uint8Array.of(0x08, 0x96, 0x01);
  const text = Uint8Array.of(0x12, 0x07, ...new TextEncoder().encode('testing'));
  const both = Uint8Array.of(...number, ...text);

  it('is read field by field', () => {
    expect(
      [...fieldsOf(both)].map(({ number: field, value }) => [field, isBytes(value) ? new TextDecoder().decode(value) : value]),
    ).toEqual([
      [1, 150],
      [2, 'testing'],
    ]);
  });

  it('keeps what is not changed, and has the new length of what is', () => {
    const to = changed(both, { numbers: { 1: (value) => value * 100 }, bytes: { 2: (value) => value.subarray(0, 4) } });
    expect([...to]).toEqual([0x08, 0x98, 0x75, 0x12, 0x04, ...new TextEncoder().encode('test')]);
    expect([...changed(both, {})]).toEqual([...both]);
  });

  it.each([
    [Uint8Array.of(0x08, 0x96), /within a number/],
    [Uint8Array.of(0x12, 0x07, 0x74), /within a field/],
    [Uint8Array.of(0x0b), /type 3/],
  ])('that is broken is refused', (broken, why) => {
    expect(() => [...fieldsOf(broken)]).toThrow(why);
  });
});
