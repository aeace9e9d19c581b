// What the page and the recogniser's worker say to each other.
import type { Expects } from '#intents';
import type { Hearing } from './types.ts';

/** Addresses of the voice files. */
export interface VoiceFiles {
  readonly encoder: string;
  readonly decoder: string;
  readonly wasm: string;
  readonly runtime: string;
  readonly words: string;
  readonly referee: string;
}

export type ToWorker =
  | { readonly kind: 'load'; readonly files: VoiceFiles }
  | { readonly kind: 'begin'; readonly press: number; readonly rate: number; readonly expects: Expects }
  | { readonly kind: 'block'; readonly samples: Float32Array }
  /** The bar is let go: answer as soon as the last word is surely in. */
  | { readonly kind: 'release' }
  /** No more sound is coming: answer now. */
  | { readonly kind: 'end' }
  | { readonly kind: 'cancel' };

export type FromWorker =
  | { readonly kind: 'progress'; readonly part: number }
  | { readonly kind: 'ready' }
  | { readonly kind: 'broken'; readonly message: string }
  | { readonly kind: 'heard'; readonly press: number; readonly hearing: Hearing };
