// The browser's own recogniser, played by a stand-in: on the device where offered, with hints, and a plain word for each trouble.
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createBrowserEars } from '../../../../web/recogniser/browser-ears.ts';

const nothing = { fields: ['hubFace'] as const, yesNo: false };
const quiet = { onState: () => undefined, onLevel: () => undefined };

class StandIn {
  static made: StandIn[] = [];
  static available = async (): Promise<string> => 'available';
  processLocally = false;
  phrases: { phrase: string }[] = [];
  onstart: (() => void) | null = null;
  onresult: ((event: unknown) => void) | null = null;
  onerror: ((event: { error: string }) => void) | null = null;
  onend: (() => void) | null = null;
  start(): void {
    StandIn.made.push(this);
    queueMicrotask(() => this.onstart?.());
  }
  stop(): void {
    queueMicrotask(() => this.onend?.());
  }
  abort(): void {
    this.onend?.();
  }
}

class Phrase {
  readonly phrase: string;
  constructor(phrase: string) {
    this.phrase = phrase;
  }
}

async function ears() {
  vi.stubGlobal('SpeechRecognition', StandIn);
  vi.stubGlobal('SpeechRecognitionPhrase', Phrase);
  const made = createBrowserEars(quiet);
  await made.load(() => undefined);
  return made;
}

afterEach(() => {
  vi.unstubAllGlobals();
  StandIn.made = [];
});

describe('hearing by the browser', () => {
  it('works on the device with the words of the trade as hints', async () => {
    const made = await ears();
    expect(await made.press(nothing)).toBeUndefined();
    const [used] = StandIn.made;
    expect(used?.processLocally).toBe(true);
    expect(used?.phrases.map(({ phrase }) => phrase)).toEqual(expect.arrayContaining(['hub face', 'seventy']));
    used?.onresult?.({ results: [[{ transcript: 'hub face 72', confidence: 0.9 }]] });
    expect(await made.release()).toMatchObject({ ok: true, text: 'hub face 72' });
  });

  it.each([
    ['network', 'noService'],
    ['not-allowed', 'micRefused'],
    ['audio-capture', 'noMicrophone'],
    ['no-speech', 'silence'],
  ])('says plainly what is wrong on "%s", and hears the next press', async (error, why) => {
    const made = await ears();
    await made.press(nothing);
    StandIn.made[0]?.onerror?.({ error });
    expect(await made.release()).toMatchObject({ ok: false, why });
    await made.press(nothing);
    StandIn.made[1]?.onresult?.({ results: [[{ transcript: 'next', confidence: 0.9 }]] });
    expect(await made.release()).toMatchObject({ ok: true, text: 'next' });
  });

  it('says that there is none where the browser has none', async () => {
    vi.stubGlobal('SpeechRecognition', undefined);
    await expect(createBrowserEars(quiet).load(() => undefined)).rejects.toThrow('built-in');
  });
});
