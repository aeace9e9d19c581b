// Closing a job lists what is open and waits for a yes; where a point of safety is open, for a word that nobody says by habit.
import { ask, type Draft, say } from '../draft.ts';
import { blocksClosing, openPoints } from '../open.ts';
import { askAbout } from '../settle.ts';
import type { OpenPoint } from '../types.ts';
import { jobLine } from '../wording/jobs.ts';

/** Reminders stand after closing; everything else is left undone. */
export const leftForClosing = ({ job, know }: Draft): readonly OpenPoint[] =>
  openPoints(job, know.shop).filter(({ kind }) => kind !== 'reminder');

/** Lists what is open and asks; a value that clears someone to drive must be confirmed first. */
export function closeJob(draft: Draft): Draft {
  const { shop } = draft.know;
  if (draft.job.status === 'closed') return say(draft, jobLine('isClosed', {}, shop));
  const blocking = draft.job.values.filter(blocksClosing).slice(0, 3);
  if (blocking.length === 0) return askClosing(draft, 'askClose');
  const because = leftForClosing(draft).filter(({ kind, safety }) => kind === 'unconfirmed' && safety);
  return askAbout(say(draft, jobLine('cannotClose', { because }, shop)), blocking, 0, true);
}

export function askClosing(draft: Draft, code: 'askClose' | 'closeNeedsWord'): Draft {
  const open = leftForClosing(draft);
  const ownWord = open.some(({ safety }) => safety);
  const choices = ownWord ? { choices: ['close it anyway'] } : {};
  return ask(draft, { about: 'close', valueIds: [], ...choices }, jobLine(code, { open, ownWord }, draft.know.shop));
}
