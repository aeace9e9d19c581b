// The built-in recogniser as the page holds it: microphone, worker, and the press in hand.
import { scriptAddress } from '../shared/trusted.ts';
import { fault } from './faults.ts';
import type { FromWorker, ToWorker, VoiceFiles } from './messages.ts';
import { createMicrophone } from './microphone.ts';
import { meter, peak } from './sound/level.ts';
import type { Hearing, Recogniser, RecogniserEvents, Unheard } from './types.ts';

/** Addresses by name, put in by the build. */
declare const ASSETS: Readonly<Record<string, string>>;

const address = (name: string): string => ASSETS[name] ?? '';
/** A microphone that has gone dumb must not keep the page waiting. */
const dumbMs = 400;
const clipped = 0.985;
const faintLevel = 0.3;

interface Press {
  readonly id: number;
  readonly answered: Promise<Hearing>;
  readonly answer: (hearing: Hearing) => void;
  loudest: number;
  blocks: number;
}

export function createBuiltin({ onState, onLevel }: RecogniserEvents): Recogniser {
  let worker: Worker | undefined;
  let loading: Promise<void> | undefined;
  let isReady = false;
  let press: Press | undefined;
  let presses = 0;
  const microphone = createMicrophone(address('microphone.worklet'), onBlock, () => settle(fault('micLost')));

  const tell = (message: ToWorker, moved: Transferable[] = []): void => worker?.postMessage(message, moved);

  function load(onProgress: (part: number) => void): Promise<void> {
    loading ??= start(onProgress).then(
      () => {
        isReady = true;
        onProgress(1);
        onState('ready');
      },
      (cause: unknown) => {
        drop();
        throw cause;
      },
    );
    return loading;
  }

  function start(onProgress: (part: number) => void): Promise<void> {
    onState('loading');
    return new Promise((resolve, reject) => {
      const made = new Worker(scriptAddress(address('recogniser.worker')), { type: 'module' });
      worker = made;
      const fail = (why: string): void => {
        reject(new Error(`${why} Typing works; press to try again.`));
        // It may fail when it had been ready; until then who loads it drops it.
        if (isReady) drop();
        settle(fault('failed'));
      };
      made.onmessage = ({ data }: MessageEvent<FromWorker>) => {
        if (data.kind === 'progress') onProgress(data.part);
        else if (data.kind === 'ready') resolve();
        else if (data.kind === 'broken') fail(data.message);
        else if (data.press === press?.id) settle(data.hearing);
      };
      made.onerror = () => fail('The speech recogniser could not be started.');
      tell({ kind: 'load', files: files() });
    });
  }

  /** The next press loads again. */
  function drop(): void {
    worker?.terminate();
    worker = undefined;
    loading = undefined;
    isReady = false;
    onState('failed');
  }

  function settle(hearing: Hearing): void {
    press?.answer(hearing);
  }

  function onBlock(samples: Float32Array): void {
    if (!press) return;
    const level = meter(samples);
    press.loudest = Math.max(press.loudest, level);
    press.blocks += 1;
    const warning = peak(samples) >= clipped ? 'clipping' : press.blocks > 60 && press.loudest < faintLevel ? 'quiet' : undefined;
    onLevel(level, warning);
    tell({ kind: 'block', samples }, [samples.buffer]);
  }

  function given(mine: Press, why: Unheard): Unheard {
    mine.answer(why);
    return why;
  }

  function opened(): Press {
    presses += 1;
    let answer: (hearing: Hearing) => void = () => undefined;
    const answered = new Promise<Hearing>((resolve) => {
      answer = resolve;
    });
    return { id: presses, answered, answer, loudest: 0, blocks: 0 };
  }

  return {
    load,
    async press(expects) {
      press?.answer(fault('cancelled'));
      const mine = opened();
      press = mine;
      onState('listening');
      if (!isReady) {
        void load(() => undefined).catch(() => undefined);
        return given(mine, fault('notReady'));
      }
      const rate: number | Unheard = await microphone.open();
      if (typeof rate !== 'number') return given(mine, rate);
      if (press !== mine) {
        microphone.rest();
        return fault('cancelled');
      }
      tell({ kind: 'begin', press: mine.id, rate, expects });
      return undefined;
    },
    async release() {
      const mine = press;
      if (!mine) return fault('cancelled');
      onState('hearing');
      tell({ kind: 'release' });
      const timer = setTimeout(() => tell({ kind: 'end' }), dumbMs);
      const hearing = await mine.answered;
      clearTimeout(timer);
      if (press === mine) {
        press = undefined;
        microphone.rest();
        onLevel(0);
        onState(isReady ? 'ready' : 'failed');
      }
      return hearing;
    },
    cancel() {
      tell({ kind: 'cancel' });
      settle(fault('cancelled'));
      press = undefined;
      microphone.rest();
      if (isReady) onState('ready');
    },
  };
}

function files(): VoiceFiles {
  return {
    encoder: address('encoder.onnx'),
    decoder: address('decoder.onnx'),
    wasm: address('runtime.wasm'),
    runtime: address('runtime.mjs'),
    words: address('words.json'),
    referee: address('referee.bin'),
  };
}
