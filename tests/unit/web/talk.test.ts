import { describe, expect, it } from 'vitest';
import { idle, step, type Talk, type TalkEvent, tapMs } from '../../../web/bay/talk.ts';

const down = (at: number): TalkEvent => ({ kind: 'down', at });
const up = (at: number): TalkEvent => ({ kind: 'up', at });

function run(events: readonly TalkEvent[]): { readonly end: Talk['is']; readonly acts: readonly string[] } {
  let talk: Talk = idle;
  const acts: string[] = [];
  for (const event of events) {
    const { next, act } = step(talk, event);
    talk = next;
    if (act) acts.push(act);
  }
  return { end: talk.is, acts };
}

describe('the talk control', () => {
  it.each<[string, TalkEvent[], Talk['is'], string[]]>([
    ['held and let go', [down(0), up(tapMs)], 'idle', ['start', 'stop']],
    ['tapped latches', [down(0), up(tapMs - 1)], 'latched', ['start']],
    ['tapped twice ends, and the last release is nothing', [down(0), up(10), down(2000), up(2010)], 'idle', ['start', 'stop']],
    ['a repeated press is one press', [down(0), down(30), down(60), up(900)], 'idle', ['start', 'stop']],
    ['a lost pointer ends a held press', [down(0), { kind: 'lost' }, up(900)], 'idle', ['start', 'stop']],
    ['a lost window ends a latch', [down(0), up(10), { kind: 'lost' }], 'idle', ['start', 'stop']],
    ['a headset button toggles', [{ kind: 'toggle' }, { kind: 'toggle' }], 'idle', ['start', 'stop']],
    ['nothing comes of a loss while idle', [{ kind: 'lost' }, up(5)], 'idle', []],
    ['pressed again at once after ending', [down(0), up(10), down(2000), down(2100)], 'held', ['start', 'stop', 'start']],
  ])('%s', (_name, events, end, acts) => {
    expect(run(events)).toEqual({ end, acts });
  });
});
