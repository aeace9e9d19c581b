// A tape for the fake microphone: sentences by espeak-ng with silence between, and when each begins and ends.
import { execFileSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';

export const hasVoice = ['/usr/bin/espeak-ng', '/usr/local/bin/espeak-ng'].some(existsSync);
if (!hasVoice && process.env.CI === 'true')
  throw new Error('No espeak-ng: voice tests cannot run. Get it with: apt-get install espeak-ng');
if (!hasVoice) console.warn('\n*** No espeak-ng: voice tests are skipped. Get it with: apt-get install espeak-ng ***\n');

export interface Spoken {
  readonly startMs: number;
  readonly endMs: number;
}

const headerBytes = 44;

const leadMs = 900;

/** Writes the tape and tells where each sentence lies on it. `gapMs` of silence goes between them and after the last. */
export function recordTape(path: string, sentences: readonly string[], gapMs: number): readonly Spoken[] {
  const clips = sentences.map((text) => execFileSync('espeak-ng', ['-v', 'en-us', '-s', '150', '--stdout', text]));
  const rate = clips[0]?.readUInt32LE(24) ?? 22_050;
  const quiet = (ms: number): Buffer => hiss(Math.round((rate * ms) / 1000));
  const marks: Spoken[] = [];
  const parts: Buffer[] = [];
  let samples = 0;
  for (const [index, clip] of clips.entries()) {
    const silence = quiet(index === 0 ? leadMs : gapMs);
    const sound = clip.subarray(headerBytes);
    parts.push(silence, sound);
    samples += silence.length / 2;
    const startMs = (samples * 1000) / rate;
    samples += sound.length / 2;
    marks.push({ startMs, endMs: (samples * 1000) / rate });
  }
  writeFileSync(path, wav(Buffer.concat([...parts, quiet(gapMs)]), rate));
  return marks;
}

/** A room is never quite still: about -66 dB of noise, the same at every run. */
function hiss(samples: number): Buffer {
  const sound = Buffer.alloc(samples * 2);
  let seed = 1;
  for (let index = 0; index < samples; index += 1) {
    seed = (seed * 48_271) % 2_147_483_647;
    sound.writeInt16LE((seed % 61) - 30, index * 2);
  }
  return sound;
}

function wav(sound: Buffer, rate: number): Buffer {
  const head = Buffer.alloc(headerBytes);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + sound.length, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(rate, 24);
  head.writeUInt32LE(rate * 2, 28);
  head.writeUInt16LE(2, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36);
  head.writeUInt32LE(sound.length, 40);
  return Buffer.concat([head, sound]);
}

/** Switches that make a tape the microphone. */
export function microphone(tape: string): string[] {
  return [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-audio-capture=${tape}%noloop`,
  ];
}
