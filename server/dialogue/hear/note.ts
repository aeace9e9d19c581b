// Notes and reminders. A defect mentioned in a note becomes an open point.

import type { Said } from '#intents';
import { damageAnswer } from '../answers/service.ts';
import { type Draft, emit, nextId, say } from '../draft.ts';
import { jobLine } from '../wording/jobs.ts';

/** A crack in a hanger is no bearing damage. */
const bearingWords = /\b(bearing|cone|cup|race|roller|cage)s?\b/i;

export function takeNote(draft: Draft, words: string): Draft {
  const text = words.trim();
  const { shop, readNote } = draft.know;
  if (text === '') return say(draft, jobLine('emptyNote', {}, shop));
  const reading = readNote(text);
  const noted = emit(draft, { kind: 'noteTaken', id: nextId(draft, 'n'), text, reading });
  const told = say(noted, jobLine('noted', { text, defect: reading.seriousness !== 'info' }, shop));
  const damage = bearingWords.test(text) ? damageAnswer(text) : undefined;
  return damage ? say(told, { code: damage.code, tone: 'answer', speak: damage.speak, show: damage.show }) : told;
}

export function remind(draft: Draft, words: string | undefined, said?: Said): Draft {
  const text = (words ?? '').trim();
  const { shop } = draft.know;
  if (text === '') return say(draft, jobLine('emptyNote', {}, shop));
  const miles = said?.unit === 'mi' ? said.value : undefined;
  const set = emit(draft, { kind: 'reminderSet', id: nextId(draft, 'r'), text, ...(miles ? { dueMiles: miles } : {}) });
  return say(set, jobLine('reminder', { text }, shop));
}
