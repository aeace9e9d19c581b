// Ears and mouth, as far as the bay is concerned. Both are fetched after the first paint; until then the page works by typing.
import type { Expects } from '#intents';
import type { createRecogniser, Hearing } from '../recogniser/index.ts';
import { device } from '../shared/device.ts';
import type { createSpeaker } from '../speaking/index.ts';
import { play, wakeSound } from './earcon.ts';
import { bay } from './state.ts';
import { idle, limitMs, step, type Talk, type TalkEvent } from './talk.ts';

type Recogniser = ReturnType<typeof createRecogniser>;
type Speaker = ReturnType<typeof createSpeaker>;
export type HeardWell = Extract<Hearing, { readonly ok: true }>;

export interface Voice {
  readonly load: () => Promise<void>;
  readonly talk: (event: TalkEvent) => void;
  readonly speak: (text: string) => void;
}

const nothing: Expects = { fields: [], yesNo: false };

export function createVoice(onHeard: (hearing: HeardWell) => void): Voice {
  let recogniser: Recogniser | undefined;
  let speaker: Speaker | undefined;
  let talk: Talk = idle;
  let limit: ReturnType<typeof setTimeout> | undefined;
  let busy: Promise<void> = Promise.resolve();

  async function load(): Promise<void> {
    const [ears, mouth] = await Promise.all([import('../recogniser/index.ts'), import('../speaking/index.ts')]);
    speaker = mouth.createSpeaker();
    const made = ears.createRecogniser({ onState: () => undefined, onLevel: (level) => bay.set({ level }) });
    try {
      await made.load((part) => bay.set({ voice: { is: 'loading', part } }));
      recogniser = made;
      bay.set({ voice: { is: 'ready' } });
    } catch (cause) {
      bay.set({
        voice: {
          is: 'unavailable',
          why: cause instanceof Error ? cause.message : 'The recogniser could not be loaded. Type instead.',
        },
      });
    }
  }

  function hear(event: TalkEvent): void {
    const { next, act } = step(talk, event);
    talk = next;
    if (act === 'start') start();
    else if (act === 'stop') stop();
    else if (bay.get().voice.is === 'listening') bay.set({ voice: { is: 'listening', latched: talk.is === 'latched' } });
  }

  function start(): void {
    // Speaking stops before anything else: it must not be heard as speech.
    speaker?.stop();
    speaker?.prime();
    wakeSound();
    if (!recogniser) {
      talk = idle;
      return;
    }
    const ears = recogniser;
    play('listening');
    bay.set({ voice: { is: 'listening', latched: false }, notice: '' });
    limit = setTimeout(() => hear({ kind: 'lost' }), limitMs);
    const expects = bay.get().view?.expects ?? nothing;
    busy = busy
      .then(() => ears.press(expects))
      .then(
        () => undefined,
        () => undefined,
      );
  }

  function stop(): void {
    clearTimeout(limit);
    const ears = recogniser;
    if (!ears) return;
    play('heard');
    bay.set({ voice: { is: 'hearing' }, level: 0 });
    busy = busy.then(() => ears.release()).then(take, failed);
  }

  function take(hearing: Hearing): void {
    if (bay.get().voice.is === 'hearing') bay.set({ voice: { is: 'ready' } });
    if (hearing.ok) onHeard(hearing);
    else {
      play('refused');
      bay.set({ notice: hearing.message });
    }
  }

  function failed(cause: unknown): void {
    bay.set({
      voice: { is: 'ready' },
      notice: `Voice failed: ${cause instanceof Error ? cause.message : String(cause)}. Say it again or type it.`,
    });
    play('failed');
  }

  function speak(text: string): void {
    const { speaks, rate, volume } = device.get();
    if (!speaks || !speaker || text === '' || bay.get().voice.is === 'listening') return;
    const before = bay.get().voice;
    bay.set({ voice: { is: 'speaking' } });
    const over = (): void => {
      if (bay.get().voice.is === 'speaking') bay.set({ voice: before.is === 'speaking' ? { is: 'ready' } : before });
    };
    void speaker.speak(text, rate, volume).then(over, over);
  }

  return { load, talk: hear, speak };
}
