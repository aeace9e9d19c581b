// "Does it fit?" and "Why?": one axle against this trailer.
import { type Candidate, judge, needsOf, type Row, rank, type Verdict } from '#core';
import type { QuestionIntent } from '#intents';
import type { EventBody, JobRecord } from '#log/events';
import type { Answer, Answerer, Know } from '../types.ts';
import { mannerOf, sentence } from '../words.ts';
import { candidateOf, described, givenValues, readingsOf } from './fitment-job.ts';
import { type Voice, voiceOf } from './fitment-say.ts';
import { checkNames, remedyWords, resultWords, rowLine } from './fitment-words.ts';

export const fits: Answerer = (question, job, know) => {
  const asked = askedVerdict(question, job, know);
  return asked ? told(asked, know, { code: 'verdict', chosen: true }) : whichAxle(know);
};

/** The last verdict again, with every row that settles it. */
export const why: Answerer = (question, job, know) => {
  const asked = askedVerdict(question, job, know);
  return asked ? told(asked, know, { code: 'verdictWhy', chosen: false, spoken: 4 }) : whichAxle(know);
};

/** The axle that is named or chosen, or the best of those that are as described. */
function askedVerdict(question: QuestionIntent, job: JobRecord, know: Know): Verdict | undefined {
  const needs = needsOf(readingsOf(job));
  const candidate = candidateOf(question, job, know);
  if (candidate) return judge(needs, candidate);
  const like = described(question, know);
  if (like.length > 0 && like.length < know.stock.length) return rank(needs, like, 1).best[0];
  const values = givenValues(question);
  return Object.keys(values).length > 0 ? judge(needs, { id: '', title: 'such an axle', values }) : undefined;
}

function whichAxle({ stock }: Know): Answer {
  const text =
    stock.length > 0 ? "Which axle? Ask what fits, and I'll look through the rack." : 'Which axle? Tell me its numbers.';
  return { code: 'whichAxle', speak: text, show: text, sources: [], rests: [], missing: [] };
}

interface Telling {
  readonly code: string;
  /** True where the answer makes this axle the job's candidate. */
  readonly chosen: boolean;
  readonly spoken?: number;
}

export function told(verdict: Verdict, know: Know, { code, chosen, spoken = 2 }: Telling): Answer {
  const manner = mannerOf(know.shop);
  return {
    code,
    speak: spokenVerdict(verdict, voiceOf(manner, true), spoken),
    show: shownVerdict(verdict, voiceOf(manner, false)),
    sources: [...new Set(verdict.because.map(({ source }) => source))],
    rests: verdict.rests,
    missing: verdict.result === 'cannotSayYet' ? verdict.missing : [],
    ...(verdict.result === 'fits' || verdict.result === 'fitsWithWork' ? { caution: makerFirst } : {}),
    ...(chosen ? { events: eventsOf(verdict) } : {}),
  };
}

const makerFirst = "The axle maker's own figures come first; a person signs for the fit.";

function eventsOf({ candidate, result, rests, unconfirmed }: Verdict): EventBody[] {
  const { id, title, values } = candidate;
  const verdict: EventBody = { kind: 'verdictGiven', verdict: result, rests, unconfirmed, ...(id ? { stock: id } : {}) };
  return id ? [{ kind: 'candidateChosen', stock: id, title, values: values as Record<string, string> }, verdict] : [verdict];
}

function spokenVerdict(verdict: Verdict, voice: Voice, most: number): string {
  const reasons = telling(verdict)
    .slice(0, most)
    .map((row) => sentence(rowLine(row, voice)));
  const work = verdict.because.find(({ remedy }) => remedy)?.remedy;
  const parts = [`${resultWords[verdict.result]}. ${sentence(voice.text(verdict.candidate.title))}`, ...reasons];
  if (work && verdict.result !== 'cannotSayYet') parts.push(`Needs ${remedyWords[work]}`);
  if (verdict.unconfirmed.length > 0)
    parts.push(`${voice.text(String(verdict.unconfirmed.length))} of the values are not confirmed`);
  return `${parts.join('. ')}.`;
}

/** Rows worth saying: for a fit those with the least to spare, else those that settle it. */
function telling({ result, because }: Verdict): readonly Row[] {
  if (result !== 'fits') return because;
  return because.filter(({ essential }) => essential);
}

function shownVerdict(verdict: Verdict, voice: Voice): string {
  const { candidate, result, rows } = verdict;
  const looked = rows.filter(
    (row) => row.result !== 'cannotSayYet' || row.essential || row.code === 'tooCoarse' || row.remedy === 'askTheState',
  );
  const rest = rows.filter((row) => !looked.includes(row));
  const lines = looked.map((row) => `${resultWords[row.result]} | ${rowLine(row, voice)}${work(row)}${unsure(row)}`);
  const unseen = rest.length > 0 ? [`Not checked: ${rest.map(({ check }) => checkNames[check]).join(', ')}`] : [];
  return [`${resultWords[result]}: ${titleOf(candidate)}`, ...lines, ...unseen].join('\n');
}

const titleOf = ({ id, title }: Candidate) => (id ? `${title} (${id})` : title);
const work = ({ remedy, result }: Row) =>
  remedy && result !== 'fits' && result !== 'cannotSayYet' ? `; needs ${remedyWords[remedy]}` : '';
const unsure = ({ unconfirmed }: Row) => (unconfirmed.length > 0 ? ' (not confirmed)' : '');
