// The talk control as a small machine, the same for bar, Space, pedal and headset: hold to talk, or tap once to latch and
// once more to end. Time comes in with the event.

export type Talk =
  | { readonly is: 'idle' }
  | { readonly is: 'held'; readonly since: number }
  | { readonly is: 'latched' }
  /** Latched, and pressed again to end: the release that follows means nothing. */
  | { readonly is: 'ending' };

export type TalkEvent =
  | { readonly kind: 'down'; readonly at: number }
  | { readonly kind: 'up'; readonly at: number }
  /** A headset button or a pedal that toggles: one event, no release. */
  | { readonly kind: 'toggle' }
  /** Pointer lost, window left, page hidden, microphone gone, or the time limit. */
  | { readonly kind: 'lost' };

export interface TalkStep {
  readonly next: Talk;
  readonly act?: 'start' | 'stop';
}

export const idle: Talk = { is: 'idle' };

/** A press shorter than this is a tap. */
export const tapMs = 300;
/** One utterance never lasts longer: a key whose release got lost must not leave the microphone open. */
export const limitMs = 20_000;

export function step(talk: Talk, event: TalkEvent): TalkStep {
  switch (talk.is) {
    case 'idle':
      if (event.kind === 'down') return { next: { is: 'held', since: event.at }, act: 'start' };
      return event.kind === 'toggle' ? { next: { is: 'latched' }, act: 'start' } : { next: talk };
    case 'held':
      if (event.kind === 'up') return event.at - talk.since < tapMs ? { next: { is: 'latched' } } : { next: idle, act: 'stop' };
      return event.kind === 'down' ? { next: talk } : { next: idle, act: 'stop' };
    case 'latched':
      if (event.kind === 'down') return { next: { is: 'ending' }, act: 'stop' };
      return event.kind === 'up' ? { next: talk } : { next: idle, act: 'stop' };
    case 'ending':
      if (event.kind === 'down') return { next: { is: 'held', since: event.at }, act: 'start' };
      return { next: idle };
  }
}
