// Short sounds and buzzes, one for each thing that can happen, told apart without looking.
import { device } from '../shared/device.ts';

export type Earcon = 'listening' | 'heard' | 'taken' | 'ask' | 'refused' | 'kept' | 'failed';

/** Tones as [hertz, seconds], and the buzz in milliseconds. */
const table: Record<Earcon, { readonly tones: readonly (readonly [number, number])[]; readonly buzz: readonly number[] }> = {
  listening: { tones: [[660, 0.07]], buzz: [30] },
  heard: { tones: [[440, 0.05]], buzz: [15] },
  taken: {
    tones: [
      [660, 0.06],
      [880, 0.08],
    ],
    buzz: [40],
  },
  ask: {
    tones: [
      [660, 0.08],
      [550, 0.08],
      [660, 0.08],
    ],
    buzz: [40, 60, 40],
  },
  refused: {
    tones: [
      [300, 0.14],
      [220, 0.18],
    ],
    buzz: [120],
  },
  kept: {
    tones: [
      [440, 0.08],
      [440, 0.08],
    ],
    buzz: [40, 40, 40, 40, 40],
  },
  failed: { tones: [[220, 0.3]], buzz: [250] },
};

let context: AudioContext | undefined;

/** Called from a press: browsers let sound start only then. */
export function wakeSound(): void {
  context ??= new AudioContext();
  if (context.state === 'suspended') void context.resume().catch(() => undefined);
}

export function play(name: Earcon): void {
  const { tones, buzz } = table[name];
  if (!device.get().sounds) return;
  if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.([...buzz]);
  if (context?.state !== 'running') return;
  let at = context.currentTime;
  for (const [hertz, seconds] of tones) {
    tone(context, hertz, at, seconds);
    at += seconds + 0.02;
  }
}

function tone(audio: AudioContext, hertz: number, at: number, seconds: number): void {
  const oscillator = audio.createOscillator();
  const gain = audio.createGain();
  oscillator.frequency.value = hertz;
  gain.gain.setValueAtTime(0, at);
  gain.gain.linearRampToValueAtTime(0.2 * device.get().volume, at + 0.01);
  gain.gain.setValueAtTime(0.2 * device.get().volume, at + seconds - 0.02);
  gain.gain.linearRampToValueAtTime(0, at + seconds);
  oscillator.connect(gain).connect(audio.destination);
  oscillator.start(at);
  oscillator.stop(at + seconds);
}
