// Taking back the last turn that did anything, by events that say the opposite.
import type { EventBody, JobRecord } from '#log/events';
import { closeAsk, type Draft, emit, say } from '../draft.ts';
import { stepAt } from '../plan.ts';
import type { Shop } from '../types.ts';
import { byId } from '../values.ts';
import { repairLine } from '../wording/repair.ts';
import { clause, sayNamed } from '../words.ts';

export function undo(draft: Draft): Draft {
  const { shop } = draft.know;
  const last = draft.job.trail.findLast(({ undo: back, turn }) => back.length > 0 && turn !== draft.heard.turn);
  if (!last) return say(draft, repairLine('nothingToUndo', {}, shop));
  const what = last.undo.flatMap((body) => describe(body, draft.job, shop));
  const back = emit(closeAsk(draft, 'expired'), { kind: 'undone', turn: last.turn }, ...last.undo);
  return say(back, repairLine('undone', { what: what.length > 0 ? what.slice(0, 3) : ['the last one'] }, shop));
}

function describe(body: EventBody, job: JobRecord, shop: Shop): readonly string[] {
  switch (body.kind) {
    case 'valueStruck':
    case 'valueRestored': {
      const value = byId(job, body.id);
      return value ? [`${sayNamed(value, shop)}${body.kind === 'valueStruck' ? ' struck' : ' is back'}`] : [];
    }
    case 'stepReopened':
      return [`${clause(stepAt(job, body.step)?.step.say ?? 'the step')} is open again`];
    case 'jobRenamed':
      return [`the job is ${body.title} again`];
    case 'pointClosed':
      return ['the note'];
    case 'reminderDone':
      return ['the reminder'];
    case 'reopened':
      return ['the job is open again'];
    default:
      return [];
  }
}
