// Someone who talks to the page: sounds are played into the page's own sound graph where the microphone would be, so that no sample is
// lost on the way, and the bar is held as long as they last.
import type { Page } from 'playwright-core';
import { type TestVoice, voiceNamed } from './speech.ts';
import { hold, type Sound, soundOf, wavOf } from './spoken.ts';

declare global {
  interface Window {
    /** Plays a sentence; resolves when it is over. */
    mouth: (wav: string) => Promise<void>;
    /** Milliseconds from letting the bar go to knowing what was said. */
    waits: number[];
  }
}

/** To be called before the page is opened. `beside`: what the microphone gives is heard as well. */
export const withMouth = (page: Page, { beside = false } = {}) => page.addInitScript(mouth, beside);

/** Runs in the page. */
function mouth(beside: boolean): void {
  let lips: GainNode | undefined;
  const { createMediaStreamSource } = AudioContext.prototype;
  AudioContext.prototype.createMediaStreamSource = function (stream) {
    lips = this.createGain();
    if (beside) createMediaStreamSource.call(this, stream).connect(lips);
    const still = this.createBuffer(1, this.sampleRate, this.sampleRate);
    // A room is never quite still.
    still.getChannelData(0).forEach((_, index, samples) => {
      samples[index] = (0.001 * (2 * (((index + 1) * 48_271) % 9973) - 9973)) / 9973;
    });
    const room = new AudioBufferSourceNode(this, { buffer: still, loop: true });
    room.connect(lips);
    room.start();
    return lips as unknown as MediaStreamAudioSourceNode;
  };
  window.mouth = async (wav) => {
    if (!lips) throw new Error('the page has not opened its microphone');
    const { context } = lips;
    const bytes = Uint8Array.from(atob(wav), (letter) => letter.charCodeAt(0));
    const source = new AudioBufferSourceNode(context, { buffer: await context.decodeAudioData(bytes.buffer) });
    const over = new Promise((resolve) => source.addEventListener('ended', resolve));
    source.connect(lips);
    source.start();
    await over;
  };
  window.waits = [];
  document.addEventListener('DOMContentLoaded', () => {
    let letGo: number | undefined;
    new MutationObserver(() => {
      const bar = document.querySelector('.talk');
      if (bar?.classList.contains('hearing')) letGo ??= performance.now();
      else if (letGo !== undefined) {
        window.waits.push(performance.now() - letGo);
        letGo = undefined;
      }
    }).observe(document.body, { subtree: true, attributes: true, attributeFilter: ['class'] });
  });
}

/** A thumb does not let go on the last sound. */
const lingerMs = 250;

export interface Outcome {
  /** What was taken and answered. */
  readonly heard?: string;
  /** What the page asks about before it takes it. */
  readonly doubtful?: string;
  /** Why nothing was made of it. */
  readonly notice?: string;
}

/** Holds the bar, says it, lets go, and waits for what comes of it. */
export async function speak(page: Page, sound: Sound, voice: TestVoice = voiceNamed('rms')): Promise<Outcome> {
  const wav = wavOf([soundOf(sound, voice)]).toString('base64');
  const answers = page.locator('.tally-line.answered');
  const before = await answers.count();
  await hold(page);
  await page.evaluate((heard) => window.mouth(heard), wav);
  await page.waitForTimeout(lingerMs);
  await page.mouse.up();
  const outcome = await page.waitForFunction((count) => {
    if (document.querySelector('.talk')?.matches('.hearing, .listening, .opening')) return undefined;
    const heard = document.querySelector('.last-heard bdi')?.textContent ?? '';
    if (document.querySelectorAll('.tally-line.answered').length > count) return { heard };
    const doubtful = document.querySelector('.question.doubtful bdi')?.textContent;
    if (doubtful) return { doubtful };
    const notice = document.querySelector('.notice')?.textContent;
    return notice ? { notice } : undefined;
  }, before);
  return (await outcome.jsonValue()) ?? {};
}
