// The microphone: opened by a press, silent in between, let go when it has not been used for a while.
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

const messages: Readonly<Partial<Record<Why, string>>> = {
  notSecure: 'This address gets no microphone. Open the page by https or on this machine itself; typing works.',
  micRefused: 'The microphone is not allowed here. Allow it beside the address, then press again; typing works.',
  noMicrophone: 'No microphone found. Plug one in and press again; typing works.',
  micBusy: 'The microphone is in use by another program. Close that and press again; typing works.',
  micLost: 'The microphone went away. Check its plug and press again; typing works.',
  silence: 'Heard nothing. Hold the bar while you speak.',
  tooQuiet: 'Too quiet. Bring the microphone closer and say it again.',
  tooShort: 'That was too short. Hold the bar while you speak.',
  tooLong: 'That was too long to take in. Say a value or two at a time.',
  notReady: 'Voice is still loading. Press again in a moment, or type.',
  modelBroken: 'The speech model did not load. Press again to fetch it anew; typing works.',
  cancelled: 'Stopped.',
};

/** What went wrong, in words. */
export function fault(why: Why): Unheard {
  return { ok: false, why, message: messages[why] ?? 'Voice failed. Press again, or type.' };
}
