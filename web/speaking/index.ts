// Speaking: text -> sound. A read-back comes from the phrase bank at once; other text from the device's own voice, else from the
// server's synthesiser, else as far as the bank knows it. Never silent without a sound that says so.
import type { Bank } from './bank.ts';
import { deviceVoice } from './device-voice.ts';
import { loadBank } from './load-bank.ts';
import { createPlayer } from './player.ts';
import { sentences } from './sentences.ts';
import { fetchSpeech } from './server-voice.ts';

export interface Speaker {
  /** Called in a press: browsers let sound start only then. */
  prime(): void;
  /** Resolves when all is spoken or stopped; never rejects. A new text replaces the one being spoken. `rate` 1 is usual, `volume` 0..1. */
  speak(text: string, rate?: number, volume?: number): Promise<void>;
  /** Silent at once. */
  stop(): void;
}

interface Manner {
  readonly rate: number;
  readonly volume: number;
}

export function createSpeaker(): Speaker {
  const player = createPlayer();
  const device = deviceVoice();
  let bank: Bank | undefined;
  let turn = 0;
  void loadBank().then((loaded) => {
    bank = loaded;
  });

  async function speakAll(text: string, { rate, volume }: Manner, mine: number): Promise<void> {
    const parts = sentences(text);
    const plans = parts.map((part) => bank?.plan(part));
    if (bank && plans.every((plan) => plan !== undefined)) return player.pieces(bank, plans.flat(), rate);
    if (device.ready()) return device.speak(parts, rate, volume);
    // The next sentence is fetched while this one is spoken.
    let next = fetchSpeech(parts[0] ?? '');
    for (const [index, part] of parts.entries()) {
      const sound = await next;
      if (turn !== mine) return;
      next = fetchSpeech(parts[index + 1] ?? '');
      const known = sound ? [] : (bank?.known(part) ?? []);
      if (sound) await player.sound(sound, rate);
      else if (bank && known.some((piece) => typeof piece === 'string')) await player.pieces(bank, known, rate);
      else await player.hum();
      if (turn !== mine) return;
    }
  }

  function stop(): void {
    turn += 1;
    player.stop();
    device.stop();
  }

  return {
    prime() {
      player.prime();
      device.prime();
    },
    async speak(text, rate = 1, volume = 1) {
      stop();
      player.volume(volume);
      await speakAll(text, { rate, volume }, turn).catch(() => player.hum());
    },
    stop,
  };
}
