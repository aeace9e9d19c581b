// "What is nearest?", "What would it take to make rack four fit?": the work that stands between an axle and a fit.
import { judge, type Making, making, type Needs, nearest as nearestOf, needsOf, type Row, rank, type Verdict } from '#core';
import type { StockAxle } from '#data';
import type { QuestionIntent } from '#intents';
import type { JobRecord } from '#log/events';
import type { Answerer, Know } from '../types.ts';
import { listed } from '../words.ts';
import { candidateOf, described, givenReadings, readingsOf } from './fitment-job.ts';
import { namedByPlace } from './fitment-named.ts';
import type { Voice } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';
import { remedyWords, resultWords, rowLine } from './fitment-words.ts';

type Axle = Pick<StockAxle, 'id' | 'title' | 'values' | 'place'>;

export const nearest: Answerer = (question, job, know) => {
  const needs = needsOf(readingsOf(job));
  const asked = askedFor(question, job, know);
  if (asked.length > 0) return named(asked, needs, know);
  if (know.stock.length === 0)
    return tell(know, 'noStock', () => ({ always: ["there's no rack on file; tell me an axle's numbers and ask if it fits"] }));
  return ofRack(needsOf([...readingsOf(job), ...givenReadings(question)]), know);
};

/** The axles a question is about: by place, by what it says of them, else the one chosen; none where it asks for the nearest. */
function askedFor(question: QuestionIntent, job: JobRecord, know: Know): readonly Axle[] {
  const there = namedByPlace(question, know.stock);
  if (there.length > 0) return there;
  const like = described(question, know);
  if (like.length > 0 && like.length < know.stock.length) return like;
  const anyOfThem = /nearest|closest|near|anything|something|any|which|what (?:could|can)|one/.test(question.words ?? '');
  const chosen = anyOfThem ? undefined : candidateOf(question, job, know);
  return chosen ? [chosen] : [];
}

const told = 3;

function named(axles: readonly Axle[], needs: Needs, know: Know) {
  const verdicts = axles.map((axle) => ({ ...judge(needs, axle), candidate: axle })).map(making);
  const missing = verdicts.flatMap(({ verdict }) => (verdict.result === 'cannotSayYet' ? verdict.missing : []));
  const possible = verdicts.some(({ verdict, possible: can }) => can && verdict.result !== 'cannotSayYet');
  return tell(
    know,
    possible ? 'making' : 'makingNone',
    (voice) => {
      const lines = verdicts.map((one) => lineOf(one, voice));
      return { always: lines.slice(0, told), more: [...lines.slice(told), ...verdicts.flatMap((one) => rowsOf(one, voice))] };
    },
    { sources: sourcesOf(verdicts), rests: restsOf(verdicts), missing: [...new Set(missing)] },
  );
}

function ofRack(needs: Needs, know: Know) {
  const { counts, best } = rank(needs, know.stock, 1);
  const work = rank(needs, know.stock, told, 'fitsWithWork').best.map(making);
  const made = nearestOf(needs, know.stock, told);
  const all = [...work, ...made];
  const missing = counts.cannotSayYet > 0 && all.length === 0 ? (best[0]?.missing ?? []) : [];
  return tell(
    know,
    all.length > 0 ? 'nearest' : 'nearestNone',
    (voice) => {
      const lines = all.map((one) => lineOf(one, voice));
      const fit = counts.fits > 0 ? `${voice.text(String(counts.fits))} fit as they are` : 'none fits as it is';
      const none = lines.length === 0 ? (wanting(missing, voice) ?? 'none that work would make fit') : undefined;
      return {
        always: [fit, ...lines.slice(0, 2), none],
        more: [...lines.slice(2), ...all.flatMap((one) => rowsOf(one, voice))],
      };
    },
    { sources: sourcesOf(all), rests: restsOf(all), missing },
  );
}

const sourcesOf = (all: readonly Making[]) => [...new Set(all.flatMap(({ takes }) => takes.map(({ source }) => source)))];
const restsOf = (all: readonly Making[]) =>
  [...new Set(all.flatMap(({ takes }) => takes.flatMap(({ rests }) => rests)))].filter((id) => !id.startsWith('given.'));

/** "3,500 pound axle, five on five, rack 3, upper: would take hubs with the right pattern". */
function lineOf({ verdict, possible, takes }: Making<Axle>, voice: Voice): string {
  const { title, place } = verdict.candidate;
  return `${[title, place].flatMap((text) => (text ? [voice.text(text)] : [])).join(', ')}: ${outcome(verdict, possible, takes, voice)}`;
}

function outcome(verdict: Verdict, possible: boolean, takes: readonly Row[], voice: Voice): string {
  const { result } = verdict;
  if (result === 'fits') return 'fits as it is';
  const hindered = takes.filter((row) => row.result === 'doesNotFit' && !possible);
  const last = hindered.find(({ remedy }) => remedy === 'otherAxle' || remedy === 'brakedAxle') ?? hindered[0];
  if (!possible && last) return `cannot be made to fit; ${rowLine(last, voice)}`;
  const work = [...new Set(takes.flatMap(({ remedy }) => (remedy ? [remedyWords[remedy]] : [])))];
  const open = result === 'cannotSayYet' ? wanting(verdict.missing, voice) : undefined;
  const takesWork = work.length > 0 ? `would take ${listed(work)}` : undefined;
  return (
    [takesWork, open ?? (result === 'cannotSayYet' ? 'its card is silent' : undefined)].filter(Boolean).join('; ') ||
    resultWords[result]
  );
}

/** The rows that stand in the way, for the eye. */
const rowsOf = ({ verdict, takes }: Making<Axle>, voice: Voice): string[] =>
  takes.map(
    (row) => `${verdict.candidate.title} | ${rowLine(row, voice)}${row.remedy ? `; takes ${remedyWords[row.remedy]}` : ''}`,
  );
