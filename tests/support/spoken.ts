// A tape for the fake microphone: sentences by espeak-ng with silence between, and when each begins and ends.
import { execFileSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

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

/** A sentence, or so much of a loud shop without any. */
export type Sound = string | { readonly noiseMs: number };

/** Writes the tape and tells where each sound lies on it. `gapMs` of silence goes between them and after the last. */
export function recordTape(path: string, sounds: readonly Sound[], gapMs: number): readonly Spoken[] {
  const rate = 22_050;
  const quiet = (ms: number): Buffer => hiss(Math.round((rate * ms) / 1000), 30);
  const clips = sounds.map((sound) =>
    typeof sound === 'string' ? say(sound) : hiss(Math.round((rate * sound.noiseMs) / 1000), 9000),
  );
  const marks: Spoken[] = [];
  const parts: Buffer[] = [];
  let samples = 0;
  for (const [index, clip] of clips.entries()) {
    const silence = quiet(index === 0 ? leadMs : gapMs);
    parts.push(silence, clip);
    samples += silence.length / 2;
    const startMs = (samples * 1000) / rate;
    samples += clip.length / 2;
    marks.push({ startMs, endMs: (samples * 1000) / rate });
  }
  writeFileSync(path, wav(Buffer.concat([...parts, quiet(gapMs)]), rate));
  return marks;
}

/** espeak-ng speaks at 22,050 Hz. */
const say = (text: string): Buffer =>
  execFileSync('espeak-ng', ['-v', 'en-us', '-s', '150', '--stdout', text]).subarray(headerBytes);

/** A room is never quite still: noise up to `loud` of 32,767, the same at every run. At 30 it is about -66 dB. */
function hiss(samples: number, loud: number): Buffer {
  const sound = Buffer.alloc(samples * 2);
  let seed = 1;
  for (let index = 0; index < samples; index += 1) {
    seed = (seed * 48_271) % 2_147_483_647;
    sound.writeInt16LE((seed % (2 * loud + 1)) - loud, index * 2);
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

/** Presses the bar and tells when; a tape begins with the first press. */
export async function hold(page: Page): Promise<number> {
  await page.locator('.talk').hover();
  await page.mouse.down();
  await page.locator('.talk.listening').waitFor();
  return Date.now();
}
