// Stand-in until the dialogue's door is open: keeps what is said and says so. Goes away with it.
import * as dialogue from '#dialogue';
import * as intents from '#intents';
import type { Speech } from './speech.ts';

const nothing = { fields: [], yesNo: false };

const standIn: Speech = {
  understand: (text) => ({ text, normalised: text, intents: [{ kind: 'unknown', text }], unclaimed: [text] }),
  readNote: () => ({ seriousness: 'info' }),
  takeTurn: (job, { understanding: { text } }) => ({
    ...(job ? {} : { open: 'new' as const }),
    events: job ? [] : [{ kind: 'jobOpened', jobKind: 'axleReplacement', title: text }],
    reply: { code: 'kept', speak: `kept: ${text}`, show: `kept: ${text}`, tone: 'taken', expects: nothing },
  }),
  view: ({ id, version, title, kind, status, invented }) => ({
    id,
    version,
    title,
    kind,
    status,
    invented,
    card: [],
    open: [],
    expects: nothing,
  }),
  deskAction: () => ({ refused: 'not yet', whatToDo: 'wait' }),
};

export async function loadSpeech(): Promise<Speech> {
  return { ...standIn, ...pick(dialogue, ['takeTurn', 'view', 'deskAction']), ...pick(intents, ['understand']) };
}

function pick(room: object, names: readonly string[]): Partial<Speech> {
  return Object.fromEntries(Object.entries(room).filter(([name]) => names.includes(name)));
}
