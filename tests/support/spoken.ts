// A tape for the fake microphone: sentences by espeak-ng with silence between, and when each begins and ends.
import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { inNoise, missingTools, rate, shopNoise, testVoices } from './speech.ts';

export const hasVoice = missingTools.length === 0;
const howTo = `No ${missingTools.join(', ')}: voice tests cannot run. Get them with: apt-get install espeak-ng flite sox`;
if (!hasVoice && process.env.CI === 'true') throw new Error(howTo);
if (!hasVoice) console.warn(`\n*** ${howTo} ***\n`);

export interface Spoken {
  readonly startMs: number;
  readonly endMs: number;
}

/** A sentence, one so many decibels above a loud shop, or so much of the shop alone. */
export type Sound = string | { readonly text: string; readonly db: number } | { readonly noiseMs: number };

/** The microphone runs while the page is still making ready to listen. */
const leadMs = 2500;
/** A room is never quite still: about -66 dB. */
const still = 0.001;

/** Writes the tape and tells where each sound lies on it. `gapMs` of a still room goes between them and after the last. */
export function recordTape(path: string, sounds: readonly Sound[], gapMs: number): readonly Spoken[] {
  const shop = sounds.some((sound) => typeof sound !== 'string') ? shopNoise(10, 5) : new Float32Array(0);
  const parts: Float32Array[] = [];
  let samples = 0;
  const put = (part: Float32Array): number => {
    parts.push(part);
    samples += part.length;
    return (samples * 1000) / rate;
  };
  const marks = sounds.map((sound, index) => {
    const startMs = put(room(index === 0 ? leadMs : gapMs));
    return { startMs, endMs: put(soundOf(sound, shop)) };
  });
  put(room(gapMs));
  writeFileSync(path, wavOf(parts));
  return marks;
}

function soundOf(sound: Sound, shop: Float32Array): Float32Array {
  if (typeof sound === 'string') return say(sound);
  if ('noiseMs' in sound) return shop.slice(0, Math.round((rate * sound.noiseMs) / 1000));
  return inNoise(say(sound.text), shop, sound.db, 0.3);
}

const say = (text: string): Float32Array => testVoices[0]?.say(text, 0.4) ?? new Float32Array(0);

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
export function microphone(tape: string): string[] {
  return [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-audio-capture=${tape}%noloop`,
  ];
}

/** A tape that has begun: holds the bar while one of its sounds plays. */
export interface Playing {
  hear(mark: Spoken | undefined): Promise<void>;
}

/** Begins the tape by holding the bar for its first sound. */
export async function play(page: Page, first: Spoken | undefined): Promise<Playing> {
  await noteWhenOpened(page);
  await hold(page);
  const start = await page.evaluate(() => Number(document.documentElement.dataset.tapeBegan));
  const until = (ms: number): Promise<void> => page.waitForTimeout(Math.max(0, ms - (Date.now() - start)));
  const letGo = async (mark: Spoken | undefined): Promise<void> => {
    await until((mark?.endMs ?? 0) + 500);
    await page.mouse.up();
  };
  await letGo(first);
  return {
    async hear(mark) {
      await until((mark?.startMs ?? 0) - 800);
      await hold(page);
      await letGo(mark);
    },
  };
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
