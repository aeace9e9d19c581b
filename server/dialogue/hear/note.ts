// Notes and reminders. A defect mentioned in a note becomes an open point.

import type { Said } from '#intents';
import { bearingWords, damageAnswer } from '../answers/service.ts';
import { type Draft, emit, nextId, say } from '../draft.ts';
import { jobLine } from '../wording/jobs.ts';

/** Damage with no part named: what only bearings show, or any while the bearings are in hand. */
const ofBearings = new Set([
  'flaking',
  'surface',
  'smearing',
  'fretting',
  'falseBrinell',
  'brinell',
  'indent',
  'fluting',
  'cage',
]);

function isOfBearing({ job }: Draft, text: string): boolean {
  const code = damageAnswer(text)?.code.replace('damage.', '') ?? '';
  return ofBearings.has(code) || job.currentStep?.startsWith('hubBearing/') === true;
}

export function takeNote(draft: Draft, words: string): Draft {
  const text = words.trim();
  const { shop, readNote } = draft.know;
  if (text === '') return say(draft, jobLine('emptyNote', {}, shop));
  const read = readNote(text);
  const damage =
    bearingWords.test(text) || (read.part === undefined && isOfBearing(draft, text)) ? damageAnswer(text) : undefined;
  const reading = damage && read.seriousness === 'info' ? { ...read, seriousness: 'wear' as const } : read;
  const noted = emit(draft, { kind: 'noteTaken', id: nextId(draft, 'n'), text, reading });
  const told = say(noted, jobLine('noted', { text, defect: reading.seriousness !== 'info' }, shop));
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
