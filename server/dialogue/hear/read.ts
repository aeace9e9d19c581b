// Telling what the job holds, without changing it.
import { policy } from '#data';
import type { QuestionIntent } from '#intents';
import { type Draft, say } from '../draft.ts';
import { openPoints } from '../open.ts';
import { askAbout, judgedLine } from '../settle.ts';
import { liveValues, unconfirmed } from '../values.ts';
import { jobLine } from '../wording/jobs.ts';
import { repairLine } from '../wording/repair.ts';
import { valueLine } from '../wording/values.ts';
import { showNamed } from '../words.ts';
import { repeatQuestion } from './asked.ts';

/** Everything on the screen; spoken three at a time, those that wait for a yes first and as a question. */
export function readBack(draft: Draft): Draft {
  const { shop } = draft.know;
  const live = liveValues(draft.job);
  if (live.length === 0) return say(draft, valueLine('haveNone', { field: undefined }, shop));
  const screen = live.map((value) => `${showNamed(value, shop)}${value.status === 'heard' ? ' (not confirmed)' : ''}`).join('\n');
  const waiting = unconfirmed(draft.job);
  const most = policy.valuesPerReadBack;
  if (waiting.length > 0) {
    const asking = askAbout(draft, waiting.slice(0, most), Math.max(0, waiting.length - most), true);
    return { ...asking, lines: asking.lines.map((line, i, all) => (i === all.length - 1 ? { ...line, show: screen } : line)) };
  }
  const line = valueLine('have', { values: live.slice(-most), unsure: [] }, shop);
  return say(draft, { ...line, show: screen });
}

/** "What have I got", "what's the hub face". */
export function valueAsked(draft: Draft, { of, given: _given, ...where }: QuestionIntent): Draft {
  const { shop } = draft.know;
  const field = liveValues(draft.job).find((value) => value.field === of)?.field;
  if (of === undefined) return readBack(draft);
  const found = liveValues(draft.job).filter(
    (value) => value.field === field && (where.side === undefined || value.side === where.side),
  );
  if (found.length === 0) return say(draft, valueLine('haveNone', { field: undefined }, shop));
  const last = found.slice(-policy.valuesPerReadBack);
  return say(draft, valueLine('have', { values: last, unsure: last.filter(({ status }) => status === 'heard') }, shop));
}

/** "Is that okay": the value told last, and what is to be said of it. */
export function judgeLast(draft: Draft): Draft {
  const { shop } = draft.know;
  const last = liveValues(draft.job).at(-1);
  if (!last) return say(draft, valueLine('haveNone', { field: undefined }, shop));
  const line = valueLine('have', { values: [last], unsure: last.status === 'heard' ? [last] : [] }, shop);
  return say(draft, line, ...judgedLine(draft, last, ['good', 'doubtful', 'bad']));
}

export function openAsked(draft: Draft): Draft {
  const open = openPoints(draft.job, draft.know.shop);
  return say(draft, jobLine('openPoints', { open }, draft.know.shop));
}

/** The last reply once more; a question is put anew. */
export function repeat(draft: Draft): Draft {
  const { asked, lastReply } = draft.job;
  if (asked) return repeatQuestion(draft, asked);
  if (!lastReply) return say(draft, repairLine('nothingSaid', {}, draft.know.shop));
  return say(draft, { code: 'repeat', tone: 'answer', speak: lastReply.speak, show: lastReply.show });
}
