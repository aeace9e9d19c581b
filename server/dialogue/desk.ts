// The desk's hand on a job, after the fact: every change carries its reason, nothing is deleted.
import { understand } from '#intents';
import type { EventBody, JobRecord, ValueFact, ValueRecord } from '#log/events';
import { unitSuits } from './doubts.ts';
import type { Know } from './types.ts';
import { byId, isLive } from './values.ts';

export interface DeskRequest {
  readonly id: string;
  readonly action: 'correct' | 'confirm' | 'strike' | 'annotate' | 'closePoint';
  readonly target: string;
  readonly value?: string;
  readonly reason: string;
}

export type DeskOutcome = { readonly events: readonly EventBody[] } | { readonly refused: string; readonly whatToDo: string };

/** Events for one action of the desk, or one plain sentence why not. */
export function deskAction(job: JobRecord, action: DeskRequest, _now: string, _know: Know): DeskOutcome {
  if (action.reason.trim() === '') return no('A change at the desk needs a reason.', 'Say why, in a few words.');
  if (action.action === 'closePoint') return closePoint(job, action);
  const value = byId(job, action.target);
  if (!value) return no(`This job has no value ${action.target}.`, 'Load the job again.');
  if (action.action === 'annotate') return { events: [{ kind: 'annotated', value: value.id, text: action.reason }] };
  if (!isLive(value))
    return no('That value was already corrected or struck.', 'Load the job again and change the one that stands.');
  switch (action.action) {
    case 'confirm':
      return {
        events: [
          { kind: 'valueConfirmed', id: value.id, how: 'desk' },
          { kind: 'annotated', value: value.id, text: action.reason },
        ],
      };
    case 'strike':
      return { events: [{ kind: 'valueStruck', id: value.id, reason: action.reason }] };
    case 'correct':
      return correct(value, action);
  }
}

function closePoint(job: JobRecord, { target, reason }: DeskRequest): DeskOutcome {
  if (job.notes.some(({ id, closed }) => id === target && closed === undefined))
    return { events: [{ kind: 'pointClosed', id: target, reason }] };
  if (job.reminders.some(({ id, done }) => id === target && !done))
    return {
      events: [
        { kind: 'reminderDone', id: target },
        { kind: 'annotated', text: reason },
      ],
    };
  return no(
    'Only a noted defect or a reminder can be closed at the desk.',
    'Confirm values one by one; steps are done in the bay.',
  );
}

/** Typed as it would be spoken; read by the same language, and by nothing else. */
function correct(old: ValueRecord, { id, value = '', reason }: DeskRequest): DeskOutcome {
  const { intents, unclaimed } = understand(value, { fields: [old.field], yesNo: false });
  const [said] = intents;
  const read = said?.kind === 'measure' || said?.kind === 'quantity' || said?.kind === 'correct' ? said : undefined;
  const other = said?.kind === 'measure' && said.field !== old.field;
  if (!read || other || intents.length > 1 || unclaimed.length > 0) {
    return no(`"${value}" does not read as one value.`, 'Type it as it would be spoken: 72 3/8.');
  }
  if (!unitSuits(old.field, read)) return no(`"${value}" is not a value of this kind.`, 'Type it with its unit, or without.');
  const {
    status: _s,
    at: _a,
    who: _w,
    turn: _t,
    notes: _n,
    correctedBy: _c,
    supersedes: _p,
    readBack: _r,
    asked: _q,
    reason: _y,
    confidence: _f,
    alternatives: _l,
    ...kept
  } = old;
  const fact: ValueFact = {
    ...kept,
    id: `${id}.v0`,
    value: read.value,
    raw: value,
    heardBy: 'typed',
    ...(read.unitSaid && read.unit ? { unit: read.unit } : {}),
  };
  return {
    events: [
      { kind: 'valueHeard', value: fact, supersedes: old.id },
      { kind: 'valueCorrected', id: old.id, by: fact.id, reason },
      { kind: 'valueConfirmed', id: fact.id, how: 'desk' },
    ],
  };
}

const no = (refused: string, whatToDo: string): DeskOutcome => ({ refused, whatToDo });
