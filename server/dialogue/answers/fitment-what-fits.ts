// "What have we got that fits?": the rack, best first, three at most spoken, each with its one reason.
import { needsOf, type Ranking, type Row, rank, type Verdict } from '#core';
import type { FieldId, StockAxle } from '#data';
import type { Answer, Answerer, Know } from '../types.ts';
import { listed, mannerOf, sentence } from '../words.ts';
import { givenReadings, isGood, ranked, readingsOf, told } from './fitment-job.ts';
import { type Voice, voiceOf } from './fitment-say.ts';
import { wanting } from './fitment-tell.ts';
import { unseen, unseenLine, unseenOf } from './fitment-unseen.ts';
import { remedyWords, resultWords, rowLine } from './fitment-words.ts';

type Ranked = Ranking<StockAxle>;
type Placed = Ranked['best'][number];

export const whatFits: Answerer = (question, job, know) => {
  if (know.stock.length === 0) return plain('noStock', "There's no rack on file. Tell me an axle's numbers and ask if it fits.");
  const readings = [...readingsOf(job), ...givenReadings(question)];
  const ranking = rank(needsOf(readings), know.stock, ranked);
  return { ...answerOf(ranking, know), code: ranking.counts.fits + ranking.counts.fitsWithWork > 0 ? 'stockFits' : 'stockNone' };
};

const plain = (code: string, text: string): Answer => ({ code, speak: text, show: text, sources: [], rests: [], missing: [] });

function answerOf({ best, counts }: Ranked, know: Know): Omit<Answer, 'code'> {
  const good = best.filter(({ result }) => isGood(result));
  const picked = told({ best });
  const first = picked[0];
  const missing = first?.result === 'cannotSayYet' ? first.missing : [];
  const open = unseenOf(good);
  const head = (voice: Voice) => (good.length > 0 ? goodHead(counts, open, voice) : noneHead(counts, missing, voice));
  const [spoken, shown] = [voiceOf(mannerOf(know.shop), true), voiceOf(mannerOf(know.shop), false)];
  const named = missing.length > 0 ? [] : picked.map((one) => `${sentence(lineOf(one, spoken))}.`);
  const [said, written] = [
    unseenLine(unseenOf(picked.filter(({ result }) => isGood(result))), spoken, 3),
    unseenLine(open, shown),
  ];
  return {
    speak: [head(spoken), ...named, ...(said ? [`${sentence(said)}.`] : [])].join(' '),
    show: [
      head(shown),
      ...best.map((one) => `${soFar(one)} | ${lineOf(one, shown)}`),
      ...(written ? [sentence(written)] : []),
    ].join('\n'),
    sources: [...new Set(picked.flatMap(({ because }) => because.map(({ source }) => source)))],
    rests: (first?.rests ?? []).filter((id) => !id.startsWith('given.')),
    missing,
    ...(first && good.length > 0 ? { events: [chosen(first)] } : {}),
  };
}

/** "Fits as far as told": some of it was not looked at. */
const soFar = (verdict: Placed) =>
  `${resultWords[verdict.result]}${isGood(verdict.result) && unseen(verdict).length > 0 ? ' as far as told' : ''}`;

type Counts = Ranked['counts'];
const many = (count: number, words: string, voice: Voice) => (count > 0 ? [`${voice.text(String(count))} ${words}`] : []);

function goodHead({ fits, fitsWithWork }: Counts, open: readonly Row[], voice: Voice): string {
  const counted = listed([...many(fits, 'fit', voice), ...many(fitsWithWork, 'with work', voice)]);
  return `${sentence(counted)}${open.length > 0 ? ', as far as told' : ''}.`;
}

function noneHead({ cannotSayYet }: Counts, missing: readonly FieldId[], voice: Voice): string {
  const head = ['none fits as it stands', ...many(cannotSayYet, 'cannot be told yet', voice)].join('; ');
  const ask = wanting(missing, voice);
  return `${sentence(head)}. ${ask ? `${sentence(ask)}.` : 'Nearest:'}`;
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
