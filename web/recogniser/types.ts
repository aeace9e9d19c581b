import type { Expects } from '#intents';

/** What came of one press. `take`: may be taken and read back; `ask`: ask "did you say" before it counts. */
export type Hearing = Heard | Unheard;

/** What kind of thing was said, as far as doubt goes. `grave`: it settles or loses something. */
export type Kind = 'measure' | 'bare' | 'command' | 'grave';

export type Answer = 'yes' | 'no';

export interface Heard {
  readonly ok: true;
  readonly text: string;
  /** 0..1 */
  readonly confidence: number;
  /** Runner-up texts that mean something else, likeliest first. */
  readonly alternatives: readonly string[];
  readonly band: 'take' | 'ask';
  readonly kind: Kind;
  /** It is nothing but a yes or a no. */
  readonly answers?: Answer | undefined;
}

export interface Unheard {
  readonly ok: false;
  readonly why: Why;
  /** One plain sentence: what is wrong and what would do. */
  readonly message: string;
}

export type Why =
  | 'notReady'
  | 'notSecure'
  | 'noMicrophone'
  | 'micRefused'
  | 'micBusy'
  | 'micLost'
  | 'silence'
  | 'tooQuiet'
  | 'tooShort'
  | 'tooLong'
  | 'notUnderstood'
  | 'modelBroken'
  | 'noService'
  | 'cancelled'
  | 'failed';

export type RecogniserState = 'loading' | 'ready' | 'listening' | 'hearing' | 'failed';

export interface RecogniserEvents {
  readonly onState: (state: RecogniserState) => void;
  /** `level` 0..1 on a decibel scale, about ten times a second while held; `warning` where the microphone clips or hears too little. */
  readonly onLevel: (level: number, warning?: 'clipping' | 'quiet') => void;
}

/** One way of hearing. A press never rejects: what goes wrong while it listens comes out of `release()`. */
export interface Recogniser {
  /** Fetches and warms the model; `part` runs 0..1. Rejects with a plain message; may be called again. */
  load(onProgress: (part: number) => void): Promise<void>;
  /** Resolves once it really listens, or with what is wrong. */
  press(expects: Expects): Promise<Unheard | undefined>;
  release(): Promise<Hearing>;
  cancel(): void;
}
