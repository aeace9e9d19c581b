import { listed } from '../words.ts';
import { speaker, type Wording } from './line.ts';

type Hint = { readonly heard: string; readonly could: readonly string[] };

export interface RepairFacts {
  readonly notUnderstood: Hint;
  readonly notUnderstoodAgain: Hint;
  readonly notUnderstoodStill: Hint;
  readonly notCaught: { readonly words: string };
  readonly impossible: { readonly message: string };
  readonly nothingAsked: Record<string, never>;
  readonly questionIsOld: { readonly question: string };
  readonly moreOfWhat: Record<string, never>;
  readonly nothingToUndo: Record<string, never>;
  readonly undone: { readonly what: readonly string[] };
  readonly nothingToDeny: Record<string, never>;
  readonly leftAsIs: Record<string, never>;
  readonly help: { readonly could: readonly string[] };
  readonly silence: Record<string, never>;
  readonly nothingSaid: Record<string, never>;
}

const could = (hints: readonly string[]) => `You can say: ${listed(hints, 'or')}.`;

const words: Wording<RepairFacts> = {
  notUnderstood: ({ heard, could: hints }) => ({
    tone: 'refused',
    speak: `not understood. ${could(hints)}`,
    show: `Heard "${heard}", not understood.\n${could(hints)}`,
  }),
  notUnderstoodAgain: ({ heard, could: hints }) => ({
    tone: 'refused',
    speak: `still not. Put it another way, the name first and then the number: ${hints[0] ?? 'hub face seventy-two'}.`,
    show: `Heard "${heard}", still not understood.\nName first, then the number: ${hints[0] ?? 'hub face 72'}`,
  }),
  notUnderstoodStill: ({ heard, could: hints }) => ({
    tone: 'refused',
    speak: `say it in other words, a number digit by digit, or type it. Or go on: ${hints.at(-1) ?? 'next'}.`,
    show: `Heard "${heard}".\nOther words, a number digit by digit, or type it.`,
  }),
  notCaught: ({ words: lost }) => ({ tone: 'refused', speak: `I did not catch: ${lost}.`, show: `Not caught: "${lost}"` }),
  impossible: ({ message }) => ({ tone: 'refused', speak: message }),
  nothingAsked: () => ({ tone: 'refused', speak: 'nothing waits for a yes.' }),
  questionIsOld: ({ question }) => ({ tone: 'ask', speak: `that was asked a while ago. ${question}` }),
  moreOfWhat: () => ({ tone: 'refused', speak: 'what about it? Ask it whole, like what torque for the wheel nuts.' }),
  nothingToUndo: () => ({ tone: 'refused', speak: 'nothing to undo.' }),
  undone: ({ what }) => ({ tone: 'taken', speak: `undone: ${listed(what)}.` }),
  nothingToDeny: () => ({ tone: 'refused', speak: 'no to what? Say the name and the value.' }),
  leftAsIs: () => ({ tone: 'taken', speak: 'left as it is.' }),
  help: ({ could: hints }) => ({ tone: 'answer', speak: could(hints) }),
  silence: () => ({ tone: 'refused', speak: 'I heard nothing.' }),
  nothingSaid: () => ({ tone: 'answer', speak: 'nothing said yet.' }),
};

export const repairLine = speaker(words);
