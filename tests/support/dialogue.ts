// A conversation without a log: turns as pure functions, their events folded as the log would.
import { type Know, takeTurn, view } from '#dialogue';
import { understand } from '#intents';
import { readNote } from '#intents/notes';
import { type EventBody, emptyJob, fold, type JobEvent, type JobRecord } from '#log/events';

export const know: Know = {
  shop: { name: 'Test shop', lengthUnit: 'in', spelling: 'british', sides: { left: 'left', right: 'right' } },
  stock: [],
  jobs: [],
  readNote,
};

export interface Talk {
  readonly job: JobRecord | null;
  readonly events: readonly JobEvent[];
  readonly now: number;
}

export const silent: Talk = { job: null, events: [], now: Date.parse('2026-11-25T08:00:00.000Z') };

export const viewed = (job: JobRecord) => view(job, know);

/** One utterance, five seconds after the last one. */
export function say(talk: Talk, text: string, pauseMs = 5000): Talk {
  const now = talk.now + pauseMs;
  const at = new Date(now).toISOString();
  const turn = `t${talk.events.length}`;
  const understanding = understand(text, talk.job ? view(talk.job, know).expects : undefined);
  const { intents, unclaimed } = understanding;
  const taken = takeTurn(talk.job, { turn, understanding, heardBy: 'typed', runnersUp: [], heardAt: at }, at, know);
  const { code, speak, show, readBack } = taken.reply;
  const bodies: EventBody[] = [
    { kind: 'heard', text, heardBy: 'typed', intents, unclaimed, heardAt: at },
    ...taken.events,
    { kind: 'replied', code, speak, show, ...(readBack ? { readBack } : {}) },
  ];
  if (talk.job === null && taken.open !== 'new') return { ...talk, now };
  const fresh = taken.open === 'new';
  const before = fresh ? [] : talk.events;
  const added = bodies.map((body, i): JobEvent => ({ seq: before.length + i + 1, job: '1', turn, at, who: '', body }));
  const base = fresh || talk.job === null ? emptyJob('1') : talk.job;
  return { now, events: [...before, ...added], job: added.reduce(fold, base) };
}

export const sayAll = (talk: Talk, texts: readonly string[]): Talk => texts.reduce((left, text) => say(left, text), talk);
