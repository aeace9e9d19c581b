// What was said in one press, as it comes in: the samples at 16 kHz, and where in them there is speech.
import { decibels, meanPower } from './level.ts';
import { resampler } from './resample.ts';

const frame = 320;
const frameMs = 20;
const padMs = 240;
/** Below this nothing was said, or the microphone is off. */
const silenceDb = -62;
/** A frame counts as speech within this much of the loudest, and above the quiet part by `aboveQuiet`. */
const belowLoudest = 30;
const aboveQuiet = 8;

export interface Speech {
  /** Cut to the speech and a little around it. */
  readonly samples: Float32Array;
  readonly seconds: number;
  readonly loudestDb: number;
}

export interface Utterance {
  push(block: Float32Array): void;
  /** No more is coming. */
  end(): void;
  readonly seconds: number;
  /** Milliseconds since the last frame that sounded like speech; 0 while there was none. */
  quietMs(): number;
  /** When the last speech so far ended; -1 while there was none. */
  spokenUntilMs(): number;
  speech(): Speech | 'silence';
}

/** Keeps at most `maxSeconds`; what comes later is dropped. */
export function utterance(rate: number, maxSeconds: number): Utterance {
  const resample = resampler(rate);
  const samples = new Float32Array(maxSeconds * 16_000);
  const loudness: number[] = [];
  let length = 0;

  function take(block: Float32Array): void {
    const fits = block.subarray(0, samples.length - length);
    samples.set(fits, length);
    length += fits.length;
    while ((loudness.length + 1) * frame <= length) {
      const at = loudness.length * frame;
      loudness.push(decibels(meanPower(samples.subarray(at, at + frame))));
    }
  }

  function threshold(): number {
    const sorted = [...loudness].sort((a, b) => a - b);
    const loudest = sorted.at(-1) ?? -120;
    const quiet = sorted[Math.floor(sorted.length / 10)] ?? -120;
    return Math.max(silenceDb, loudest - belowLoudest, Math.min(quiet + aboveQuiet, loudest - 6));
  }

  const untilMs = (last: number | undefined): number => (last === undefined ? -1 : (last + 1) * frameMs);
  const spoken = (): number[] => {
    const limit = threshold();
    return loudness.flatMap((db, index) => (db >= limit ? [index] : []));
  };

  return {
    push: (block) => take(resample.push(block)),
    end: () => take(resample.flush()),
    get seconds() {
      return length / 16_000;
    },
    quietMs() {
      const until = untilMs(spoken().at(-1));
      return until < 0 ? 0 : loudness.length * frameMs - until;
    },
    spokenUntilMs: () => untilMs(spoken().at(-1)),
    speech() {
      const frames = spoken();
      const [first] = frames;
      const last = frames.at(-1);
      if (first === undefined || last === undefined) return 'silence';
      const pad = padMs / frameMs;
      const cut = samples.slice(Math.max(0, first - pad) * frame, Math.min(length, (last + 1 + pad) * frame));
      return { samples: cut, seconds: cut.length / 16_000, loudestDb: Math.max(...loudness) };
    },
  };
}
