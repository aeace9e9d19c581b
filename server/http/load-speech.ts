// The language and the dialogue, brought together for whoever takes turns.
import { deskAction, takeTurn, view } from '#dialogue';
import { understand } from '#intents';
import { readNote } from '#intents/notes';
import { procedureFolder, readPractice } from './procedures.ts';
import type { Speech } from './speech.ts';

/** With the shop's own procedures that lie beside its database, if one is named. @throws ProcedureFault */
export async function loadSpeech(database?: string): Promise<Speech> {
  const practice = database === undefined ? undefined : readPractice(procedureFolder(database));
  return { understand, readNote, takeTurn, view, deskAction, ...(practice ? { practice } : {}) };
}
