// One press, from first block to answer. At each pause while the bar is held, what was said so far is decoded; when nothing more
// was said by the time it is let go, the answer is there already.
import type { Expects } from '#intents';
import type { Engine } from './engine/hear.ts';
import { fault } from './faults.ts';
import { type Speech, utterance } from './sound/utterance.ts';
import type { Hearing } from './types.ts';

export interface Listening {
  block(samples: Float32Array): void;
  release(): void;
  end(): void;
  cancel(): void;
}

interface Early {
  readonly untilMs: number;
  givenUp: boolean;
  hearing: Promise<Hearing>;
}

const pauseMs = 120;
const slackMs = 60;
/** The last word may still be on its way through the sound system when the bar is let go. */
const tailSeconds = 0.15;
const maxSeconds = 20;
const leastSeconds = 0.25;
const tooQuietDb = -55;

/** `answer` is called once, unless cancelled. */
export function listen(engine: Engine, rate: number, expects: Expects, answer: (hearing: Hearing) => void): Listening {
  const heard = utterance(rate, maxSeconds);
  engine.prepare(expects);
  let early: Early | undefined;
  let releasedAt: number | undefined;
  let over = false;

  function decodeEarly(): void {
    const speech = heard.speech();
    if (speech === 'silence' || (early && holds(early))) return;
    const begun: Early = { untilMs: heard.spokenUntilMs(), givenUp: false, hearing: Promise.resolve(fault('failed')) };
    const goOn = async (): Promise<boolean> => {
      await breath();
      begun.givenUp ||= early !== begun || !holds(begun);
      return !begun.givenUp;
    };
    early = begun;
    begun.hearing = engine.hear(speech.samples, expects, goOn).then(({ hearing }) => hearing);
    begun.hearing.catch(() => undefined);
  }

  /** Nothing was said since, but for what a threshold that moves may add. */
  const holds = ({ untilMs }: Early): boolean => heard.spokenUntilMs() <= untilMs + slackMs;

  async function finish(): Promise<void> {
    if (over) return;
    over = true;
    heard.end();
    answer(refusal(heard.seconds, heard.speech()) ?? (await decoded()));
  }

  async function decoded(): Promise<Hearing> {
    try {
      const ready = early && holds(early) ? await early.hearing : undefined;
      if (ready && early?.givenUp === false) return ready;
      const speech = heard.speech();
      return speech === 'silence' ? fault('silence') : (await engine.hear(speech.samples, expects)).hearing;
    } catch {
      return fault('failed');
    }
  }

  return {
    block(samples) {
      if (over) return;
      heard.push(samples);
      const paused = heard.quietMs() >= pauseMs;
      if (releasedAt === undefined) {
        if (paused) decodeEarly();
      } else if (paused || heard.seconds >= releasedAt + tailSeconds) void finish();
    },
    release() {
      releasedAt = heard.seconds;
      if (heard.quietMs() >= pauseMs) void finish();
    },
    end: () => void finish(),
    cancel() {
      over = true;
    },
  };
}

function refusal(seconds: number, speech: Speech | 'silence'): Hearing | undefined {
  if (seconds >= maxSeconds) return fault('tooLong');
  if (seconds < leastSeconds) return fault('tooShort');
  if (speech === 'silence') return fault('silence');
  return speech.loudestDb < tooQuietDb ? fault('tooQuiet') : undefined;
}

/** Lets messages that have come in be read. */
export function breath(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}
