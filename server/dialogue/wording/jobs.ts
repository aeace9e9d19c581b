import { listed, sayCount, sentence, withoutStop } from '../words.ts';
import { speaker, type Wording } from './line.ts';

type Points = readonly { readonly text: string; readonly say?: string; readonly safety?: boolean }[];

export interface JobFacts {
  readonly opened: { readonly title: string; readonly kind: string };
  readonly renamed: { readonly title: string; readonly was: string };
  readonly callItWhat: Record<string, never>;
  readonly noJob: { readonly heard: string };
  readonly jobOpenHere: { readonly title: string };
  readonly paused: { readonly open: number };
  readonly resumed: { readonly title: string };
  readonly switched: { readonly number: string; readonly title: string };
  readonly noSuchJob: { readonly said: string; readonly known: readonly string[] };
  readonly whichJob: { readonly known: readonly string[] };
  readonly isPaused: Record<string, never>;
  readonly isClosed: Record<string, never>;
  readonly cannotClose: { readonly because: Points };
  readonly askClose: { readonly open: Points; readonly ownWord: boolean };
  readonly closeNeedsWord: { readonly open: Points; readonly ownWord: boolean };
  readonly closed: { readonly open: number };
  readonly notClosed: Record<string, never>;
  readonly openPoints: { readonly open: Points };
  readonly noted: { readonly text: string; readonly defect: boolean };
  readonly emptyNote: Record<string, never>;
  readonly reminder: { readonly text: string };
  readonly askVerdict: Record<string, never>;
  readonly verdictTaken: Record<string, never>;
  readonly verdictNot: Record<string, never>;
  readonly unsure: { readonly names: readonly string[] };
  readonly notHere: { readonly topic: string };
  readonly thatFirst: Record<string, never>;
}

/** The first few are spoken, the rest stand on the screen. */
function first(points: Points, most: number): string {
  const said = points.slice(0, most).map(({ text, say }) => sentence(say ?? text));
  return points.length > most ? `${said.join('. ')}. And ${sayCount(points.length - most)} more on the screen` : said.join('. ');
}

const screen = (points: Points): string => points.map(({ text }) => text).join('\n');

const words: Wording<JobFacts> = {
  opened: ({ title, kind }) => ({ tone: 'taken', speak: `new job: ${title}.`, show: `New job: ${title}\n${kind}` }),
  renamed: ({ title, was }) => ({
    tone: 'taken',
    speak: `this job is now called ${title}.`,
    show: `This job: ${title}\n(was ${was})`,
  }),
  callItWhat: () => ({ tone: 'ask', speak: 'call it what?' }),
  noJob: ({ heard }) => ({
    tone: 'refused',
    speak: 'no job is open. Say: new job, and what the trailer is.',
    show: `Heard "${heard}", but no job is open.\nSay "new job" and what the trailer is.`,
  }),
  jobOpenHere: ({ title }) => ({ tone: 'refused', speak: `${title} is still open.` }),
  paused: ({ open }) => ({ tone: 'taken', speak: open > 0 ? 'on hold, with values still to confirm.' : 'on hold.' }),
  resumed: ({ title }) => ({ tone: 'taken', speak: `back on ${title}.` }),
  switched: ({ number, title }) => ({ tone: 'taken', speak: `job ${number}, ${title}.` }),
  noSuchJob: ({ said, known }) => ({
    tone: 'refused',
    speak: `no job ${said}. ${known.length > 0 ? `There is ${listed(known)}.` : 'Say new job.'}`,
  }),
  whichJob: ({ known }) => ({ tone: 'ask', speak: `which job: ${listed(known, 'or')}?` }),
  isPaused: () => ({ tone: 'refused', speak: 'the job is on hold. Say resume.' }),
  isClosed: () => ({ tone: 'refused', speak: 'this job is closed. Say new job, or reopen it at the desk.' }),
  cannotClose: ({ because }) => ({
    tone: 'refused',
    speak: `not closed. ${first(because, 3)}.`,
    show: `Not closed:\n${screen(because)}`,
  }),
  askClose: ({ open, ownWord }) => {
    const how = ownWord ? 'Say: close it anyway, or no.' : 'Close it with that open?';
    if (open.length === 0) return { tone: 'ask', speak: 'nothing open. Close the job?' };
    return { tone: 'ask', speak: `still open: ${first(open, 3)}. ${how}`, show: `Still open:\n${screen(open)}\n${how}` };
  },
  closeNeedsWord: ({ open }) => ({
    tone: 'ask',
    speak: 'a yes does not close a job with safety points open. Say: close it anyway, or no.',
    show: `A yes does not close a job with safety points open:\n${screen(open.filter(({ safety }) => safety))}\nSay: close it anyway, or no.`,
  }),
  closed: ({ open }) => ({ tone: 'taken', speak: open > 0 ? 'closed, the open points are on the sheet.' : 'closed.' }),
  notClosed: () => ({ tone: 'taken', speak: 'left open.' }),
  openPoints: ({ open }) => ({
    tone: 'answer',
    speak: open.length > 0 ? `${first(open, 3)}.` : 'nothing open.',
    show: open.length > 0 ? screen(open) : 'Nothing open.',
  }),
  noted: ({ text, defect }) => ({
    tone: 'taken',
    speak: defect ? `noted, and kept as an open point: ${withoutStop(text)}.` : `noted: ${withoutStop(text)}.`,
  }),
  emptyNote: () => ({ tone: 'ask', speak: 'note what?' }),
  reminder: ({ text }) => ({ tone: 'taken', speak: `I will remind you: ${withoutStop(text)}.` }),
  askVerdict: () => ({ tone: 'ask', speak: 'take that as the verdict?' }),
  verdictTaken: () => ({ tone: 'taken', speak: 'verdict taken.' }),
  verdictNot: () => ({ tone: 'taken', speak: 'verdict not taken.' }),
  unsure: ({ names }) => ({ tone: 'caution', speak: `it rests on values not confirmed: ${listed(names)}.` }),
  thatFirst: () => ({ tone: 'answer', speak: 'that first, then ask me again.' }),
  notHere: ({ topic }) => ({ tone: 'refused', speak: `I have no answer on ${topic}.` }),
};

export const jobLine = speaker(words);
