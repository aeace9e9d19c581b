// "Does it fit?" and "Why?": one axle against this trailer.
import {
  type Candidate,
  type FitReading,
  judge,
  making,
  needsOf,
  type Row,
  rank,
  sensitivity,
  type Touchy,
  type Verdict,
} from '#core';
import type { QuestionIntent } from '#intents';
import type { EventBody, JobRecord } from '#log/events';
import type { Answer, Answerer, Know } from '../types.ts';
import { listed, mannerOf, sentence } from '../words.ts';
import { candidateOf, described, givenValues, type Placed, readingsOf } from './fitment-job.ts';
import { namedByPlace } from './fitment-named.ts';
import { type Voice, voiceOf } from './fitment-say.ts';
import { unseen, unseenLine, warnings } from './fitment-unseen.ts';
import { problemWords, remedyWords, resultWords, rowLine } from './fitment-words.ts';

export const fits: Answerer = (question, job, know) => {
  const readings = readingsOf(job);
  const asked = askedVerdict(question, job, know, readings);
  return asked ? told(asked, know, readings, { code: 'verdict', chosen: true }) : whichAxle(know);
};

/** The last verdict again, with every row that settles it. */
export const why: Answerer = (question, job, know) => {
  const readings = readingsOf(job);
  const asked = askedVerdict(question, job, know, readings);
  return asked ? told(asked, know, readings, { code: 'verdictWhy', chosen: false, spoken: 4 }) : whichAxle(know);
};

/** The axle that is named or chosen, or the best of those that are as described. */
function askedVerdict(
  question: QuestionIntent,
  job: JobRecord,
  know: Know,
  readings: readonly FitReading[],
): Verdict | undefined {
  const needs = needsOf(readings);
  const candidate = candidateOf(question, job, know);
  if (candidate) return judge(needs, candidate);
  const there = namedByPlace(question, know.stock);
  const like = there.length > 0 ? there : described(question, know);
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

function told(verdict: Verdict, know: Know, readings: readonly FitReading[], { code, chosen, spoken = 2 }: Telling): Answer {
  const manner = mannerOf(know.shop);
  const again = sensitivity(readings, verdict.candidate);
  return {
    code,
    speak: spokenVerdict(verdict, again, voiceOf(manner, true), spoken),
    show: shownVerdict(verdict, again, voiceOf(manner, false)),
    sources: [...new Set(verdict.because.map(({ source }) => source))],
    rests: verdict.rests,
    missing: verdict.result === 'cannotSayYet' ? verdict.missing : [],
    ...(verdict.result === 'fits' || verdict.result === 'fitsWithWork' ? { caution: makerFirst } : {}),
    ...(chosen ? { events: eventsOf(verdict, voiceOf(manner, false)) } : {}),
  };
}

const makerFirst = "The axle maker's own figures come first; a person signs for the fit.";

function eventsOf(given: Verdict, voice: Voice): EventBody[] {
  const { candidate, result, rests, unconfirmed } = given;
  const { id, title, values } = candidate;
  const reasons = telling(given).map((row) => `${rowLine(row, voice)}${work(row)} (${row.source})`);
  const verdict: EventBody = { kind: 'verdictGiven', verdict: result, reasons, rests, unconfirmed, ...(id ? { stock: id } : {}) };
  return id ? [{ kind: 'candidateChosen', stock: id, title, values: values as Record<string, string> }, verdict] : [verdict];
}

function spokenVerdict(verdict: Verdict, again: readonly Touchy[], voice: Voice, most: number): string {
  const told = telling(verdict).slice(0, most);
  const reasons = told.map((row) => sentence(rowLine(row, voice)));
  const work = verdict.because.find(({ remedy }) => remedy)?.remedy;
  const parts = [`${resultWords[verdict.result]}. ${sentence(voice.text(placedTitle(verdict.candidate)))}`, ...reasons];
  if (work && verdict.result === 'fitsWithWork') parts.push(`Needs ${remedyWords[work]}`);
  if (verdict.problems.length > 0)
    parts.push(`${voice.field(verdict.problems[0]?.field ?? 'hubFace')} cannot be right; measure it again`);
  if (again.length > 0 && verdict.result !== 'doesNotFit') parts.push(retake(again, voice));
  parts.push(...openPoints(verdict, told, voice));
  const open = verdict.unconfirmed.length;
  if (open > 0) parts.push(`${sentence(voice.text(String(open)))} ${open === 1 ? 'value is' : 'values are'} not confirmed`);
  return `${parts.map(sentence).join('. ')}.`;
}

/** What a fit leaves open, for the ear: warnings in full, the rest by name. */
function openPoints(verdict: Verdict, told: readonly Row[], voice: Voice): string[] {
  if (verdict.result === 'doesNotFit') return [];
  const warned = warnings(verdict).filter((row) => !told.includes(row));
  const left = unseen(verdict).filter((row) => !warned.includes(row));
  const rest = verdict.result === 'cannotSayYet' ? undefined : unseenLine(left, voice, 3);
  return [...warned.map((row) => rowLine(row, voice)), ...(rest ? [rest] : [])];
}

const retake = (again: readonly Touchy[], voice: Voice) =>
  `measure ${listed([...new Set(again.map(({ reading }) => voice.field(reading.field)))])} again before ordering`;

/** Rows worth saying: for a fit those with the least to spare, else those that settle it. */
function telling({ result, because }: Verdict): readonly Row[] {
  if (result !== 'fits') return because;
  return because.filter(({ essential }) => essential);
}

/** Open rows that say something all the same: a limit known too loosely, a law. */
const telltale = ({ code, remedy }: Row) => code === 'tooCoarse' || remedy === 'askTheState';

function shownVerdict(verdict: Verdict, again: readonly Touchy[], voice: Voice): string {
  const { candidate, result, rows } = verdict;
  const rest = unseen(verdict).filter((row) => !telltale(row));
  const looked = rows.filter((row) => !rest.includes(row));
  const lines = looked.map((row) => `${resultWords[row.result]} | ${rowLine(row, voice)}${work(row)}${unsure(row)}`);
  const left = unseenLine(rest, voice);
  const close = again.map(
    ({ reading, ifIt, would }) =>
      `Measure again before ordering: at ${voice.value(reading.field, ifIt, reading.unit)}, ${voice.field(reading.field)} would make it "${resultWords[would].toLowerCase()}"`,
  );
  const faults = verdict.problems.map(
    ({ field, code, value }) => `${sentence(voice.field(field))} ${value}: ${problemWords[code]}`,
  );
  return [
    `${resultWords[result]}: ${titleOf(candidate)}`,
    ...lines,
    ...madeToFit(verdict),
    ...faults,
    ...close,
    ...(left ? [sentence(left)] : []),
  ].join('\n');
}

/** What would make it fit, where work can. */
function madeToFit(verdict: Verdict): string[] {
  const { possible, takes } = making(verdict);
  if (verdict.result !== 'doesNotFit' || !possible) return [];
  return [`Could be made to fit: ${takes.flatMap(({ remedy }) => (remedy ? [remedyWords[remedy]] : [])).join('; ')}`];
}

/** An axle of the rack by its title and where it lies: many there have one title. */
const placedTitle = ({ title, place }: Placed): string => (place ? `${title}, ${place}` : title);

const titleOf = ({ id, title }: Candidate) => (id ? `${title} (${id})` : title);
const work = ({ remedy, result }: Row) =>
  remedy && result !== 'fits' && result !== 'cannotSayYet' ? `; needs ${remedyWords[remedy]}` : '';
const unsure = ({ unconfirmed }: Row) => (unconfirmed.length > 0 ? ' (not confirmed)' : '');
