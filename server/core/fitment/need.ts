// The two kinds of need: a number inside a window, and a word that must be the same.
import type { FieldId, UnitId } from '#data';
import type { Fraction, Quantity } from '../quantity/index.ts';
import { numberOf } from './number.ts';
import type { Span } from './span.ts';
import type { Basis, CheckId, Finding, Known, Need, Needed, RemedyId, Token, Trailer } from './types.ts';

/** What a window's edges rest on: the named fields of the trailer, those that are there and those that are not. */
export function basisOf(trailer: Trailer, fields: readonly FieldId[]): Basis {
  const known: (Known | Token)[] = [];
  const missing: FieldId[] = [];
  for (const field of fields) {
    const value = trailer.numbers.get(field) ?? trailer.tokens.get(field);
    if (value) known.push(value);
    else missing.push(field);
  }
  return { rests: known.map(({ id }) => id), unconfirmed: known.filter((v) => !v.confirmed).map(({ id }) => id), missing };
}

export interface Window {
  readonly low?: Span | undefined;
  readonly high?: Span | undefined;
  /** The value to meet, where the window is about one. */
  readonly at?: Fraction | undefined;
}

export interface WindowNeed {
  readonly check: CheckId;
  readonly field: FieldId;
  readonly unit: UnitId;
  readonly basis: Basis;
  readonly source: string;
  /** Absent while the trailer's side is not known. */
  readonly sure?: Window | undefined;
  /** Beyond the sure window, still possible with work. `true`: any value is, one way or another. */
  readonly work?: Window | true | undefined;
  readonly workRemedy?: RemedyId;
  readonly outRemedy?: RemedyId;
}

export function windowNeed(spec: WindowNeed): Need {
  const { check, field, basis, source, sure } = spec;
  const judge = (text: string | undefined): Finding => {
    if (text === undefined) return { result: 'cannotSayYet', code: 'candidateUnknown', remedy: 'readCard' };
    const value = numberOf(text);
    if (!value) return { result: 'cannotSayYet', code: 'unreadable', remedy: 'readCard' };
    if (!sure) return { result: 'cannotSayYet', code: 'trailerUnknown', remedy: 'measureMore' };
    return { ...place(value, sure, spec), ...marginOf(value, sure, spec.unit) };
  };
  return { check, field, basis, source, judge, ...(sure ? { needed: neededOf(sure, spec.unit) } : {}) };
}

function place(value: Fraction, sure: Window, { work, workRemedy, outRemedy }: WindowNeed): Finding {
  const at = whereIn(value, sure);
  if (at === 'inside') return { result: 'fits', code: 'inside' };
  if (at === 'coarse') return { result: 'cannotSayYet', code: 'tooCoarse', remedy: 'measureMore' };
  const outer = work === true ? 'inside' : work ? whereIn(value, work) : at;
  if (outer === 'coarse') return { result: 'cannotSayYet', code: 'tooCoarse', remedy: 'measureMore' };
  if (outer === 'inside') {
    return { result: 'fitsWithWork', code: at === 'below' ? 'workSmall' : 'workBig', ...(workRemedy && { remedy: workRemedy }) };
  }
  return { result: 'doesNotFit', code: at === 'below' ? 'tooSmall' : 'tooBig', ...(outRemedy && { remedy: outRemedy }) };
}

/** `coarse`: the edge is known too loosely to tell. */
function whereIn(value: Fraction, { low, high }: Window): 'inside' | 'below' | 'above' | 'coarse' {
  if (low?.low && value.lt(low.low)) return 'below';
  if (high?.high && value.gt(high.high)) return 'above';
  const clear = (!low || (low.high && value.gte(low.high))) && (!high || (high.low && value.lte(high.low)));
  return clear ? 'inside' : 'coarse';
}

/** Distance to the nearer sure edge. */
function marginOf(value: Fraction, { low, high }: Window, unit: UnitId): { margin?: Quantity } {
  const below = low?.high ? value.sub(low.high) : undefined;
  const above = high?.low ? high.low.sub(value) : undefined;
  const margin = below && above ? (below.lt(above) ? below : above) : (below ?? above);
  return margin ? { margin: { value: margin, unit } } : {};
}

function neededOf({ low, high, at }: Window, unit: UnitId): Needed {
  const least = low?.high ?? low?.low;
  const most = high?.low ?? high?.high;
  return {
    ...(least && { low: { value: least, unit } }),
    ...(most && { high: { value: most, unit } }),
    ...(at && { at: { value: at, unit } }),
  };
}

export interface SameNeed {
  readonly check: CheckId;
  readonly field: FieldId;
  readonly trailer: Trailer;
  readonly source: string;
  readonly otherwise: 'fitsWithWork' | 'doesNotFit';
  readonly remedy: RemedyId;
  /** True where two different texts still mean one thing. */
  readonly alike?: (wanted: Token, given: string) => boolean | undefined;
}

/** The axle's word must be the trailer's. */
export function sameNeed(spec: SameNeed): Need {
  const { check, field, trailer, source } = spec;
  const wanted = trailer.tokens.get(field);
  const judge = (given: string | undefined): Finding => {
    if (given === undefined) return { result: 'cannotSayYet', code: 'candidateUnknown', remedy: 'readCard' };
    if (!wanted) return { result: 'cannotSayYet', code: 'trailerUnknown', remedy: 'measureMore' };
    const alike = spec.alike ? spec.alike(wanted, given) : wanted.text === given;
    if (alike === undefined) return { result: 'cannotSayYet', code: 'unreadable', remedy: 'readCard' };
    if (alike) return { result: 'fits', code: 'same' };
    return { result: spec.otherwise, code: 'different', remedy: spec.remedy };
  };
  return { check, field, basis: basisOf(trailer, [field]), source, judge, ...(wanted && { needed: { same: wanted.text } }) };
}

/** A window of so much on either side. */
export function around(span: Span, slack: Fraction): Window {
  return {
    at: span.low ?? span.high ?? undefined,
    low: { low: span.low?.sub(slack) ?? null, high: span.high?.sub(slack) ?? null },
    high: { low: span.low?.add(slack) ?? null, high: span.high?.add(slack) ?? null },
  };
}
