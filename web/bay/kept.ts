// The server is not there: the sentence is still read here, and what it measures is read back, so that a mishearing is caught
// while the tape is still on the part.
import { type Expects, type Intent, sayField, sayValue, showField, showValue, understand } from '#intents';
import type { Settings } from '#wire';
import type { KeptValue } from './state.ts';

export interface KeptReading {
  readonly speak: string;
  readonly show: string;
  readonly values: readonly KeptValue[];
}

type Valued = Extract<Intent, { readonly kind: 'measure' | 'correct' }>;

export function readHere(turn: string, text: string, expects: Expects, settings: Settings): KeptReading {
  const { intents } = understand(text, expects);
  const valued = intents.filter((intent): intent is Valued => intent.kind === 'measure' || intent.kind === 'correct');
  const say = valued.map((intent) => [
    intent.field && sayField(intent.field, settings),
    sideOf(intent, settings),
    sayValue(intent.field, intent, settings),
  ]);
  const values = valued.map((intent) => ({
    turn,
    label: [intent.field ? showField(intent.field, settings) : 'correction', sideOf(intent, settings)].filter(Boolean).join(', '),
    shown: showValue(intent.field, intent, settings),
  }));
  const spoken = say.map((words) => words.filter(Boolean).join(' ')).join(', ');
  const shown = values.map(({ label, shown: value }) => `${label} ${value}`).join('; ');
  return {
    speak: spoken ? `${spoken}. Kept on this device, not sent.` : 'Kept on this device, not sent.',
    show: shown
      ? `${shown}. Kept on this device, not sent.`
      : 'Kept on this device, not sent. It is answered when the server is back.',
    values,
  };
}

function sideOf({ side }: Valued, { sides }: Settings): string | undefined {
  if (side === 'left' || side === 'right') return sides[side];
  return side === 'both' ? 'both sides' : undefined;
}
