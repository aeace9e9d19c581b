// What every service answer starts from, and the one way to put it together.
import { Fraction, isNumber, type Quantity } from '#core';
import { cautionOf, type FieldId, type UnitId } from '#data';
import { type MeasureIntent, type QuantityIntent, type QuestionIntent, sayValue, showValue } from '#intents';
import type { EventBody, JobRecord, ValueRecord } from '#log/events';
import type { Answer, Know } from '../types.ts';
import { liveValues } from '../values.ts';
import { mannerOf } from '../words.ts';

/** A question with what is known while answering it. */
export interface Ask {
  readonly question: QuestionIntent;
  readonly job: JobRecord;
  readonly know: Know;
  readonly now: string;
  readonly readings: readonly ValueRecord[];
  /** What it is about, in its own words. */
  readonly words: string;
  readonly given: readonly (MeasureIntent | QuantityIntent)[];
  readonly tell: Tell;
}

/** Both forms of one thing: spoken and shown. */
export interface Words {
  readonly speak: string;
  readonly show: string;
}

export function askOf(question: QuestionIntent, job: JobRecord, know: Know, now: string): Ask {
  const words = (question.words ?? question.of ?? '').toLowerCase();
  return { question, job, know, now, readings: liveValues(job), words, given: question.given ?? [], tell: tellOf(know) };
}

export interface Extra {
  readonly sources?: readonly string[];
  readonly used?: readonly (ValueRecord | undefined)[];
  readonly missing?: readonly FieldId[];
  /** Id of data/cautions.json. */
  readonly caution?: string;
  readonly events?: readonly EventBody[];
  readonly asks?: true;
}

/** An answer from a code and its words; unconfirmed values it rests on are named by the dialogue. */
export function answer(code: string, { speak, show }: Words, extra: Extra = {}): Answer {
  const { sources = [], used = [], missing = [], caution, events, asks } = extra;
  return {
    code,
    speak,
    show,
    sources: [...new Set(sources)],
    rests: [...new Set(used.flatMap((value) => (value ? [value.id] : [])))],
    missing,
    ...(caution === undefined ? {} : { caution: cautionOf(caution).text }),
    ...(events ? { events } : {}),
    ...(asks ? { asks } : {}),
  };
}

/** How numbers are told: rounded to what the trade reads, "about" where that changed them. */
interface Tell {
  readonly amount: (amount: Quantity, field?: FieldId) => Words;
  /** Not rounded. */
  readonly exact: (amount: Quantity) => Words;
  /** Not rounded, as a decimal. */
  readonly decimal: (amount: Quantity) => Words;
  readonly range: (low: Fraction, high: Fraction, unit: UnitId, field?: FieldId) => Words;
  /** A bare or token value of a field as it was said. */
  readonly value: (field: FieldId, value: string) => Words;
  readonly count: (count: number) => Words;
}

type Said = { readonly value: string; readonly unit: UnitId; readonly hedge?: 'about'; readonly to?: string };

function tellOf({ shop }: Know): Tell {
  const manner = mannerOf(shop);
  const both = (field: FieldId | undefined, said: Said): Words => ({
    speak: sayValue(field, said, manner),
    show: showValue(field, said, manner),
  });
  return {
    amount: (amount, field) => both(field, rounded(inManner(amount, manner.lengthUnit, field), field)),
    exact: ({ value, unit }) => both(undefined, { value: value.toFraction(), unit }),
    // A drum is read in decimals.
    decimal: ({ value, unit }) => both('drumDiameter', { value: value.toFraction(), unit }),
    range: (low, high, unit, field) => {
      const [from, to] = [rounded({ value: low, unit }, field), rounded({ value: high, unit }, field)];
      return both(field, from.value === to.value ? from : { value: from.value, to: to.value, unit });
    },
    value: (field, value) => ({ speak: sayValue(field, { value }, manner), show: showValue(field, { value }, manner) }),
    count: (count) => both(undefined, { value: String(count), unit: '1' }),
  };
}

/** Computed lengths go into millimetres before they are rounded; thousandths of a dial are left to the dial's own field. */
function inManner(amount: Quantity, lengthUnit: 'in' | 'mm' | undefined, field: FieldId | undefined): Quantity {
  if (lengthUnit !== 'mm' || amount.unit !== 'in' || field !== undefined) return amount;
  return { value: amount.value.mul('25.4'), unit: 'mm' };
}

/** What one can read or set: finer than this is not told. */
const grain: Readonly<Partial<Record<UnitId, string>>> = {
  in: '1/32',
  mm: '1/2',
  cm: '1/10',
  m: '1/1000',
  lb: '1/10',
  kg: '1/10',
  'lbf.ft': '1',
  'lbf.in': '1',
  'N.m': '1',
  kPa: '1',
  psi: '1',
  degF: '1',
  degC: '1',
  A: '1/10',
  V: '1/100',
  ohm: '1/100',
  deg: '1/100',
  mi: '1',
  km: '1',
};

/** Exact where the value is round enough already; small torques keep a tenth, a dial's play a thousandth. */
function rounded({ value, unit }: Quantity, field?: FieldId): Said {
  const coarse = new Fraction(field === 'endPlay' ? '1/1000' : (grain[unit] ?? '1/1000'));
  const small = unit === 'lbf.ft' || unit === 'N.m' ? value.abs().compare(20) < 0 : false;
  const step = small ? new Fraction(1, 10) : coarse;
  if (value.div(step).d === 1n) return { value: value.toFraction(), unit };
  return { value: value.roundTo(step).toFraction(), unit, hedge: 'about' };
}

/** Lengths, torques and so on named in the question, by dimension. */
export function givenIn({ given }: Ask, ...units: readonly UnitId[]): readonly Quantity[] {
  return given.flatMap(({ value, unit }) =>
    unit !== undefined && units.includes(unit) && isNumber(value) ? [{ value: new Fraction(value), unit }] : [],
  );
}

/** Sentences set one after the other, blanks tidied. */
export function join(...parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part).join(' ');
}

/** Lines of a shown answer. */
export function lines(...parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part).join('\n');
}

/** Words without a number in them are the same to ear and eye. */
export function same(text: string): Words {
  return { speak: text, show: text };
}

/** Both forms of a sentence with amounts in it. */
export function both(text: (form: keyof Words) => string): Words {
  return { speak: text('speak'), show: text('show') };
}
