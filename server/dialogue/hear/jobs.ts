// Opening, leaving, finding and closing jobs.
import { type JobKind, jobKinds } from '#data';
import { type CommandIntent, understand } from '#intents';
import { closeAsk, type Draft, emit, say } from '../draft.ts';
import { openStepAfter } from '../plan.ts';
import { askAbout } from '../settle.ts';
import type { Know } from '../types.ts';
import { jobLine } from '../wording/jobs.ts';
import { sayCount, sentence, withoutStop } from '../words.ts';
import { sayStepAgain, showStep } from './steps.ts';

/** "a new job for a grey utility trailer, hub service" -> what kind, and its title. */
export function openJob(draft: Draft, rest: string | undefined): Draft {
  const words = (rest ?? titleIn(draft.heard.understanding.text)).trim();
  const kind = kindSaid(draft.heard.understanding.text);
  const title = words === '' ? kind.title : sentence(words);
  const opened = emit(draft, { kind: 'jobOpened', jobKind: kind.id, title });
  const told = say(opened, jobLine('opened', { title, kind: kind.title }, draft.know.shop));
  const first = openStepAfter(told.job, undefined);
  return first ? showStep(told, first) : told;
}

/** What stands behind the word job: "open a new job, hub service on a tandem". */
const titleIn = (text: string): string => /\bjob\b[\s,.:]*(?:for|on)?\s*(?<title>.*)$/i.exec(text)?.groups?.title ?? '';

/** The kind whose spoken name is in the words, the longest name first; an axle replacement where none is. */
function kindSaid(text: string): JobKind {
  const words = text.toLowerCase();
  const named = jobKinds.flatMap((kind) => kind.said.filter((name) => words.includes(name)).map((name) => ({ kind, name })));
  const longest = named.sort((a, b) => b.name.length - a.name.length)[0];
  const [usual] = jobKinds;
  if (!usual) throw new TypeError('data/jobs.json has no rows');
  return longest?.kind ?? usual;
}

/** "Two": the whole of the words is one number. */
function wholeNumber(words: string): string | undefined {
  const { intents, unclaimed } = understand(words);
  const [only] = intents;
  return intents.length === 1 && unclaimed.length === 0 && only?.kind === 'quantity' ? only.value : undefined;
}

/** The job that a number names ("job three", "resume 12"); undefined where no number was said. */
export function numberSaid({ heard }: Pick<Draft, 'heard'>, { rest }: CommandIntent): string | undefined {
  const number = /\d+/.exec(rest ?? '')?.[0] ?? wholeNumber(rest ?? '');
  const quantity = heard.understanding.intents.find((intent) => intent.kind === 'quantity');
  return number ?? (quantity?.kind === 'quantity' ? quantity.value : undefined);
}

export function jobsKnown({ jobs }: Know): readonly string[] {
  return jobs
    .filter(({ status }) => status !== 'closed')
    .slice(0, 3)
    .map(({ id, title }) => `job ${sayCount(Number(id))}, ${title}`);
}

export function rename(draft: Draft, rest: string | undefined): Draft {
  const title = sentence(withoutStop((rest ?? '').trim()));
  const { shop } = draft.know;
  if (title === '') return say(draft, jobLine('callItWhat', {}, shop));
  return say(emit(draft, { kind: 'jobRenamed', title }), jobLine('renamed', { title, was: draft.job.title }, shop));
}

export function pause(draft: Draft): Draft {
  const open = draft.job.values.filter(({ status }) => status === 'heard').length;
  return say(emit(closeAsk(draft, 'expired'), { kind: 'paused' }), jobLine('paused', { open }, draft.know.shop));
}

/** Back to a job: what was left unconfirmed is asked about, then where it stood. */
export function resume(draft: Draft): Draft {
  const { status, title } = draft.job;
  const { shop } = draft.know;
  if (status === 'closed') return say(draft, jobLine('isClosed', {}, shop));
  const back = status === 'paused' ? emit(draft, { kind: 'resumed' }) : draft;
  const told = sayStepAgain(say(back, jobLine('resumed', { title }, shop)));
  const waiting = told.job.values.filter((value) => value.status === 'heard').slice(0, 3);
  return waiting.length > 0 ? askAbout(told, waiting, 0, true) : told;
}
