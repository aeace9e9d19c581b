// The microphone: opened by a press, silent in between, let go when it has not been used for a while.
import { fault } from './faults.ts';
import type { Unheard, Why } from './types.ts';

export interface Microphone {
  /** Resolves with the sample rate once samples flow; or with what is wrong. */
  open(): Promise<number | Unheard>;
  /** Samples stop; the device stays at hand for the next press. */
  rest(): void;
  /** Lets the device go. */
  close(): void;
}

interface Line {
  readonly context: AudioContext;
  readonly stream: MediaStream;
  readonly track: MediaStreamTrack;
}

const keptMs = 20_000;
const wish = { channelCount: 1, echoCancellation: false, noiseSuppression: false, autoGainControl: false };

export function createMicrophone(worklet: string, onBlock: (samples: Float32Array) => void, onLost: () => void): Microphone {
  let line: Line | undefined;
  let flowing = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  async function connect(): Promise<Line> {
    const stream = await navigator.mediaDevices.getUserMedia({ audio: wish });
    const [track] = stream.getAudioTracks();
    if (!track) throw new DOMException('no audio track', 'NotFoundError');
    const context = new AudioContext({ latencyHint: 'interactive' });
    try {
      await context.audioWorklet.addModule(worklet);
      const tap = new AudioWorkletNode(context, 'tap');
      tap.port.onmessage = ({ data }: MessageEvent<Float32Array>) => {
        if (flowing) onBlock(data);
      };
      // Browsers run a node only when it leads somewhere: it leads to silence.
      const mute = new GainNode(context, { gain: 0 });
      context.createMediaStreamSource(stream).connect(tap).connect(mute).connect(context.destination);
    } catch (cause) {
      track.stop();
      void context.close();
      throw cause;
    }
    track.addEventListener('ended', () => {
      close();
      onLost();
    });
    return { context, stream, track };
  }

  function close(): void {
    clearTimeout(timer);
    flowing = false;
    line?.track.stop();
    void line?.context.close().catch(() => undefined);
    line = undefined;
  }

  return {
    async open() {
      clearTimeout(timer);
      if (!navigator.mediaDevices?.getUserMedia) return fault('notSecure');
      try {
        line ??= await connect();
        line.track.enabled = true;
        if (line.context.state !== 'running') await line.context.resume();
        flowing = true;
        return line.context.sampleRate;
      } catch (cause) {
        close();
        return fault(whyOf(cause));
      }
    },
    rest() {
      flowing = false;
      if (!line) return;
      line.track.enabled = false;
      clearTimeout(timer);
      timer = setTimeout(close, keptMs);
    },
    close,
  };
}

function whyOf(cause: unknown): Why {
  const name = cause instanceof DOMException ? cause.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'micRefused';
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return 'noMicrophone';
  return name === 'NotReadableError' || name === 'AbortError' ? 'micBusy' : 'failed';
}
