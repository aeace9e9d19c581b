// Several named parts in one file: four bytes length of the index, the index as JSON [[name, bytes]...], then the parts in order.
import { joined } from './bytes.ts';

export type Part = readonly [name: string, bytes: Uint8Array];

export function joinParts(parts: readonly Part[]): Uint8Array {
  const index = new TextEncoder().encode(JSON.stringify(parts.map(([name, { length }]) => [name, length])));
  const head = new Uint8Array(4);
  new DataView(head.buffer).setUint32(0, index.length, true);
  return joined([head, index, ...parts.map(([, bytes]) => bytes)]);
}

/** The parts by name, as views of the file. */
export function openParts(file: Uint8Array): Map<string, Uint8Array> {
  const { buffer, byteOffset } = file;
  const length = new DataView(buffer, byteOffset).getUint32(0, true);
  const index = JSON.parse(new TextDecoder().decode(file.subarray(4, 4 + length))) as [string, number][];
  let at = 4 + length;
  return new Map(
    index.map(([name, size]) => {
      at += size;
      return [name, file.subarray(at - size, at)];
    }),
  );
}
