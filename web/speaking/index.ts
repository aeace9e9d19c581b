// Speaking: text -> sound, from the phrase bank, the browser's voices or what the bank knows.

export interface Speaker {
  /** Called in a press: browsers let sound start only then. */
  prime(): void;
  /** Resolves when all is spoken or stopped; never rejects. A new text replaces the one being spoken. `rate` 1 is usual. */
  speak(text: string, rate?: number): Promise<void>;
  /** Silent within 100 ms. */
  stop(): void;
}

export function createSpeaker(): Speaker {
  return { prime: () => undefined, speak: () => Promise.resolve(), stop: () => undefined };
}
