// Any sample rate to 16 kHz, block by block: a windowed sinc, its taps worked out once for each phase.
const target = 16_000;
const crossings = 12;

export interface Resampler {
  /** The samples that can be given out now. */
  push(block: Float32Array): Float32Array;
  /** What is left, with silence after it. */
  flush(): Float32Array;
}

/** @throws TypeError for a rate that is not 8..192 kHz */
export function resampler(rate: number): Resampler {
  if (!(rate >= 8000 && rate <= 192_000)) throw new TypeError(`resampler() expected a rate of 8000..192000 Hz, got ${rate}`);
  const from = Math.round(rate);
  const divisor = gcd(from, target);
  const up = target / divisor;
  const down = from / divisor;
  const half = Math.ceil(crossings * Math.max(1, from / target));
  const taps = phases(up, half, Math.min(1, target / from));
  // `kept[0]` is sample number `first`; output n sits at input position n * down / up.
  let kept = new Float32Array(half);
  let first = -half;
  let output = 0;

  function drain(): Float32Array {
    const end = first + kept.length;
    const count = Math.max(0, Math.floor(((end - 1 - half) * up) / down) - output + 1);
    const out = new Float32Array(count);
    for (let index = 0; index < count; index += 1, output += 1) {
      const phase = (output * down) % up;
      const centre = (output * down - phase) / up;
      out[index] = dot(taps[phase] ?? taps[0] ?? new Float32Array(0), kept, centre - half + 1 - first);
    }
    const needed = Math.floor((output * down) / up) - half + 1;
    const drop = Math.min(kept.length, Math.max(0, needed - first));
    kept = kept.slice(drop);
    first += drop;
    return out;
  }

  const push = (block: Float32Array): Float32Array => {
    const joined = new Float32Array(kept.length + block.length);
    joined.set(kept);
    joined.set(block, kept.length);
    kept = joined;
    return drain();
  };
  return { push, flush: () => push(new Float32Array(half)) };
}

function dot(taps: Float32Array, samples: Float32Array, from: number): number {
  let sum = 0;
  for (let tap = 0; tap < taps.length; tap += 1) sum += (taps[tap] ?? 0) * (samples[from + tap] ?? 0);
  return sum;
}

/** Taps of phase p lie at input positions centre - half + 1 ... centre + half. */
function phases(up: number, half: number, cutoff: number): Float32Array[] {
  return Array.from({ length: up }, (_, phase) => {
    const taps = Float32Array.from({ length: 2 * half }, (_, tap) => {
      const distance = tap - half + 1 - phase / up;
      return cutoff * sinc(distance * cutoff) * window(distance / half);
    });
    const sum = taps.reduce((total, tap) => total + tap, 0);
    return taps.map((tap) => tap / sum);
  });
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
const window = (x: number): number => (Math.abs(x) >= 1 ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * x));
const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
