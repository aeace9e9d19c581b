// One turn. Read it from top to bottom: what was asked, what was said, what is read back, what is answered.
import { policy } from '#data';
import { type CommandIntent, type Intent, spelling, understand } from '#intents';
import { emptyJob, type JobRecord } from '#log/events';
import { closeAsk, type Draft, emit, openQuestion, say } from './draft.ts';
import { expectsOf } from './expects.ts';
import { answerTo } from './hear/asked.ts';
import { hear } from './hear/index.ts';
import { jobsKnown, numberSaid, openJob } from './hear/jobs.ts';
import { sideUntold } from './hear/quantity.ts';
import { inShop } from './plan.ts';
import { askAbout, askedNow, goOn, settle } from './settle.ts';
import type { Heard, Know, Reply, Turn } from './types.ts';
import { byId, isLive } from './values.ts';
import { jobLine } from './wording/jobs.ts';
import { repairLine } from './wording/repair.ts';
import { mannerOf, sayCount } from './words.ts';

/** What one utterance does to a job (null: none is open). `heard` and `replied` are added by whoever commits the turn. */
export function takeTurn(job: JobRecord | null, heard: Heard, now: string, know: Know): Turn {
  const opening = jobCommand(job, heard, now, know);
  if (opening) return opening;
  if (!job) return finish(withoutJob(start(null, heard, now, know)));
  const draft = start(job, heard, now, know);
  return finish(goOn(sideUntold(reAsk(settle(expire(said(draft)))))));
}

function start(job: JobRecord | null, heard: Heard, now: string, know: Know): Draft {
  const waited = Date.parse(now) - Date.parse(heard.heardAt);
  const from = inShop(job ?? emptyJob(''), know);
  return {
    job: from,
    events: [],
    lines: [],
    heard,
    now,
    know,
    late: waited > policy.lateSeconds * 1000,
    lastTurn: from.lastReply?.turn ?? '',
    ...(from.asked ? { wasAsked: from.asked } : {}),
  };
}

/** Everything that was said, in order. What answers the open question is not taken a second time. */
function said(draft: Draft): Draft {
  const { intents, unclaimed, text } = draft.heard.understanding;
  const asked = openQuestion(draft);
  const answered = asked && answerTo(draft, asked);
  if (answered) return answered;
  if (draft.job.status === 'closed' && !intents.some(worksWhenClosed))
    return say(draft, jobLine('isClosed', {}, draft.know.shop));
  if (intents.length === 0) return silence(draft, text);
  const done = joined(intents).reduce(hear, awake(draft));
  const lost = unclaimed.join(' ').trim();
  const told = intents.some(({ kind }) => kind === 'unknown' || kind === 'problem');
  return lost !== '' && !told ? say(done, repairLine('notCaught', { words: lost }, draft.know.shop)) : done;
}

/** Work on a job that is on hold takes it up again. */
function awake(draft: Draft): Draft {
  const works = draft.heard.understanding.intents.some(
    ({ kind }) => kind === 'measure' || kind === 'quantity' || kind === 'note',
  );
  return draft.job.status === 'paused' && works ? emit(draft, { kind: 'resumed' }) : draft;
}

/** "No" with a value behind it is one correction; words behind "skip" are its reason. */
function joined(intents: readonly Intent[]): readonly Intent[] {
  return intents.flatMap((intent, i): readonly Intent[] => {
    const before = intents[i - 1];
    const after = intents[i + 1];
    if (isDeny(intent) && after && isValue(after)) return [];
    if (before && isDeny(before) && isValue(intent)) return [{ ...intent, kind: 'correct' }];
    if (isBareSkip(intent) && after && isWords(after)) return [{ ...intent, rest: after.text }];
    return before && isBareSkip(before) && isWords(intent) ? [] : [intent];
  });
}

const isValue = (intent: Intent) => intent.kind === 'quantity' || intent.kind === 'measure';
const isWords = (intent: Intent) => intent.kind === 'unknown' || intent.kind === 'note';
const isBareSkip = (intent: Intent): intent is CommandIntent =>
  intent.kind === 'command' && intent.name === 'skip' && !intent.rest;
const isDeny = (intent: Intent): boolean => intent.kind === 'command' && intent.name === 'deny';

function silence(draft: Draft, text: string): Draft {
  return text.trim() === '' ? say(draft, repairLine('silence', {}, draft.know.shop)) : hear(draft, { kind: 'unknown', text });
}

const worksWhenClosed = (intent: Heard['understanding']['intents'][number]): boolean =>
  intent.kind === 'question' ||
  (intent.kind === 'command' && ['repeat', 'readBack', 'undo', 'help', 'slower', 'confirm'].includes(intent.name));

/** A question that was not answered lapses with the next utterance. */
function expire(draft: Draft): Draft {
  return openQuestion(draft) ? closeAsk(draft, 'expired') : draft;
}

/** A value whose question lapsed is asked about once more, when nothing else is being asked. */
function reAsk(draft: Draft): Draft {
  const { wasAsked, job } = draft;
  if (!wasAsked || wasAsked.again || askedNow(draft) || job.asked || job.status !== 'open') return draft;
  if (wasAsked.about !== 'value' && wasAsked.about !== 'alternatives') return draft;
  const waiting = wasAsked.valueIds
    .map((id) => byId(job, id))
    .filter((value) => value !== undefined && value.status === 'heard' && isLive(value));
  return waiting.length > 0 ? askAbout(draft, waiting as never, 0, true) : draft;
}

/** Opening and switching come first: they decide which job the turn belongs to. */
function jobCommand(job: JobRecord | null, heard: Heard, now: string, know: Know): Turn | undefined {
  const intent = heard.understanding.intents.find(isJobCommand);
  if (!intent) return undefined;
  const number = numberSaid({ heard }, intent);
  const known = know.jobs.find(({ id }) => id === number);
  if (known && known.id !== job?.id) {
    return {
      open: { switchTo: known.id },
      events: [],
      reply: bare(jobLine('switched', { number: known.id, title: known.title }, know.shop)),
    };
  }
  if (intent.name === 'openJob') return job ? takeTurn(null, heard, now, know) : undefined;
  if (number === undefined || known) return undefined;
  return { events: [], reply: bare(jobLine('noSuchJob', { said: number, known: jobsKnown(know) }, know.shop)) };
}

const isJobCommand = (one: Intent): one is CommandIntent =>
  one.kind === 'command' && (one.name === 'openJob' || one.name === 'resume');

const bare = ({ code, tone, speak, show }: ReturnType<typeof jobLine>): Reply => ({
  code,
  tone,
  speak,
  show,
  expects: { fields: [], yesNo: false },
});

/** Measuring with no job open opens one, so that nothing called out is lost; a question needs none. */
function withoutJob(draft: Draft): Draft {
  const { intents, text } = draft.heard.understanding;
  const open = intents.find((intent): intent is CommandIntent => intent.kind === 'command' && intent.name === 'openJob');
  const title = [open?.rest, ...(open ? intents.flatMap((intent) => (intent.kind === 'unknown' ? [intent.text] : [])) : [])];
  const said = intents.filter((intent) => intent !== open && !(open && intent.kind === 'unknown'));
  const rest = [...axlesIn(open?.rest ?? ''), ...said];
  if (open || rest.some(({ kind }) => kind === 'measure' || kind === 'note'))
    return settle(rest.reduce(hear, openJob(draft, title.filter(Boolean).join(', '))));
  const asks = rest.length > 0 && rest.every(({ kind }) => kind === 'question');
  if (asks) return { ...rest.reduce(hear, draft), events: [] };
  const known = jobsKnown(draft.know);
  const resuming = intents.some((intent) => intent.kind === 'command' && intent.name === 'resume');
  if (resuming && known.length > 0) return say(draft, jobLine('whichJob', { known }, draft.know.shop));
  return say(draft, jobLine('noJob', { heard: text }, draft.know.shop));
}

/** "Hub service on a tandem axle trailer": what a job is opened on says how many axles it has. */
const axlesIn = (title: string): readonly Intent[] =>
  understand(title).intents.filter((intent) => intent.kind === 'measure' && intent.field === 'axleCount');

const weight: Readonly<Record<Reply['tone'], number>> = { ask: 5, refused: 4, caution: 3, answer: 2, step: 1, taken: 0 };

/** No figures reach the voice: those in titles and notes become words too. */
const wordsOnly = (text: string): string =>
  text.replace(/\d+/g, (digits) =>
    digits.length < 5 ? sayCount(Number(digits)) : [...digits].map(Number).map(sayCount).join(' '),
  );

/** All lines in the order they were made; the weightiest names the reply. */
function finish(draft: Draft): Turn {
  const { lines, events, job } = draft;
  const first = lines.toSorted((a, b) => weight[b.tone] - weight[a.tone])[0] ?? repairLine('silence', {}, draft.know.shop);
  const also = [...new Set(lines.map(({ code }) => code))].filter((code) => code !== first.code);
  const readBack = [...new Set(lines.flatMap(({ values }) => values ?? []))];
  const opened = events.some(({ kind }) => kind === 'jobOpened');
  return {
    ...(opened ? { open: 'new' as const } : {}),
    events,
    reply: {
      code: first.code,
      ...(also.length > 0 ? { also } : {}),
      tone: first.tone,
      speak: spelling(wordsOnly(lines.map(({ speak }) => speak).join(' ')), mannerOf(draft.know.shop)),
      show: spelling(lines.map(({ show }) => show).join('\n'), mannerOf(draft.know.shop)),
      expects: expectsOf(job),
      ...(readBack.length > 0 ? { readBack } : {}),
      ...(draft.pace ? { pace: draft.pace } : {}),
    },
  };
}
