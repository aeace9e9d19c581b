// A turn while it is being made: the job as it will stand, the events so far, and what is to be said.
import type { Asked, EventBody, JobRecord, ValueId } from '#log/events';
import { fold } from '#log/events';
import { inShop, type JobHere } from './plan.ts';
import type { Heard, Know, Reply } from './types.ts';

/** One thing to say, already in words. `values` are those it reads back. */
export interface Line {
  readonly code: string;
  readonly tone: Reply['tone'];
  readonly speak: string;
  readonly show: string;
  readonly values?: readonly ValueId[];
}

export interface Draft {
  readonly job: JobHere;
  readonly events: readonly EventBody[];
  readonly lines: readonly Line[];
  readonly heard: Heard;
  readonly now: string;
  readonly know: Know;
  /** What was asked when the utterance came in. */
  readonly wasAsked?: Asked;
  /** Spoken too late, or before the question was put: it answers and confirms nothing. */
  readonly late: boolean;
  /** The turn whose reply was spoken last. */
  readonly lastTurn: string;
  readonly pace?: 'slow';
}

export function emit(draft: Draft, ...bodies: readonly EventBody[]): Draft {
  const job = bodies.reduce<JobRecord>(
    (left, body) => fold(left, { seq: left.version, job: left.id, turn: draft.heard.turn, at: draft.now, who: '', body }),
    draft.job,
  );
  return { ...draft, job: inShop(job, draft.know), events: [...draft.events, ...bodies] };
}

export function say(draft: Draft, ...lines: readonly Line[]): Draft {
  return { ...draft, lines: [...draft.lines, ...lines] };
}

/** Asks; whatever was being asked is replaced. The question's own line goes with it. */
export function ask(draft: Draft, asked: Omit<Asked, 'id' | 'question'>, line: Line): Draft {
  const id = `${draft.heard.turn}.q${draft.events.filter(({ kind }) => kind === 'asked').length}`;
  return say(emit(closeAsk(draft, 'replaced'), { kind: 'asked', asked: { ...asked, id, question: line.speak } }), line);
}

/** The question of an earlier turn that this utterance may answer. */
export function openQuestion({ job, wasAsked }: Draft): Asked | undefined {
  return wasAsked && job.asked?.id === wasAsked.id ? wasAsked : undefined;
}

export function closeAsk(draft: Draft, outcome: 'yes' | 'no' | 'replaced' | 'expired'): Draft {
  const { asked } = draft.job;
  return asked ? emit(draft, { kind: 'askClosed', id: asked.id, outcome }) : draft;
}

/** Id for the next value, note or reminder of this turn. */
export function nextId(draft: Draft, letter: string): string {
  const made = draft.events.filter(({ kind }) => kind === 'valueHeard' || kind === 'noteTaken' || kind === 'reminderSet');
  return `${draft.heard.turn}.${letter}${made.length}`;
}
