// The language and the dialogue, brought together for whoever takes turns.
import { deskAction, takeTurn, view } from '#dialogue';
import { understand } from '#intents';
import { readNote } from '#intents/notes';
import type { Speech } from './speech.ts';

export async function loadSpeech(): Promise<Speech> {
  return { understand, readNote, takeTurn, view, deskAction };
}
