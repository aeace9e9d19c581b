// The bar: the whole width, deep enough for a glove, and its state in a word, a shape and a pattern.
import { useStore } from '../shared/store.ts';
import { type Level, meterTicks, microphone, type Voice } from './state.ts';

interface Hold {
  readonly down: () => void;
  readonly up: () => void;
  readonly lost: () => void;
}

const words: Record<Voice['is'], readonly [big: string, small: string]> = {
  loading: ['Voice is loading', 'type meanwhile'],
  ready: ['Hold to talk', 'or tap once to start and once to end'],
  opening: ['A moment', 'the microphone is not open yet'],
  listening: ['Listening', 'let go to end'],
  hearing: ['Working it out', ''],
  speaking: ['Speaking', 'hold to cut in'],
  unavailable: ['Voice is off', 'type below the line'],
};

interface Props {
  readonly voice: Voice;
  readonly hold: Hold;
}

export function TalkBar({ voice, hold }: Props) {
  const { lit, warning } = useStore(microphone);
  const [big, usual] = words[voice.is];
  const small = smallWords(voice, usual, warning);
  const percent = voice.is === 'loading' ? Math.round(voice.part * 100) : 0;
  return (
    <button
      type="button"
      class={`talk ${voice.is}`}
      aria-pressed={voice.is === 'listening' || voice.is === 'opening' ? 'true' : 'false'}
      onPointerDown={(event: PointerEvent) => {
        if (event.button !== 0) return;
        (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
        hold.down();
      }}
      onPointerUp={hold.up}
      onPointerCancel={hold.lost}
      onLostPointerCapture={hold.up}
      onContextMenu={(event: Event) => event.preventDefault()}
    >
      <span class="talk-shape" aria-hidden="true" />
      <span class="talk-words">
        <b>{big}</b>
        <small>{small}</small>
      </span>
      {voice.is === 'loading' ? <progress class="talk-progress" max="100" value={percent} aria-label="Voice loading" /> : null}
      <Meter lit={voice.is === 'listening' ? lit : 0} />
    </button>
  );
}

const warnings = { clipping: 'too loud: hold the microphone further off', quiet: 'hardly heard: bring the microphone closer' };

function smallWords(voice: Voice, usual: string, warning: Level['warning']): string {
  if (voice.is === 'listening' && warning) return warnings[warning];
  if (voice.is === 'listening' && voice.latched) return 'tap to end';
  if (voice.is === 'unavailable') return voice.why;
  if (voice.is === 'loading') return `${Math.round(voice.part * 100)} %, type meanwhile`;
  return usual;
}

const ticks = Array.from({ length: meterTicks }, (_, index) => index);

/** The level as a rule that fills from the left. */
function Meter({ lit }: { lit: number }) {
  return (
    <svg class="meter" viewBox="0 0 330 12" preserveAspectRatio="none" aria-hidden="true">
      {ticks.map((tick) => (
        <rect
          key={tick}
          class={tick < lit ? 'lit' : 'unlit'}
          x={tick * 10}
          y={tick % 4 === 0 ? 0 : 4}
          width="4"
          height={tick % 4 === 0 ? 12 : 8}
        />
      ))}
    </svg>
  );
}
