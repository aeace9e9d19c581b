// Loudness, in decibels below full scale.

export const decibels = (power: number): number => 10 * Math.log10(power + 1e-12);

export function meanPower(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return samples.length === 0 ? 0 : sum / samples.length;
}

export function peak(samples: Float32Array): number {
  let top = 0;
  for (const sample of samples) top = Math.max(top, Math.abs(sample));
  return top;
}

/** -60 dB..0 dB -> 0..1, for the meter. */
export const meter = (samples: Float32Array): number => Math.min(1, Math.max(0, 1 + decibels(meanPower(samples)) / 60));

/** Loudest sample at `level`: the model was measured with sound brought to one level. */
export function normalised(samples: Float32Array, level = 0.5): Float32Array {
  const top = peak(samples);
  return top === 0 ? samples : samples.map((sample) => (sample * level) / top);
}

/** With silence before and after. */
export function padded(samples: Float32Array, seconds: number, rate = 16_000): Float32Array {
  const pad = Math.round(seconds * rate);
  const whole = new Float32Array(samples.length + 2 * pad);
  whole.set(samples, pad);
  return whole;
}

const blockSeconds = 0.02;

const blockLevels = (samples: Float32Array, rate: number): number[] => {
  const size = Math.round(rate * blockSeconds);
  return Array.from({ length: Math.floor(samples.length / size) }, (_, block) =>
    decibels(meanPower(samples.subarray(block * size, (block + 1) * size))),
  );
};

/** By how many decibels the loud tenth of `samples` stands above the quiet tenth: speech above what goes on in its pauses. */
export function aboveNoise(samples: Float32Array, rate = 16_000): number {
  const sorted = blockLevels(samples, rate).sort((a, b) => a - b);
  const at = (part: number): number => sorted[Math.floor(sorted.length * part)] ?? 0;
  return at(0.9) - at(0.1);
}

/** Seconds from the first block of `samples` that stands well above the quiet ones to the last; all of them where none does. */
export function spokenSeconds(samples: Float32Array, rate = 16_000): number {
  const levels = blockLevels(samples, rate);
  const sorted = levels.toSorted((a, b) => a - b);
  const [quiet = 0, loud = 0] = [sorted[Math.floor(sorted.length / 10)], sorted.at(-1)];
  const threshold = Math.max(quiet + 6, loud - 30);
  const first = levels.findIndex((level) => level > threshold);
  if (first < 0) return samples.length / rate;
  return (levels.findLastIndex((level) => level > threshold) - first + 1) * blockSeconds;
}
