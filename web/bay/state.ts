// All that the bay shows, in one value.
import type { JobSummary, JobView, Reply, Settings } from '#wire';
import { plainShop } from '../shared/plain-shop.ts';
import { createStore } from '../shared/store.ts';
import type { HeardWell } from './doubtful.ts';

export type Voice =
  | { readonly is: 'loading'; readonly part: number }
  | { readonly is: 'ready' }
  /** Pressed, and the microphone not open yet. */
  | { readonly is: 'opening' }
  | { readonly is: 'listening'; readonly latched: boolean }
  | { readonly is: 'hearing' }
  | { readonly is: 'speaking' }
  | { readonly is: 'unavailable'; readonly why: string };

/** One line of the talk of this job. */
export interface Line {
  readonly id: string;
  readonly who: 'heard' | 'answered';
  readonly text: string;
  readonly at: string;
  readonly mark?: 'sending' | 'kept' | 'refused' | 'elsewhere';
}

export interface Last {
  readonly turn: string;
  readonly heard: string;
  /** What it was taken to mean, or the answer. */
  readonly taken?: string;
  readonly tone?: Reply['tone'] | 'kept';
}

export interface KeptValue {
  readonly turn: string;
  readonly label: string;
  readonly shown: string;
}

export interface Bay {
  readonly job: string | null;
  readonly view: JobView | null;
  readonly last?: Last;
  readonly lines: readonly Line[];
  readonly voice: Voice;
  /** Server reached, not reached, or not known yet. */
  readonly link: 'unknown' | 'up' | 'down';
  readonly waiting: number;
  /** Some of them could not be sent when they were said. */
  readonly late: boolean;
  /** Values parsed here and not sent yet. */
  readonly kept: readonly KeptValue[];
  readonly notice?: string;
  /** Heard, but hardly: sent after a yes. */
  readonly doubtful?: HeardWell | undefined;
  /** What the server would not have, for the typed line to take back. */
  readonly giveBack?: string;
  readonly jobs: readonly JobSummary[];
  readonly settings: Settings;
  readonly settingsOpen: boolean;
}

export const bay = createStore<Bay>({
  job: null,
  view: null,
  lines: [],
  voice: { is: 'loading', part: 0 },
  link: 'unknown',
  waiting: 0,
  late: false,
  kept: [],
  jobs: [],
  settings: plainShop,
  settingsOpen: false,
});

export const meterTicks = 33;

export interface Level {
  /** How many of the meter's ticks are lit. */
  readonly lit: number;
  /** The microphone is driven too hard, or hears next to nothing. */
  readonly warning?: 'clipping' | 'quiet' | undefined;
}

/** Fifty times a second while the bar is held: by itself, so that the bay is not drawn anew each time. */
export const microphone = createStore<Level>({ lit: 0 });
