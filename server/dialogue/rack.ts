// The rack held against a job: every check of the best axles as a row, and what work would make fit.
import { type Making, making, nearest, needsOf, type Quantity, type Ranking, type Row, rank, sensitivity } from '#core';
import type { StockAxle } from '#data';
import type { JobRecord } from '#log/events';
import { readingsOf } from './answers/fitment-job.ts';
import { type Voice, voiceOf } from './answers/fitment-say.ts';
import { checkNames, problemWords, remedyWords, resultWords, rowLine } from './answers/fitment-words.ts';
import type { Know } from './types.ts';
import { mannerOf, sentence } from './words.ts';

/** One check of one axle, ready to show. `code`s stay, words may change. */
export interface FitRow {
  readonly check: string;
  readonly name: string;
  readonly result: Row['result'];
  readonly words: string;
  readonly measured?: string;
  readonly needed?: string;
  readonly margin?: string;
  readonly why: string;
  readonly remedy?: string;
  readonly source: string;
  readonly essential: boolean;
  /** Ids of the job's values behind it; those nobody confirmed. */
  readonly rests: readonly string[];
  readonly unconfirmed: readonly string[];
  /** Fields that would tell it. */
  readonly missing: readonly string[];
}

export interface FitAxle {
  readonly id: string;
  readonly title: string;
  readonly place?: string;
  readonly quantity: number;
  readonly invented: boolean;
  readonly result: Row['result'];
  readonly words: string;
  readonly rows: readonly FitRow[];
  /** The work that would make it fit, where work can. */
  readonly takes: readonly string[];
  /** Measurements to take again before it is ordered. */
  readonly again: readonly string[];
}

export interface RackView {
  readonly counts: Ranking<StockAxle>['counts'];
  readonly best: readonly FitAxle[];
  /** Axles that do not fit as they are and could be made to, least work first. */
  readonly nearest: readonly FitAxle[];
  /** Readings that cannot be right; the rest was computed without them. */
  readonly problems: readonly string[];
}

/** The best `most` axles of the rack with every check, and the nearest that could be made to fit. */
export function rackView(job: JobRecord, know: Know, most = 10): RackView {
  const voice = voiceOf(mannerOf(know.shop), false);
  const readings = readingsOf(job);
  const needs = needsOf(readings);
  const { best, counts } = rank(needs, know.stock, most);
  const shown = (made: Making<StockAxle>) => axleOf(made, voice, () => sensitivity(readings, made.verdict.candidate));
  return {
    counts,
    best: best.map(making).map(shown),
    nearest: nearest(needs, know.stock, most).map(shown),
    problems: needs.trailer.problems.map(
      ({ field, code, value }) => `${sentence(voice.field(field))} ${value}: ${problemWords[code]}`,
    ),
  };
}

function axleOf(
  { verdict, possible, takes }: Making<StockAxle>,
  voice: Voice,
  touchy: () => ReturnType<typeof sensitivity>,
): FitAxle {
  const { candidate, result, rows } = verdict;
  const { id, title, place, quantity, invented } = candidate;
  const work = possible ? takes.flatMap(({ remedy }) => (remedy ? [remedyWords[remedy]] : [])) : [];
  return {
    id,
    title,
    ...(place === undefined ? {} : { place }),
    quantity,
    invented,
    result,
    words: resultWords[result],
    rows: rows.map((row) => rowOf(row, voice)),
    takes: [...new Set(work)],
    again: [...new Set(touchy().map(({ reading }) => voice.field(reading.field)))],
  };
}

function rowOf(row: Row, voice: Voice): FitRow {
  const { check, result, field, measured, needed, margin, remedy, source, essential, rests, unconfirmed, missing } = row;
  const range = [needed?.low, needed?.high].map((end) => (end ? voice.amount(end) : ''));
  const window = needed?.same === undefined ? between(range[0] ?? '', range[1] ?? '') : voice.value(field, needed.same);
  return {
    check,
    name: sentence(checkNames[check]),
    result,
    words: resultWords[result],
    ...(measured === undefined ? {} : { measured: voice.value(field, measured) }),
    ...(window === '' ? {} : { needed: window }),
    ...(margin ? { margin: signed(margin, voice) } : {}),
    why: sentence(rowLine(row, voice)),
    ...(remedy && result !== 'fits' ? { remedy: remedyWords[remedy] } : {}),
    source,
    essential,
    rests,
    unconfirmed,
    missing,
  };
}

function between(low: string, high: string): string {
  if (low !== '' && high !== '') return low === high ? low : `${low} to ${high}`;
  return low !== '' ? `at least ${low}` : high !== '' ? `at most ${high}` : '';
}

const signed = ({ value, unit }: Quantity, voice: Voice): string =>
  `${value.lt(0) ? '-' : ''}${voice.amount({ value: value.abs(), unit })}`;
