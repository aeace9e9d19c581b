// Ears and mouth, as far as the bay is concerned. Both are fetched after the first paint; until then the page works by typing.
import type { Expects } from '#intents';
import type { Reply } from '#wire';
import { createEars, type Hearing, type Recogniser, type RecogniserEvents } from '../recogniser/index.ts';
import { type Device, device } from '../shared/device.ts';
import { shell } from '../shared/install.ts';
import { keepVoice } from '../shared/offline.ts';
import type { createSpeaker } from '../speaking/index.ts';
import { asking, type HeardWell, weighed } from './doubtful.ts';
import { play, wakeSound } from './earcon.ts';
import { bay, meterTicks, microphone } from './state.ts';
import { idle, limitMs, step, type Talk, type TalkEvent } from './talk.ts';

type Speaker = ReturnType<typeof createSpeaker>;
type Ears = Device['hearing'];

export interface Voice {
  readonly load: () => Promise<void>;
  readonly talk: (event: TalkEvent) => void;
  readonly speak: (text: string, pace?: Reply['pace']) => void;
  /** By hand: whether the doubtful command was said. */
  readonly settleDoubt: (right: boolean) => void;
}

const nothing: Expects = { fields: [], yesNo: false };
const yesOrNo: Expects = { fields: [], yesNo: true, offered: ['yes', 'yeah', 'yep', 'no', 'nope'] };
const slowly = 0.7;
/** A microphone tells its level ten times a second. */
const dumbMs = 1500;

export function createVoice(onHeard: (hearing: HeardWell, by: Ears) => void): Voice {
  let recogniser: Recogniser | undefined;
  let by: Ears = 'builtIn';
  let speaker: Speaker | undefined;
  let talk: Talk = idle;
  let limit: ReturnType<typeof setTimeout> | undefined;
  let dumb: ReturnType<typeof setTimeout> | undefined;
  let busy: Promise<void> = Promise.resolve();

  device.subscribe(() => {
    if (device.get().hearing !== by && recogniser) void load();
  });

  async function load(): Promise<void> {
    recogniser = undefined;
    by = device.get().hearing;
    bay.set({ voice: { is: 'loading', part: 0 } });
    try {
      const events: RecogniserEvents = {
        onState: () => undefined,
        onLevel: (level, warning) => {
          microphone.set({ lit: Math.round(level * meterTicks), warning });
          if (bay.get().voice.is === 'listening') watch();
        },
      };
      const [made, mouth] = await Promise.all([createEars(by, events), import('../speaking/index.ts')]);
      speaker ??= mouth.createSpeaker();
      await made.load((part) => bay.set({ voice: { is: 'loading', part } }));
      recogniser = made;
      bay.set({ voice: { is: 'ready' } });
      if (device.get().hearing !== by) return load();
      if (by === 'builtIn') shell.set({ offline: await keepVoice() });
    } catch (cause) {
      const why = cause instanceof Error ? cause.message : 'The recogniser could not be loaded. Type instead.';
      bay.set({ voice: { is: 'unavailable', why } });
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
      if (bay.get().voice.is === 'unavailable') void load();
      return;
    }
    const ears = recogniser;
    bay.set({ voice: { is: 'opening' }, notice: '' });
    microphone.set({ lit: 0, warning: undefined });
    limit = setTimeout(() => hear({ kind: 'lost' }), limitMs);
    busy = busy.then(() => ears.press(expected())).then((trouble) => (trouble ? giveUp(ears, trouble) : opened()), failed);
  }

  const expected = (): Expects => (bay.get().doubtful ? yesOrNo : (bay.get().view?.expects ?? nothing));

  /** Only now is anything heard: a microphone that was off takes its time. */
  function opened(): void {
    if (bay.get().voice.is !== 'opening') return;
    play('listening');
    bay.set({ voice: { is: 'listening', latched: talk.is === 'latched' } });
    if (by === 'builtIn') watch();
  }

  /** Unplugged, or asleep: what was heard so far is taken, rather than listening on to nothing. */
  function watch(): void {
    clearTimeout(dumb);
    // A page that was itself held up first gets to see what came in meanwhile.
    const over = (): void => hear({ kind: 'lost' });
    dumb = setTimeout(() => {
      dumb = setTimeout(over, dumbMs / 5);
    }, dumbMs);
  }

  /** Not waiting for the bar to be let go: there is nothing to wait for. */
  function giveUp(ears: Recogniser, trouble: Hearing): void {
    if (bay.get().voice.is !== 'opening') return;
    ears.cancel();
    clearTimeout(limit);
    talk = idle;
    take(trouble);
  }

  function stop(): void {
    clearTimeout(limit);
    clearTimeout(dumb);
    const ears = recogniser;
    if (!ears) return;
    play('heard');
    bay.set({ voice: { is: 'hearing' } });
    busy = busy.then(() => ears.release()).then(take, failed);
  }

  function take(hearing: Hearing): void {
    if (['opening', 'hearing'].includes(bay.get().voice.is)) bay.set({ voice: { is: 'ready' } });
    if (hearing.ok) heardWell(hearing);
    else refuse(hearing.message);
  }

  function heardWell(heard: HeardWell): void {
    const way = weighed(bay.get().doubtful, heard);
    bay.set({ doubtful: 'ask' in way ? way.ask : undefined });
    if ('take' in way) onHeard(way.take, by);
    else if ('drop' in way) refuse('Then say it again.');
    else {
      play('ask');
      speak(asking(way.ask));
    }
  }

  function refuse(notice: string): void {
    play('refused');
    bay.set({ notice });
  }

  function failed(cause: unknown): void {
    const why = cause instanceof Error ? cause.message : String(cause);
    bay.set({ voice: { is: 'ready' }, notice: `Voice failed: ${why}. Say it again or type it.` });
    play('failed');
  }

  function speak(text: string, pace?: Reply['pace']): void {
    const { speaks, rate, volume } = device.get();
    const before = bay.get().voice;
    if (!speaks || !speaker || text === '' || before.is === 'listening' || before.is === 'opening') return;
    bay.set({ voice: { is: 'speaking' } });
    const over = (): void => {
      if (bay.get().voice.is === 'speaking') bay.set({ voice: before.is === 'speaking' ? { is: 'ready' } : before });
    };
    void speaker.speak(text, pace === 'slow' ? rate * slowly : rate, volume).then(over, over);
  }

  function settleDoubt(right: boolean): void {
    const { doubtful } = bay.get();
    bay.set({ doubtful: undefined });
    if (right && doubtful) onHeard(doubtful, by);
  }

  return { load, talk: hear, speak, settleDoubt };
}
