// What is said to a page in tests, and a tape of it for the browser's fake microphone.
import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { anyMicrophone } from './browser.ts';
import { inNoise, missingTools, rate, shopNoise, type TestVoice } from './speech.ts';

export const hasVoice = missingTools.length === 0;
const howTo = `No ${missingTools.join(', ')}: voice tests cannot run. Get them with: apt-get install espeak-ng flite sox`;
if (!hasVoice && process.env.CI === 'true') throw new Error(howTo);
if (!hasVoice) console.warn(`\n*** ${howTo} ***\n`);

/** A sentence, one so many decibels above a loud shop, or so much of the shop alone. */
export type Sound = string | { readonly text: string; readonly db: number } | { readonly noiseMs: number };

export function soundOf(sound: Sound, voice: TestVoice): Float32Array {
  if (typeof sound === 'string') return voice.say(sound);
  const shop = shopNoise(10, 5);
  if ('noiseMs' in sound) return shop.slice(0, Math.round((rate * sound.noiseMs) / 1000));
  return inNoise(voice.say(sound.text), shop, sound.db, 0.3);
}

/** Where on the tape the sentence ends. */
export interface Tape {
  readonly endMs: number;
}

/** The microphone runs while the page is still making ready to listen. */
const leadMs = 2500;
const tailMs = 4000;
/** A room is never quite still: about -66 dB. */
const still = 0.001;

/** Writes the tape: a still room, the sentence, and the room again. */
export function recordTape(path: string, text: string, voice: TestVoice): Tape {
  const speech = voice.say(text);
  writeFileSync(path, wavOf([room(leadMs), speech, room(tailMs)]));
  return { endMs: leadMs + (1000 * speech.length) / rate };
}

/** The same at every run. */
function room(ms: number): Float32Array {
  let seed = 1;
  return Float32Array.from({ length: Math.round((rate * ms) / 1000) }, () => {
    seed = (seed * 48_271) % 2_147_483_647;
    return still * ((2 * seed) / 2_147_483_647 - 1);
  });
}

const headerBytes = 44;

export function wavOf(parts: readonly Float32Array[]): Buffer {
  const sound = Buffer.concat(parts.map((part) => Buffer.from(Int16Array.from(part, pcm).buffer)));
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

const pcm = (sample: number): number => Math.round(32_767 * Math.min(1, Math.max(-1, sample)));

/** Switches that make a tape the microphone. */
export const microphone = (tape: string, times: 'once' | 'again and again' = 'once'): string[] => [
  ...anyMicrophone,
  `--use-file-for-fake-audio-capture=${tape}${times === 'once' ? '%noloop' : ''}`,
];

/** Holds the bar while the tape plays its sentence. The microphone must not have been opened before. */
export async function play(page: Page, { endMs }: Tape): Promise<void> {
  await noteWhenOpened(page);
  await hold(page);
  const start = await page.evaluate(() => Number(document.documentElement.dataset.tapeBegan));
  await page.waitForTimeout(Math.max(0, endMs + 500 - (Date.now() - start)));
  await page.mouse.up();
}

/** The tape runs from when the microphone is handed out, not from when the page listens. */
function noteWhenOpened(page: Page): Promise<void> {
  return page.evaluate(() => {
    const { mediaDevices } = navigator;
    const open = mediaDevices.getUserMedia.bind(mediaDevices);
    mediaDevices.getUserMedia = async (wish) => {
      const stream = await open(wish);
      document.documentElement.dataset.tapeBegan = String(Date.now());
      return stream;
    };
  });
}

export async function hold(page: Page): Promise<void> {
  await page.locator('.talk').hover();
  await page.mouse.down();
  await page.locator('.talk.listening').waitFor();
}
