// What can go wrong with hearing, in words: what is wrong and what would do.
import type { Unheard, Why } from './types.ts';

const messages: Readonly<Record<Why, string>> = {
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
  noService: "The browser's hearing has no service now. Choose the built-in one in Settings; typing works.",
  cancelled: 'Stopped.',
  notUnderstood: 'Did not get that. Say it again, or type it.',
  failed: 'Voice failed. Press again, or type.',
};

/** What went wrong, in words. */
export function fault(why: Why): Unheard {
  return { ok: false, why, message: messages[why] };
}
