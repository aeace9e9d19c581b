// Plays clips through one AudioContext, placed end to end on its clock.
import { type Bank, bankRate, type Piece } from './bank.ts';

export interface Player {
  prime(): void;
  /** 0..1, of what is played from now on. */
  volume(part: number): void;
  pieces(bank: Bank, pieces: readonly Piece[], rate: number): Promise<void>;
  /** A WAV file. */
  sound(wav: ArrayBuffer, rate: number): Promise<void>;
  /** Says by a tone that there is something to read. */
  hum(): Promise<void>;
  stop(): void;
}

const leadSeconds = 0.01;
/** Words follow one another a little closer than the clips are long. */
const overlapSeconds = 0.02;

export function createPlayer(): Player {
  let context: AudioContext | undefined;
  let out: GainNode | undefined;
  let loudness = 1;
  let playing: AudioScheduledSourceNode[] = [];
  let over: () => void = () => undefined;

  const audio = (): AudioContext => {
    context ??= new AudioContext({ latencyHint: 'interactive' });
    if (context.state === 'suspended') void context.resume().catch(() => undefined);
    return context;
  };

  function outlet(): GainNode {
    if (!out) {
      out = new GainNode(audio());
      out.connect(audio().destination);
    }
    out.gain.value = loudness;
    return out;
  }

  function stop(): void {
    for (const source of playing) source.stop();
    playing = [];
    over();
    over = () => undefined;
  }

  /** Resolves when the last one ends, or when stopped. A context that the browser holds back would never end: the clock decides. */
  function until(sources: AudioScheduledSourceNode[], seconds: number): Promise<void> {
    playing = sources;
    return new Promise((resolve) => {
      const timer = setTimeout(() => over(), seconds * 1000 + 60);
      over = () => {
        clearTimeout(timer);
        resolve();
      };
    });
  }

  function place(buffer: AudioBuffer, at: number, rate: number): AudioBufferSourceNode {
    const source = new AudioBufferSourceNode(audio(), { buffer, playbackRate: rate });
    source.connect(outlet());
    source.start(at);
    return source;
  }

  return {
    prime: () => void audio(),
    volume(part) {
      loudness = part;
    },
    pieces(bank, pieces, rate) {
      const begin = audio().currentTime + leadSeconds;
      let at = begin;
      const sources: AudioBufferSourceNode[] = [];
      for (const piece of pieces) {
        if (typeof piece === 'number') at += piece / rate;
        else {
          const samples = bank.samples(piece);
          const buffer = new AudioBuffer({ length: Math.max(1, samples.length), sampleRate: bankRate });
          buffer.copyToChannel(samples as Float32Array<ArrayBuffer>, 0);
          sources.push(place(buffer, at, gentle(rate)));
          at += buffer.duration / gentle(rate) - overlapSeconds + slack(rate);
        }
      }
      return until(sources, at - begin);
    },
    async sound(wav, rate) {
      const buffer = await audio().decodeAudioData(wav);
      return until([place(buffer, audio().currentTime + leadSeconds, gentle(rate))], buffer.duration / gentle(rate));
    },
    hum() {
      const now = audio().currentTime + leadSeconds;
      const tone = new OscillatorNode(audio(), { frequency: 520 });
      const faint = new GainNode(audio(), { gain: 0.1 });
      tone.connect(faint).connect(outlet());
      tone.start(now);
      tone.stop(now + 0.25);
      return until([tone], 0.25);
    },
    stop,
  };
}

/** Played slower, a voice also sinks: half of "slower" is longer rests between the words. */
const gentle = (rate: number): number => Math.sqrt(rate);
const slack = (rate: number): number => Math.max(0, (1 / rate - 1 / gentle(rate)) * 0.4);
