// End play: a dial reading judged, and what the next stop of the lock would make of it.
import { type EndPlayLimitRow, endPlayLimits } from '#data';
import { Fraction } from '../quantity/index.ts';
import { travelOf } from './nut-travel.ts';
import { type Range, rangeOf, type Standing, standingOf } from './ranges.ts';

/** `nearLimit`: closer to a limit than the dial can tell. */
export interface EndPlayVerdict {
  readonly code: 'endPlayWithin' | 'endPlayNone' | 'endPlayLow' | 'endPlayHigh' | 'endPlayDepends';
  readonly endPlay: Fraction;
  readonly range: Range;
  readonly nearLimit: boolean;
  /** Ranges of the documents that would allow it although the usual one does not. */
  readonly allowedBy: readonly Range[];
}

const dial = new Fraction(1, 1000);

/** Judges a dial reading in inches against the maker's limits, else the usual published ones. */
export function judgeEndPlay(endPlay: Fraction, maker?: { readonly low: Fraction; readonly high: Fraction }): EndPlayVerdict {
  const range = maker ? makerRange(maker) : usualEndPlay();
  const standing = standingOf({ value: endPlay, unit: 'in' }, [range]);
  const others = maker ? [] : endPlayLimits.filter(({ use }) => use !== 'usual').map(asRange);
  const allowedBy =
    standing === 'within' ? [] : others.filter((other) => standingOf({ value: endPlay, unit: 'in' }, [other]) === 'within');
  const nearLimit = [range.low, range.high].some((limit) => limit.compare(0) > 0 && endPlay.sub(limit).abs().compare(dial) < 0);
  return { code: codeOf(endPlay, standing, range), endPlay, range, nearLimit, allowedBy };
}

function codeOf(endPlay: Fraction, standing: Standing | undefined, { low }: Range): EndPlayVerdict['code'] {
  if (standing === 'within') return 'endPlayWithin';
  if (standing === 'high') return 'endPlayHigh';
  if (endPlay.compare(0) <= 0 && low.compare(0) > 0) return 'endPlayNone';
  return standing === 'low' ? 'endPlayLow' : 'endPlayDepends';
}

/** The limits that an answer names first. */
export function usualEndPlay(): Range {
  const row = endPlayLimits.find(({ use }) => use === 'usual');
  if (!row) throw new TypeError('data/service/end-play-limits.json has no row of use usual');
  return asRange(row);
}

function asRange(row: EndPlayLimitRow): Range {
  return rangeOf(row.min, row.max, 'in', row);
}

function makerRange({ low, high }: { readonly low: Fraction; readonly high: Fraction }): Range {
  return { low, high, unit: 'in', row: 'maker', source: "the part maker's value, as given" };
}

/** One stop of the lock and the end play it would leave. */
export interface LockChoice {
  readonly move: 'tighter' | 'stay' | 'looser';
  readonly endPlay: Fraction;
  readonly verdict: EndPlayVerdict['code'];
}

/**
 * The stops next to the present one and the end play of each, inches. Counts only from a measured play above nothing: out of a
 * preloaded stack the first part of a turn only lets the squeeze go. Loosening is sure; a tighter stop may end in preload.
 */
export function lockChoices(
  endPlay: Fraction,
  tpi: Fraction,
  positions: number,
  maker?: { readonly low: Fraction; readonly high: Fraction },
): readonly LockChoice[] {
  const step = travelOf({ slots: new Fraction(1), positions }, tpi);
  const moves = [
    { move: 'tighter', by: step.neg() },
    { move: 'stay', by: new Fraction(0) },
    { move: 'looser', by: step },
  ] as const;
  return moves.map(({ move, by }) => {
    const left = endPlay.add(by);
    const play = left.compare(0) < 0 ? new Fraction(0) : left;
    return { move, endPlay: play, verdict: judgeEndPlay(play, maker).code };
  });
}
