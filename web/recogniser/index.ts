// Hearing: microphone -> text, on this device. One interface over the built-in recogniser and the browser's own.
import type { Recogniser, RecogniserEvents } from './types.ts';

export type { Heard, Hearing, Recogniser, RecogniserEvents, RecogniserState, Unheard, Why } from './types.ts';

/** The built-in recogniser. Nothing leaves the device. */
export function createRecogniser(events: RecogniserEvents): Recogniser {
  events.onState('loading');
  return {
    load: () => Promise.reject(new Error('The recogniser is not built in yet. Type instead.')),
    press: () => Promise.resolve(),
    release: () => Promise.resolve({ ok: false, why: 'notReady', message: 'Voice is not ready yet. Type it instead.' }),
    cancel: () => undefined,
  };
}
