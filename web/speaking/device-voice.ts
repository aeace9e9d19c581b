// The device's own voices. Only those that work without a network; never paused, because some browsers do not come back.

export interface DeviceVoice {
  ready(): boolean;
  prime(): void;
  /** Resolves when spoken, stopped, or when the voice is stuck. */
  speak(parts: readonly string[], rate: number, volume: number): Promise<void>;
  stop(): void;
}

const silent: DeviceVoice = { ready: () => false, prime: () => undefined, speak: () => Promise.resolve(), stop: () => undefined };
/** A voice that takes twice the usual time for a letter has got stuck. */
const msPerLetter = 160;

export function deviceVoice(): DeviceVoice {
  const engine = globalThis.speechSynthesis;
  if (!engine) return silent;
  let voice: SpeechSynthesisVoice | undefined;
  let primed = false;
  let halt: () => void = () => undefined;
  const choose = (): void => {
    const local = engine.getVoices().filter(({ localService, lang }) => localService && /^en\b/i.test(lang));
    voice = local.find(({ default: usual }) => usual) ?? local[0];
  };
  choose();
  engine.addEventListener?.('voiceschanged', choose);

  function one(text: string, rate: number, volume: number): Promise<void> {
    return new Promise((resolve) => {
      const utterance = new SpeechSynthesisUtterance(text);
      if (voice) utterance.voice = voice;
      utterance.rate = rate;
      utterance.volume = volume;
      const watchdog = setTimeout(
        () => {
          engine.cancel();
          resolve();
        },
        1500 + (text.length * msPerLetter) / rate,
      );
      const over = (): void => {
        clearTimeout(watchdog);
        resolve();
      };
      utterance.onend = over;
      utterance.onerror = over;
      halt = over;
      engine.speak(utterance);
    });
  }

  return {
    ready: () => voice !== undefined,
    prime() {
      if (primed || !voice) return;
      primed = true;
      const nothing = new SpeechSynthesisUtterance(' ');
      nothing.volume = 0;
      engine.speak(nothing);
    },
    async speak(parts, rate, volume) {
      let stopped = false;
      const mine = (): void => {
        stopped = true;
      };
      engine.cancel();
      for (const part of parts) {
        const spoken = one(part, rate, volume);
        const end = halt;
        halt = () => {
          mine();
          end();
        };
        await spoken;
        if (stopped) return;
      }
    },
    stop() {
      halt();
      halt = () => undefined;
      engine.cancel();
    },
  };
}
