import type { FieldId, FitRuleId, UnitId } from '#data';
import type { Fraction, Quantity } from '../quantity/index.ts';
import type { Span } from './span.ts';
import type { TyreSize } from './tyres/designation.ts';

/** One value of the job as the core takes it: exact, with what is known about its trust. */
export interface FitReading {
  readonly id: string;
  readonly field: FieldId;
  readonly stage: 'found' | 'fitted';
  readonly side?: 'left' | 'right' | 'both';
  readonly axle?: 'front' | 'middle' | 'rear';
  /** An exact number ("579/8") or a token ("5x9/2", "ST205/75R15"). */
  readonly value: string;
  readonly unit?: UnitId;
  readonly status: 'heard' | 'confirmed';
  readonly hedge?: 'under' | 'over' | 'about' | 'atLeast' | 'atMost';
  readonly to?: string;
  readonly plusMinus?: string;
  readonly resolution?: string;
}

/** An axle that might go in: a row of the rack, or one named in a question. Exact strings in each field's usual unit. */
export interface Candidate {
  readonly id: string;
  readonly title: string;
  readonly values: Readonly<Partial<Record<FieldId, string>>>;
}

export type FitResult = 'fits' | 'fitsWithWork' | 'doesNotFit' | 'cannotSayYet';

export type CheckId =
  | 'springCentre'
  | 'hubFace'
  | 'tyreToSpring'
  | 'tyreToFrame'
  | 'tyreToFender'
  | 'tyreClearance'
  | 'overallWidth'
  | 'beam'
  | 'beamShape'
  | 'seatWidth'
  | 'drop'
  | 'bumpRoom'
  | 'boltPattern'
  | 'pilotBore'
  | 'studThread'
  | 'brakes'
  | 'brakeLaw'
  | 'brakeFlange'
  | 'brakeSize'
  | 'capacity'
  | 'tyreRating'
  | 'tandemCapacity'
  | 'tandemDrop'
  | 'springLength'
  | 'springType'
  | 'halves'
  | 'camber'
  | 'toe'
  | 'frameRoom';

export type RowCode =
  | 'inside'
  | 'tooSmall'
  | 'tooBig'
  | 'workSmall'
  | 'workBig'
  | 'tooCoarse'
  | 'same'
  | 'different'
  | 'trailerUnknown'
  | 'candidateUnknown'
  | 'unreadable'
  | 'clearanceDecides'
  | 'clearanceUnknown'
  | 'likeOld'
  | 'belowOld'
  | 'braked'
  | 'brakesLost'
  | 'brakesAdded'
  | 'otherBrakes'
  | 'lawWantsBrakes'
  | 'lawOverShare'
  | 'lawMayExempt'
  | 'lawExempts'
  | 'straight'
  | 'shifted'
  | 'leansIn'
  | 'toed';

export type RemedyId =
  | 'moveSeats'
  | 'otherAxle'
  | 'newSeats'
  | 'slingSwap'
  | 'changeHubs'
  | 'centringRing'
  | 'otherNuts'
  | 'brakedAxle'
  | 'wireBrakes'
  | 'convertBrakes'
  | 'askTheState'
  | 'newBackingPlates'
  | 'relabel'
  | 'strongerTyres'
  | 'matchPair'
  | 'otherSprings'
  | 'measureMore'
  | 'oldAxleBent'
  | 'readCard';

/** What the trailer asks of one value of the axle. `low`, `high`: the sure window; `at`: the middle it should meet; `same`: the token wanted. */
export interface Needed {
  readonly low?: Quantity;
  readonly high?: Quantity;
  readonly at?: Quantity;
  readonly same?: string;
}

/** What a check rests on. `missing`: fields the trailer's side lacks. */
export interface Basis {
  readonly rests: readonly string[];
  readonly unconfirmed: readonly string[];
  readonly missing: readonly FieldId[];
}

/** What one check finds about one value of an axle. `by`: about how far inside the sure window, negative outside; only for ranking. */
export interface Finding {
  readonly result: FitResult;
  readonly code: RowCode;
  readonly by?: number;
  readonly remedy?: RemedyId;
  /** What it measured by itself, where that is not the axle's value. */
  readonly found?: Quantity;
  /** Where it rests on something else than its check does. */
  readonly basis?: Basis;
}

/** One check made ready for a trailer: it looks at one field of a candidate and at nothing else. */
export interface Need {
  readonly check: CheckId;
  readonly field: FieldId;
  readonly needed?: Needed;
  readonly basis: Basis;
  readonly source: string;
  readonly judge: (value: string | undefined) => Finding;
  /** Exact distance inside the sure window, negative outside. */
  readonly margin?: (value: string) => Quantity | undefined;
}

/** A line of the verdict. `lacking`: the candidate's own value is not known. */
export interface Row extends Omit<Finding, 'by' | 'basis'>, Basis {
  readonly check: CheckId;
  readonly essential: boolean;
  readonly field: FieldId;
  readonly measured?: string;
  readonly needed?: Needed;
  readonly margin?: Quantity;
  readonly lacking: boolean;
  readonly source: string;
}

export interface Verdict {
  readonly candidate: Candidate;
  readonly result: FitResult;
  readonly rows: readonly Row[];
  /** Rows that settle the result. */
  readonly because: readonly Row[];
  readonly missing: readonly FieldId[];
  readonly rests: readonly string[];
  readonly unconfirmed: readonly string[];
  readonly problems: readonly FieldProblem[];
}

export type ProblemCode =
  | 'notANumber'
  | 'wrongUnit'
  | 'notPositive'
  | 'outOfBand'
  | 'notAChoice'
  | 'unknownPattern'
  | 'unknownTyre'
  | 'unknownBearing'
  | 'hubFaceNotAboveSpringCentre'
  | 'halvesDoNotAddUp'
  | 'tongueBeyondReason'
  | 'weightAboveRating';

/** What is wrong with one reading; the rest is computed without it. */
export interface FieldProblem {
  readonly field: FieldId;
  readonly code: ProblemCode;
  readonly id: string;
  readonly value: string;
}

/** A number of the trailer: where it lies (in the field's usual unit; weights in lb, lengths in in) and what it rests on. */
export interface Known {
  readonly span: Span;
  readonly id: string;
  /** Other readings it was reckoned from. */
  readonly also?: readonly string[];
  readonly confirmed: boolean;
}

export interface Token {
  readonly text: string;
  /** What a tyre's size says. */
  readonly tyre?: TyreSize;
  readonly unit?: UnitId;
  readonly id: string;
  readonly confirmed: boolean;
}

export interface Sides {
  readonly left?: Known;
  readonly right?: Known;
}

/** The readings of a job, laid out for the checks. */
export interface Trailer {
  readonly numbers: ReadonlyMap<FieldId, Known>;
  readonly tokens: ReadonlyMap<FieldId, Token>;
  /** What was measured on both sides, each by itself. */
  readonly sides: ReadonlyMap<FieldId, Sides>;
  readonly problems: readonly FieldProblem[];
}

/** Tolerances and limits by name: lengths in inches, weights in pounds, shares in percent. */
export type Rules = Readonly<Record<FitRuleId, { readonly value: Fraction; readonly source: string }>>;

export type Check = (trailer: Trailer, rules: Rules) => readonly Need[];
