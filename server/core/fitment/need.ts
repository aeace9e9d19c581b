// The two kinds of need: a number inside a window, and a word that must be the same.
import type { FieldId, UnitId } from '#data';
import type { Fraction } from '../quantity/index.ts';
import { compare, type Figure, figure, figureOf } from './figure.ts';
import { numberOf } from './number.ts';
import { add, exactly, type Span, subtract } from './span.ts';
import type { Basis, CheckId, Finding, Known, Need, Needed, RemedyId, Token, Trailer } from './types.ts';

/** Rests on nothing that was measured. */
export const noBasis: Basis = { rests: [], unconfirmed: [], missing: [] };

/** What a window's edges rest on: the named fields of the trailer, those that are there and those that are not. */
export function basisOf(trailer: Trailer, fields: readonly FieldId[]): Basis {
  const known: (Known | Token)[] = [];
  const missing: FieldId[] = [];
  for (const field of fields) {
    const value = trailer.numbers.get(field) ?? trailer.tokens.get(field);
    if (value) known.push(value, ...others(value));
    else missing.push(field);
  }
  return { rests: known.map(({ id }) => id), unconfirmed: known.filter((v) => !v.confirmed).map(({ id }) => id), missing };
}

/** What else a reckoned value rests on, each as sure as the whole. */
const others = (value: Known | Token): Token[] =>
  'also' in value ? (value.also ?? []).map((id) => ({ text: '', id, confirmed: value.confirmed })) : [];

export interface Window {
  readonly low?: Span | undefined;
  readonly high?: Span | undefined;
  /** The value to meet, where the window is about one. */
  readonly at?: Fraction | undefined;
}

interface Ends {
  readonly low: Figure | undefined;
  readonly high: Figure | undefined;
}

interface Edges {
  readonly low: Ends | undefined;
  readonly high: Ends | undefined;
}

const endsOf = (span: Span): Ends => ({
  low: span.low ? figure(span.low) : undefined,
  high: span.high ? figure(span.high) : undefined,
});
const edgesOf = ({ low, high }: Window): Edges => ({ low: low && endsOf(low), high: high && endsOf(high) });

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
  const { check, field, basis, source, sure, unit } = spec;
  const edges = sure && edgesOf(sure);
  const further = spec.work === true ? true : spec.work && edgesOf(spec.work);
  const judge = judgeIn(edges, further, spec);
  if (!sure) return { check, field, basis, source, judge };
  return { check, field, basis, source, judge, needed: neededOf(sure, unit), margin: marginIn(sure, unit) };
}

function judgeIn(edges: Edges | undefined, further: Edges | true | undefined, spec: WindowNeed): Need['judge'] {
  return (text) => {
    if (text === undefined) return { result: 'cannotSayYet', code: 'candidateUnknown', remedy: 'readCard' };
    const value = figureOf(text);
    if (!value) return { result: 'cannotSayYet', code: 'unreadable', remedy: 'readCard' };
    if (!edges) return { result: 'cannotSayYet', code: 'trailerUnknown', remedy: 'measureMore' };
    return place(value, edges, further, spec);
  };
}

function place(value: Figure, sure: Edges, work: Edges | true | undefined, { workRemedy, outRemedy }: WindowNeed): Finding {
  const at = whereIn(value, sure);
  const by = roomIn(value, sure);
  if (at === 'inside') return { result: 'fits', code: 'inside', by };
  const outer = at === 'coarse' ? at : work === true ? 'inside' : work ? whereIn(value, work) : at;
  if (outer === 'coarse') return { result: 'cannotSayYet', code: 'tooCoarse', remedy: 'measureMore', by };
  if (outer === 'inside') {
    return {
      result: 'fitsWithWork',
      code: at === 'below' ? 'workSmall' : 'workBig',
      by,
      ...(workRemedy && { remedy: workRemedy }),
    };
  }
  return { result: 'doesNotFit', code: at === 'below' ? 'tooSmall' : 'tooBig', by, ...(outRemedy && { remedy: outRemedy }) };
}

/** `coarse`: the edge is known too loosely to tell. */
function whereIn(value: Figure, { low, high }: Edges): 'inside' | 'below' | 'above' | 'coarse' {
  if (low?.low && compare(value, low.low) < 0) return 'below';
  if (high?.high && compare(value, high.high) > 0) return 'above';
  const clear = (!low || (low.high && compare(value, low.high) >= 0)) && (!high || (high.low && compare(value, high.low) <= 0));
  return clear ? 'inside' : 'coarse';
}

function roomIn(value: Figure, { low, high }: Edges): number {
  const below = low?.high ? value.near - low.high.near : Number.POSITIVE_INFINITY;
  const above = high?.low ? high.low.near - value.near : Number.POSITIVE_INFINITY;
  return Math.min(below, above);
}

/** Distance to the nearer sure edge. */
function marginIn({ low, high }: Window, unit: UnitId): NonNullable<Need['margin']> {
  return (text) => {
    const value = numberOf(text);
    const below = low?.high ? value?.sub(low.high) : undefined;
    const above = value && high?.low ? high.low.sub(value) : undefined;
    const margin = below && above ? (below.lt(above) ? below : above) : (below ?? above);
    return margin && { value: margin, unit };
  };
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
  const judge = judgeSame(wanted, spec);
  return { check, field, basis: basisOf(trailer, [field]), source, judge, ...(wanted && { needed: { same: wanted.text } }) };
}

function judgeSame(wanted: Token | undefined, { alike: meansSame, otherwise, remedy }: SameNeed): Need['judge'] {
  return (given) => {
    if (given === undefined) return { result: 'cannotSayYet', code: 'candidateUnknown', remedy: 'readCard' };
    if (!wanted) return { result: 'cannotSayYet', code: 'trailerUnknown', remedy: 'measureMore' };
    const alike = meansSame ? meansSame(wanted, given) : wanted.text === given;
    if (alike === undefined) return { result: 'cannotSayYet', code: 'unreadable', remedy: 'readCard' };
    return alike ? { result: 'fits', code: 'same' } : { result: otherwise, code: 'different', remedy };
  };
}

/** A window of so much on either side. */
export function around(span: Span, slack: Fraction): Window {
  return {
    at: span.low ?? span.high ?? undefined,
    low: subtract(span, exactly(slack)),
    high: add(span, exactly(slack)),
  };
}
