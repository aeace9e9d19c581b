// IMA ADPCM, four bits a sample: a quarter of the size, and a decoder of ten lines.

// biome-ignore format: a table
const steps = [
  7, 8, 9, 10, 11, 12, 13, 14, 16, 17, 19, 21, 23, 25, 28, 31, 34, 37, 41, 45, 50, 55, 60, 66, 73, 80, 88, 97, 107, 118, 130, 143,
  157, 173, 190, 209, 230, 253, 279, 307, 337, 371, 408, 449, 494, 544, 598, 658, 724, 796, 876, 963, 1060, 1166, 1282, 1411, 1552,
  1707, 1878, 2066, 2272, 2499, 2749, 3024, 3327, 3660, 4026, 4428, 4871, 5358, 5894, 6484, 7132, 7845, 8630, 9493, 10442, 11487,
  12635, 13899, 15289, 16818, 18500, 20350, 22385, 24623, 27086, 29794, 32767,
];
const turns = [-1, -1, -1, -1, 2, 4, 6, 8];
const firstStep = 16;

interface Predictor {
  value: number;
  index: number;
}

function follow(state: Predictor, nibble: number): number {
  const step = steps[state.index] ?? 7;
  const size = (nibble & 4 ? step : 0) + (nibble & 2 ? step >> 1 : 0) + (nibble & 1 ? step >> 2 : 0) + (step >> 3);
  state.value = Math.max(-32768, Math.min(32767, state.value + (nibble & 8 ? -size : size)));
  state.index = Math.max(0, Math.min(88, state.index + (turns[nibble & 7] ?? 0)));
  return state.value;
}

function nearest(state: Predictor, sample: number): number {
  const step = steps[state.index] ?? 7;
  const difference = sample - state.value;
  const size = Math.min(7, Math.floor((Math.abs(difference) * 4) / step));
  return difference < 0 ? size | 8 : size;
}

export function encode(samples: Int16Array): Uint8Array {
  const state = { value: 0, index: firstStep };
  const out = new Uint8Array(Math.ceil(samples.length / 2));
  samples.forEach((sample, at) => {
    const nibble = nearest(state, sample);
    follow(state, nibble);
    out[at >> 1] = (out[at >> 1] ?? 0) | (nibble << (4 * (at & 1)));
  });
  return out;
}

/** Samples -1..1. */
export function decode(bytes: Uint8Array): Float32Array {
  const state = { value: 0, index: firstStep };
  return Float32Array.from(
    { length: bytes.length * 2 },
    (_, at) => follow(state, ((bytes[at >> 1] ?? 0) >> (4 * (at & 1))) & 15) / 32768,
  );
}
