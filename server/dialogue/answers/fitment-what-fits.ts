// "What have we got that fits?": the rack, best first, three at most spoken, each with its one reason.
import { type FitResult, needsOf, type Ranking, rank, type Verdict } from '#core';
import type { StockAxle } from '#data';
import type { Answer, Answerer, Know } from '../types.ts';
import { listed, mannerOf, sentence } from '../words.ts';
import { givenReadings, readingsOf } from './fitment-job.ts';
import { type Voice, voiceOf } from './fitment-say.ts';
import { remedyWords, resultWords, rowLine } from './fitment-words.ts';

type Ranked = Ranking<StockAxle>;
type Placed = Ranked['best'][number];

export const whatFits: Answerer = (question, job, know) => {
  if (know.stock.length === 0) return plain('noStock', "There's no rack on file. Tell me an axle's numbers and ask if it fits.");
  const readings = [...readingsOf(job), ...givenReadings(question)];
  const ranking = rank(needsOf(readings), know.stock, 8);
  return { ...answerOf(ranking, know), code: ranking.counts.fits + ranking.counts.fitsWithWork > 0 ? 'stockFits' : 'stockNone' };
};

const plain = (code: string, text: string): Answer => ({ code, speak: text, show: text, sources: [], rests: [], missing: [] });

function answerOf({ best, counts }: Ranked, know: Know): Omit<Answer, 'code'> {
  const spoken = voiceOf(mannerOf(know.shop), true);
  const shown = voiceOf(mannerOf(know.shop), false);
  const good = best.filter(({ result }) => result === 'fits' || result === 'fitsWithWork');
  const picked = (good.length > 0 ? good : best).slice(0, 3);
  const first = picked[0];
  const head = headOf(counts, good.length > 0, spoken);
  const missing = first?.result === 'cannotSayYet' ? first.missing : [];
  return {
    speak: [head, ...picked.map((one) => sentence(`${lineOf(one, spoken)}.`))].join(' '),
    show: [
      headOf(counts, good.length > 0, shown),
      ...best.map((one) => `${resultWords[one.result]} | ${lineOf(one, shown)}`),
    ].join('\n'),
    sources: [...new Set(picked.flatMap(({ because }) => because.map(({ source }) => source)))],
    rests: (first?.rests ?? []).filter((id) => !id.startsWith('given.')),
    missing,
    ...(first && good.length > 0 ? { events: [chosen(first)] } : {}),
  };
}

function headOf(counts: Readonly<Record<FitResult, number>>, any: boolean, voice: Voice): string {
  const many = (count: number, words: string) => (count > 0 ? [`${voice.text(String(count))} ${words}`] : []);
  if (any) return `${sentence(listed([...many(counts.fits, 'fit'), ...many(counts.fitsWithWork, 'with work')]))}.`;
  const open = many(counts.cannotSayYet, 'cannot be told yet');
  return `None fits as it stands${open.length > 0 ? `; ${open[0]}` : ''}. Nearest:`;
}

/** The axle, where it lies, and the one reason that matters most. */
function lineOf(verdict: Placed, voice: Voice): string {
  const { title, place } = verdict.candidate;
  const reason = reasonOf(verdict);
  const line = reason ? `, ${rowLine(reason, voice)}` : '';
  const work =
    reason?.remedy && verdict.result !== 'cannotSayYet'
      ? `; ${verdict.result === 'doesNotFit' ? 'would take' : 'needs'} ${remedyWords[reason.remedy]}`
      : '';
  return `${voice.text(title)}${place ? `, ${voice.text(place)}` : ''}${line}${work}`;
}

/** For a fit the tightest of the essential rows, else the first that settles it. */
function reasonOf({ result, because }: Verdict) {
  if (result !== 'fits') return because[0];
  const tight = because.filter(({ essential, margin }) => essential && margin);
  return tight.find(({ check }) => check === 'springCentre') ?? tight[0];
}

const chosen = ({ candidate: { id, title, values } }: Placed) =>
  ({ kind: 'candidateChosen', stock: id, title, values: values as Record<string, string> }) as const;
