// The turn line: text -> intents -> dialogue -> events on disk -> reply. The page, the terminal and the demo all come through here.
import { createHash } from 'node:crypto';
import type { Heard, JobView, Know, Reply, Shop, Turn } from '#dialogue';
import type { Log, Receipt } from '#log';
import { noJob } from '#log';
import type { EventBody, JobId, JobRecord } from '#log/events';
import type { DeskAction, DeskResponse, TurnRequest, TurnResponse } from '#wire';
import { knowOf } from './know.ts';
import type { ProblemCode } from './problem.ts';
import type { Speech } from './speech.ts';

export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: ProblemCode; readonly detail?: string };

export interface Turns {
  /** Takes an utterance; the same id and body again gets the first answer. `invented` marks a job that it opens. */
  take(request: TurnRequest, who: string, invented?: boolean): Outcome<TurnResponse>;
  /** The desk's hand on a job. */
  desk(id: JobId, action: DeskAction, who: string): Outcome<DeskResponse>;
  /** The job as the page shows it. */
  view(job: JobRecord): JobView;
  know(): Know;
}

/** Waited longer than this is as good as for ever: a clock that was put right meanwhile. */
const longestMs = 366 * 86_400_000;

/** `changed` hears of each turn after it is on disk. `clock` gives ISO time. */
export function createTurns(log: Log, speech: Speech, clock: () => string, changed?: (turn: Changed) => void): Turns {
  const know = (): Know => knowOf(log, speech);
  /** A job's view is asked for after each turn and before the next: made once while job and shop stay the same. */
  const seen = new WeakMap<JobRecord, { readonly shop: Shop; readonly view: JobView }>();

  function view(job: JobRecord, known: Know): JobView {
    const before = seen.get(job);
    if (before?.shop === known.shop) return before.view;
    const made = speech.view(job, known);
    seen.set(job, { shop: known.shop, view: made });
    return made;
  }

  function take(request: TurnRequest, who: string, invented = false): Outcome<TurnResponse> {
    const { waitedMs: _waited, ...lasting } = request;
    const digest = digestOf(lasting);
    const before = log.receipt(request.id);
    if (before) return before.digest === digest ? again(before) : { ok: false, code: 'idReused' };
    const job = request.job === null ? null : log.job(request.job);
    if (request.job !== null && !job) return { ok: false, code: 'noSuchJob' };
    const now = clock();
    const known = know();
    const heard = hear(request, job, now, known);
    const turn = takenOver(speech.takeTurn(job, heard, now, known), heard, now, known);
    const did = invented ? turn.events.map(marked) : turn.events;
    const events: EventBody[] = [heardEvent(request, heard), ...did, repliedEvent(turn.reply)];
    const target = turn.open === 'new' ? null : (turn.open?.switchTo ?? request.job ?? noJob);
    const added = { turn: request.id, job: target, at: now, who, events, receipt: { digest, reply: turn.reply } };
    const value = log.append(added, ({ record, seq }) => answer(record, seq, turn.reply, events));
    log.onceOnDisk(() => changed?.({ job: value.job ?? noJob, seq: value.seq, who, turn: request.id }));
    return { ok: true, value };
  }

  /** A turn that names another job is taken by that job. */
  function takenOver(turn: Turn, heard: Heard, now: string, known: Know): Turn {
    const open = turn.open;
    if (open === undefined || open === 'new') return turn;
    const job = log.job(open.switchTo);
    if (!job) throw new TypeError('a turn switched to a job that is not there');
    return { ...speech.takeTurn(job, heard, now, known), open };
  }

  /** When it was spoken counts by our clock alone: a device's own may be hours off. */
  function hear(request: TurnRequest, job: JobRecord | null, now: string, known: Know): Heard {
    const expects = job ? view(job, known).expects : undefined;
    return {
      turn: request.id,
      understanding: speech.understand(request.text, expects),
      heardBy: request.heardBy,
      ...(request.confidence === undefined ? {} : { confidence: request.confidence }),
      runnersUp: (request.alternatives ?? []).map((text) => speech.understand(text, expects)),
      heardAt: new Date(Date.parse(now) - Math.min(request.waitedMs ?? 0, longestMs)).toISOString(),
    };
  }

  function answer(record: JobRecord | null, seq: number, reply: Reply, events: readonly EventBody[]): TurnResponse {
    const intents = events.flatMap((event) => (event.kind === 'heard' ? event.intents : []));
    return { job: record?.id ?? null, seq, reply, intents, events, view: record && view(record, know()) };
  }

  function again(receipt: Receipt): Outcome<TurnResponse> {
    const events = log.eventsBetween(receipt.job, receipt.first, receipt.seq).map(({ body }) => body);
    return { ok: true, value: answer(log.job(receipt.job), receipt.seq, receipt.reply as Reply, events) };
  }

  function desk(id: JobId, action: DeskAction, who: string): Outcome<DeskResponse> {
    const digest = digestOf({ ...action, job: id });
    const before = log.receipt(action.id);
    if (before) return before.digest === digest ? deskAgain(before) : { ok: false, code: 'idReused' };
    const job = log.job(id);
    if (!job) return { ok: false, code: 'noSuchJob' };
    if (job.version !== action.version) return { ok: false, code: 'stale' };
    const now = clock();
    const known = know();
    const outcome = speech.deskAction(job, action, now, known);
    if ('refused' in outcome) return { ok: false, code: 'deskRefused', detail: outcome.refused };
    const added = { turn: action.id, job: id, at: now, who, events: outcome.events, receipt: { digest } };
    const value = log.append(added, ({ record, seq }) => ({
      seq,
      events: outcome.events,
      view: view(record ?? job, known),
    }));
    log.onceOnDisk(() => changed?.({ job: id, seq: value.seq, who, turn: action.id }));
    return { ok: true, value };
  }

  function deskAgain({ job, first, seq }: Receipt): Outcome<DeskResponse> {
    const record = log.job(job);
    if (!record) return { ok: false, code: 'noSuchJob' };
    const events = log.eventsBetween(job, first, seq).map(({ body }) => body);
    return { ok: true, value: { seq, events, view: view(record, know()) } };
  }

  return { take, desk, know, view: (job) => view(job, know()) };
}

export interface Changed {
  readonly job: JobId;
  readonly seq: number;
  readonly who: string;
  readonly turn: string;
}

function heardEvent(request: TurnRequest, { understanding }: Heard): EventBody {
  const { text, heardBy, heardAt, confidence, alternatives } = request;
  const { intents, unclaimed } = understanding;
  return {
    kind: 'heard',
    text,
    heardBy,
    heardAt,
    intents,
    unclaimed,
    ...(confidence === undefined ? {} : { confidence }),
    ...(alternatives === undefined ? {} : { alternatives }),
  };
}

function marked(event: EventBody): EventBody {
  return event.kind === 'jobOpened' ? { ...event, invented: true } : event;
}

function repliedEvent({ code, also, speak, show, readBack }: Reply): EventBody {
  return { kind: 'replied', code, ...(also ? { also } : {}), speak, show, ...(readBack ? { readBack } : {}) };
}

/** Same for the same request whatever the order of its keys. */
function digestOf(request: object): string {
  const sorted = Object.entries(request).sort(([a], [b]) => (a < b ? -1 : 1));
  return createHash('sha256').update(JSON.stringify(sorted)).digest('base64url');
}
