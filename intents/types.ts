import type { FieldId, UnitId } from '#data';

export type Side = 'left' | 'right' | 'both';
export type AxlePosition = 'front' | 'middle' | 'rear';
export type Stage = 'found' | 'fitted';
export type Hedge = 'under' | 'over' | 'about' | 'atLeast' | 'atMost';

/** Half-open range of characters in the text as it was given. */
export type Span = readonly [start: number, end: number];

/** Where on the trailer, as far as it was said. */
export interface Where {
  readonly side?: Side;
  /** "The other side", where nothing in the same breath tells of which. */
  readonly otherSide?: true;
  readonly axle?: AxlePosition;
  readonly stage?: Stage;
}

/** A value as said: an exact fraction in lowest terms ("579/8"), or a token ("5x9/2", "ST205/75R15", "1/2-20"). */
export interface Said {
  readonly value: string;
  readonly unit?: UnitId;
  /** False where the unit is the field's usual one. */
  readonly unitSaid?: boolean;
  readonly hedge?: Hedge;
  /** Upper end of a range. */
  readonly to?: string;
  readonly plusMinus?: string;
  /** What the way of saying it resolves: "1/16", "1/1000". */
  readonly resolution?: string;
  /** Other values that sound alike or read alike (fifteen/fifty), likeliest first. */
  readonly alternatives?: readonly string[];
  /** Said to come from the part's maker ("the book says ninety"), not from the tape. */
  readonly origin?: 'maker';
  readonly span?: Span;
}

export type CommandName =
  | 'next'
  /** The next of the order in which something is tightened. */
  | 'nextNut'
  | 'back'
  /** To the step that `rest` names; what lies between stays open. */
  | 'goTo'
  | 'repeat'
  | 'slower'
  | 'readBack'
  | 'undo'
  | 'confirm'
  | 'deny'
  | 'done'
  | 'skip'
  | 'pause'
  | 'resume'
  | 'openJob'
  | 'closeJob'
  | 'closeAnyway'
  | 'renameJob'
  | 'help'
  | 'remind'
  /** The value said last, at another place; no side: at the other one. */
  | 'same'
  /** The value said last, by `said` more or less. */
  | 'adjust'
  /** The value said last belongs at this place instead. */
  | 'moved'
  /** Work told as done in a step's own words; `acts` are rows of data/told.json. */
  | 'told'
  /** Told as not done yet. */
  | 'notYet';

export type Topic =
  | 'fits'
  | 'whatFits'
  | 'nextStep'
  | 'torque'
  | 'sequence'
  | 'bearing'
  | 'seal'
  | 'endPlay'
  | 'grease'
  | 'alignment'
  | 'clearance'
  | 'load'
  | 'tyre'
  | 'parts'
  | 'value'
  /** Whether what was told last is as it should be. */
  | 'judged'
  | 'open'
  | 'due'
  | 'why'
  | 'compute'
  | 'boltPattern'
  | 'brake'
  | 'hubHeat'
  /** What may be done: old parts again, guns, oil on threads. */
  | 'practice'
  | 'brakeLaw'
  | 'nearest'
  | 'again'
  | 'rideHeight'
  | 'straight'
  /** The question before once more, with something else in it: "what about oiled". */
  | 'more'
  /** What a trade word means; `of` is a row of data/glossary.json. */
  | 'meaning'
  /** The axle told of beside the old one: "is it wider". */
  | 'compare';

export type MeasureIntent = {
  readonly kind: 'measure';
  readonly field: FieldId;
  /** What else the same words tell: "ten by two and a quarter electric" is a size and a kind of brake. */
  readonly also?: { readonly field: FieldId; readonly value: string };
} & Said &
  Where;
export type QuantityIntent = { readonly kind: 'quantity' } & Said & Where;
export type CorrectIntent = { readonly kind: 'correct'; readonly field?: FieldId; readonly not?: string } & Said & Where;
export type StrikeIntent = { readonly kind: 'strike'; readonly field?: FieldId; readonly span?: Span } & Where;
export type CommandIntent = {
  readonly kind: 'command';
  readonly name: CommandName;
  /** The rest, verbatim: title of a job, reason of a skip, what to be reminded of. */
  readonly rest?: string;
  readonly field?: FieldId;
  readonly said?: Said;
  /** Of each thing told, the acts that it may be. */
  readonly acts?: readonly (readonly string[])[];
  readonly span?: Span;
} & Where;
export type QuestionIntent = {
  readonly kind: 'question';
  readonly topic: Topic;
  /** What about: a field, a part, or the words of the sum for `compute`. */
  readonly of?: string;
  /** Values named in the question ("will a thirty-five hundred pound axle fit"). */
  readonly given?: readonly (MeasureIntent | QuantityIntent)[];
  readonly sum?: Sum;
  /** The same words worked out in another order, where they can be read so. */
  readonly otherwise?: Sum;
  /** Nothing asked in so many words: what was told can only be meant to be worked out. */
  readonly told?: true;
  /** The question's own words, lower case, as they were read. */
  readonly words?: string;
  readonly span?: Span;
} & Where;
export type NoteIntent = { readonly kind: 'note'; readonly text: string; readonly span?: Span };
export type ProblemIntent = {
  readonly kind: 'problem';
  readonly about: string;
  /** One plain sentence: what is wrong and what would do. */
  readonly message: string;
  readonly text: string;
  readonly span?: Span;
};
export type UnknownIntent = { readonly kind: 'unknown'; readonly text: string; readonly span?: Span };

export type Intent =
  | MeasureIntent
  | QuantityIntent
  | CorrectIntent
  | StrikeIntent
  | CommandIntent
  | QuestionIntent
  | NoteIntent
  | ProblemIntent
  | UnknownIntent;

/** A sum asked mid-job: "half of seventy-two and a quarter", "ninety foot pounds in newton metres". */
export type Sum =
  | { readonly op: 'add' | 'subtract' | 'multiply' | 'divide'; readonly a: Term; readonly b: Term }
  | { readonly op: 'convert'; readonly a: Term; readonly into: UnitId }
  /** To be told in a certain way: as a decimal, in thousandths, to the nearest of so many parts. */
  | {
      readonly op: 'tell';
      readonly a: Term;
      readonly as: 'decimal' | 'fraction' | 'thousandths';
      readonly parts?: number;
    };

/** What a sum is made of: a number said, a value of the job, or another sum. */
export type Term = Said | { readonly field: FieldId; readonly side?: Exclude<Side, 'both'> } | Sum;

/** What the dialogue waits for; narrows the recogniser's grammar and lets a field's name be dropped. */
export interface Expects {
  readonly fields: readonly FieldId[];
  /** True while a yes or no is waited for. */
  readonly yesNo: boolean;
  /** Answers that are offered, as they are spoken: "fifteen inches". */
  readonly offered?: readonly string[];
}

/** All that one utterance says. Every word is inside an intent's span, a filler, or in `unclaimed`. */
export interface Understanding {
  readonly text: string;
  /** After lower-casing and mending mishearings. */
  readonly normalised: string;
  readonly intents: readonly Intent[];
  readonly unclaimed: readonly string[];
}

/** How a free note reads: so that a defect mentioned in passing becomes an open point. */
export interface NoteReading {
  readonly part?: string;
  readonly side?: Side;
  readonly axle?: AxlePosition;
  readonly condition?: string;
  readonly seriousness: 'safety' | 'wear' | 'info';
}
