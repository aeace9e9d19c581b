// What each kind of intent does to the turn.
import type { Intent, MeasureIntent, Where } from '#intents';
import { type Draft, say } from '../draft.ts';
import { hintsFor } from '../hints.ts';
import { settle } from '../settle.ts';
import { repairLine } from '../wording/repair.ts';
import { obey } from './command.ts';
import { correct, strike } from './correct.ts';
import { takeNote } from './note.ts';
import { bareNumber, sided, takeHere } from './quantity.ts';
import { question } from './question.ts';

export function hear(draft: Draft, intent: Intent): Draft {
  switch (intent.kind) {
    case 'measure':
      return alsoSaid(takeHere(draft, intent.field, sided(draft, intent.field, intent)), intent);
    case 'quantity':
      return bareNumber(draft, intent);
    case 'correct':
      return correct(draft, intent);
    case 'strike':
      return strike(draft, intent);
    case 'command':
      return obey(draft, intent);
    case 'question':
      return question(settle(draft), intent);
    case 'note':
      return takeNote(settle(draft), intent.text);
    case 'problem':
      return say(draft, repairLine('impossible', { message: intent.message }, draft.know.shop));
    case 'unknown':
      return notUnderstood(draft, intent.text);
  }
}

/** What the same words told besides: the kind of brake with its size, the load range with the tyre. */
function alsoSaid(draft: Draft, { also, ...rest }: MeasureIntent): Draft {
  return also ? takeHere(draft, also.field, { ...placeIn(rest), value: also.value }) : draft;
}

const placeIn = ({ axle, stage }: Where): Where => ({ ...(axle && { axle }), ...(stage && { stage }) });

const ladder = ['notUnderstood', 'notUnderstoodAgain', 'notUnderstoodStill'] as const;

/** Never the same words twice: each failure in a row has its own. */
function notUnderstood(draft: Draft, text: string): Draft {
  const before: readonly string[] = ladder;
  const last = before.indexOf(draft.job.lastReply?.code ?? '');
  const code = ladder[Math.min(last + 1, ladder.length - 1)] ?? 'notUnderstood';
  return say(draft, repairLine(code, { heard: text, could: hintsFor(draft.job, draft.know.shop) }, draft.know.shop));
}
