// Speech and shop noise for tests and benches: espeak-ng and flite speak, sox makes the noise, all at 16 kHz and the same every time.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const rate = 16_000;

const tools = ['espeak-ng', 'flite', 'sox'] as const;
/** What is missing for these helpers; empty when all is there. */
export const missingTools = tools.filter(
  (tool) => !['/usr/bin', '/usr/local/bin', '/bin'].some((folder) => existsSync(join(folder, tool))),
);

/** Numbers in [0, 1), the same for the same seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export interface TestVoice {
  readonly name: string;
  /** `vary` in [0, 1) changes rate and pitch. */
  say(text: string, vary?: number): Float32Array;
}

/** A letter that stands alone is spoken as a letter, and so are those of an abbreviation, which the voices take for a word ("sigh");
 * what stands in [[ ]] are sounds and not letters. */
const letters = (text: string): string =>
  text.replace(/\[\[.*?\]\]|\b(?:[b-z]|psi|cg|sc|ep|nlgi|gawr|gvwr|lr[b-h])\b/g, (part) =>
    part.startsWith('[[') ? part : [...part.toUpperCase()].join(' '),
  );

function espeak(name: string, variant: string): TestVoice {
  return {
    name,
    say: (text, vary = 0.5) =>
      recorded((wav) => {
        const manner = ['-s', String(130 + Math.round(vary * 50)), '-p', String(35 + Math.round(((vary * 7) % 1) * 30))];
        execFileSync('espeak-ng', ['-v', variant, ...manner, '-w', wav, letters(text)]);
      }),
  };
}

function flite(name: string, voice: string): TestVoice {
  return {
    name,
    say: (text, vary = 0.5) =>
      recorded((wav) => {
        const stretch = (0.9 + vary * 0.3).toFixed(2);
        execFileSync('flite', ['-voice', voice, '--setf', `duration_stretch=${stretch}`, '-t', letters(text), '-o', wav]);
      }),
  };
}

export const testVoices: readonly TestVoice[] = [
  espeak('espeak-m', 'en-us'),
  espeak('espeak-f', 'en-us+f3'),
  flite('slt', 'slt'),
  flite('rms', 'rms'),
  flite('awb', 'awb'),
  flite('kal', 'kal16'),
];

export function voiceNamed(name: string): TestVoice {
  const voice = testVoices.find((each) => each.name === name);
  if (!voice) throw new TypeError(`no voice is named ${name}`);
  return voice;
}

function recorded(write: (wav: string) => void): Float32Array {
  const folder = mkdtempSync(join(tmpdir(), 'axlehand-speech-'));
  try {
    const wav = join(folder, 'a.wav');
    write(wav);
    return sox([wav]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** What sox makes of these arguments, as 16 kHz mono samples. */
export function sox(args: readonly string[], effects: readonly string[] = []): Float32Array {
  const raw = execFileSync('sox', [...args, '-r', String(rate), '-c', '1', '-t', 'f32', '-', ...effects], {
    maxBuffer: 1 << 28,
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  return new Float32Array(raw.buffer.slice(raw.byteOffset, raw.byteOffset + raw.length));
}

/** A shop: pink noise, a compressor's hum, impacts that ring, and a radio talking in the corner. */
export function shopNoise(seconds: number, seed: number): Float32Array {
  const random = randomFrom(seed);
  const pink = sox(['-R', '-n'], ['synth', String(seconds), 'pinknoise', 'vol', '0.25']);
  const hum = sox(
    ['-R', '-n'],
    ['synth', String(seconds), 'sawtooth', '60', 'sawtooth', '119', 'sawtooth', '179', 'tremolo', '2', '40', 'vol', '0.05'],
  );
  const noise = pink.map((sample, index) => sample + (hum[index] ?? 0));
  for (let burst = 0; burst < seconds * 0.75; burst += 1) strike(noise, random);
  addRadio(noise, random);
  return noise;
}

function strike(noise: Float32Array, random: () => number): void {
  const at = Math.floor(random() * noise.length);
  const partials = [0, 1, 2].map(() => 600 + random() * 3800);
  const loud = 0.1 + random() * 0.5;
  const decay = 0.03 + random() * 0.12;
  for (let index = 0; index < rate * 0.5 && at + index < noise.length; index += 1) {
    const time = index / rate;
    const ring = partials.reduce((sum, hertz) => sum + Math.sin(2 * Math.PI * hertz * time), 0) / 3;
    const click = time < 0.006 ? random() * 2 - 1 : 0;
    noise[at + index] = (noise[at + index] ?? 0) + loud * (ring * Math.exp(-time / decay) + click);
  }
}

const radio = [
  'and that was the number one song this week, coming up after the break we have the weather for the valley',
  'traffic is moving slowly on the bridge this morning, expect delays of up to twenty minutes',
  'so I told him, you cannot just paint over the rust and call it a restoration',
];

function addRadio(noise: Float32Array, random: () => number): void {
  const voice = testVoices[Math.floor(random() * testVoices.length)];
  const talk = voice?.say(radio[Math.floor(random() * radio.length)] ?? '', random()) ?? new Float32Array(0);
  const from = Math.floor(random() * Math.max(1, noise.length - talk.length));
  talk.forEach((sample, index) => {
    if (from + index < noise.length) noise[from + index] = (noise[from + index] ?? 0) + 0.12 * sample;
  });
}

/** Without what lies below 100 Hz: hum that no ear counts as noise over speech. */
function highPass(samples: Float32Array): Float32Array {
  const keep = Math.exp((-2 * Math.PI * 100) / rate);
  let before = 0;
  let out = 0;
  return samples.map((sample) => {
    out = keep * (out + sample - before);
    before = sample;
    return out;
  });
}

const power = (samples: readonly number[]): number =>
  samples.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, samples.length);

/** Power of the frames within 25 dB of the loudest. */
function speechPower(samples: Float32Array): number {
  const frame = 320;
  const frames = Array.from({ length: Math.floor(samples.length / frame) }, (_, index) =>
    power([...samples.subarray(index * frame, (index + 1) * frame)]),
  );
  const loudest = Math.max(...frames, 1e-12);
  return power(frames.filter((value) => value > loudest / 316).map(Math.sqrt));
}

/** Speech in noise, `db` decibels above it; `at` in [0, 1) chooses the stretch of noise. Silence of 0.3 s goes before and after. */
export function inNoise(speech: Float32Array, noise: Float32Array, db: number, at: number): Float32Array {
  const pad = Math.round(rate * 0.3);
  const mixed = new Float32Array(speech.length + 2 * pad);
  const from = Math.floor(at * Math.max(1, noise.length - mixed.length));
  const stretch = noise.subarray(from, from + mixed.length);
  const gain = Number.isFinite(db)
    ? Math.sqrt(speechPower(highPass(speech)) / power([...highPass(stretch)]) / 10 ** (db / 10))
    : 0;
  mixed.set(speech, pad);
  return mixed.map((sample, index) => sample + gain * (stretch[index] ?? 0));
}
