// Changes some fields of a protocol buffer and leaves every other byte as it is.

/** By field number: what becomes of a varint, or of the bytes of a message, text or block. The same thing back leaves it alone. */
export interface Changes {
  readonly numbers?: Readonly<Record<number, (value: number) => number>>;
  readonly bytes?: Readonly<Record<number, (value: Uint8Array) => Uint8Array>>;
}

interface Field {
  readonly number: number;
  readonly whole: Uint8Array;
  readonly value: number | Uint8Array | undefined;
}

const varintType = 0;
const bytesType = 2;
const fixedSizes: Readonly<Record<number, number>> = { 1: 8, 5: 4 };

/** @throws TypeError for what is no protocol buffer */
export function* fieldsOf(message: Uint8Array): Generator<Field> {
  for (let at = 0; at < message.length; ) {
    const tag = varint(message, at);
    const [number, type] = [Math.floor(tag.value / 8), tag.value % 8];
    const from = at;
    if (type === varintType || type === bytesType) {
      const { value, end } = varint(message, tag.end);
      at = type === varintType ? end : end + value;
      if (at > message.length) throw new TypeError('a protocol buffer ends within a field');
      yield { number, whole: message.subarray(from, at), value: type === varintType ? value : message.subarray(end, at) };
      continue;
    }
    const size = fixedSizes[type];
    if (size === undefined) throw new TypeError(`a protocol buffer has no fields of type ${type}`);
    at = tag.end + size;
    yield { number, whole: message.subarray(from, at), value: undefined };
  }
}

export function changed(message: Uint8Array, { numbers = {}, bytes = {} }: Changes): Uint8Array {
  const parts = [...fieldsOf(message)].flatMap(({ number, whole, value }) => {
    const to = typeof value === 'number' ? numbers[number]?.(value) : value && bytes[number]?.(value);
    if (to === undefined || to === value) return [whole];
    return typeof to === 'number'
      ? [written(number * 8 + varintType), written(to)]
      : [written(number * 8 + bytesType), written(to.length), to];
  });
  return new Uint8Array(Buffer.concat(parts));
}

/** Sizes and counts stay far below 2^53. */
function varint(bytes: Uint8Array, from: number): { readonly value: number; readonly end: number } {
  let value = 0;
  let scale = 1;
  for (let at = from; at < bytes.length; at += 1) {
    const byte = bytes[at] ?? 0;
    value += (byte % 128) * scale;
    if (byte < 128) return { value, end: at + 1 };
    scale *= 128;
  }
  throw new TypeError('a protocol buffer ends within a number');
}

function written(value: number): Uint8Array {
  const bytes: number[] = [];
  for (let left = value; ; left = Math.floor(left / 128)) {
    if (left < 128) return Uint8Array.from([...bytes, left]);
    bytes.push((left % 128) + 128);
  }
}
