// The job's values as the fitment core reads them, and the axle that is being asked about.
import { type Candidate, convert, dimensionOf, type FitReading, type FitResult, needsOf, numberOf, rank } from '#core';
import { type FieldId, fieldOf, type StockAxle, type UnitId } from '#data';
import type { MeasureIntent, QuestionIntent } from '#intents';
import type { JobRecord } from '#log/events';
import type { Know } from '../types.ts';
import { liveValues } from '../values.ts';
import { namedByPlace } from './fitment-named.ts';

/** Every value that counts. The part maker's limits are not measurements and are left out. */
export function readingsOf(job: JobRecord): FitReading[] {
  return liveValues(job)
    .filter(({ origin }) => origin !== 'maker')
    .map((value) => ({ ...value, status: value.status === 'confirmed' ? 'confirmed' : 'heard' }));
}

/** What a question gives along, "a spring centre of fifty-eight", as readings of the trailer. */
export function givenReadings({ given = [] }: QuestionIntent): FitReading[] {
  return given.filter(isMeasure).map((said) => ({ ...said, id: `given.${said.field}`, stage: 'found', status: 'heard' }));
}

const isMeasure = (said: { readonly kind: string }): said is MeasureIntent => said.kind === 'measure';

/** A value as said or noted, in its field's usual unit; a token, or a number of another kind, as it stands. */
export function inUsual({
  field,
  value,
  unit,
}: {
  readonly field: FieldId;
  readonly value: string;
  readonly unit?: UnitId;
}): string {
  const usual = fieldOf(field).unit;
  const amount = numberOf(value);
  if (!amount || !usual || !unit || unit === '1' || dimensionOf(unit) !== dimensionOf(usual)) return value;
  return convert({ value: amount, unit }, usual).value.toFraction();
}

/** An axle without brakes is asked about, not the one it would replace. */
const unbraked = /(?<!(?:of|replac(?:e|es|ing)) (?:an?|the|this|that|my) )\b(?:idler|unbraked)\b/;

/** What a question says of the axle itself: "will a thirty-five hundred pound axle fit". */
export function givenValues({ given = [], words = '' }: QuestionIntent): Candidate['values'] {
  const values: Partial<Record<FieldId, string>> = unbraked.test(words) ? { brakeType: 'idler' } : {};
  for (const said of given) {
    if (said.kind === 'measure') values[said.field] = inUsual(said);
    else if (said.unit && dimensionOf(said.unit) === 'mass') values.capacity = inUsual({ ...said, field: 'capacity' });
  }
  return values;
}

/** An axle and where it lies, as far as that is known. */
export type Placed = Candidate & Pick<Partial<StockAxle>, 'place'>;

/** The axle asked about: named, described, or chosen before. Undefined: none was. */
export function candidateOf(question: QuestionIntent, job: JobRecord, { stock }: Know): Placed | undefined {
  const named = stock.find(({ id }) => id.toLowerCase() === question.of?.toLowerCase());
  if (named) return named;
  const [there, ...others] = namedByPlace(question, stock);
  if (there) return others.length === 0 ? there : undefined;
  const turn = turnSaid(question);
  if (turn !== undefined) return told(rank(needsOf(readingsOf(job)), stock, ranked))[turn]?.candidate;
  if (Object.keys(givenValues(question)).length > 0) return undefined;
  if (!job.candidate) return undefined;
  const { stock: id, title, values } = job.candidate;
  const place = stock.find((row) => row.id === id)?.place;
  return { id, title, values, ...(place === undefined ? {} : { place }) };
}

/** How many of the rack are ranked, and how many of them told. */
export const ranked = 8;
const mostTold = 3;

/** The axles told of a ranking: those that fit, or the nearest where none does. */
export function told<T extends { readonly result: FitResult }>({ best }: { readonly best: readonly T[] }): readonly T[] {
  const good = best.filter(({ result }) => isGood(result));
  return (good.length > 0 ? good : best).slice(0, mostTold);
}

export const isGood = (result: FitResult): boolean => result === 'fits' || result === 'fitsWithWork';

/** "The second one" of those told. */
function turnSaid({ of, words = '' }: QuestionIntent): number | undefined {
  const turn = of === 'chosen' ? ['first', 'second', 'third'].findIndex((word) => words.includes(word)) : -1;
  return turn < 0 ? undefined : turn;
}

/** Rows of the rack that are as the question says. */
export function described(question: QuestionIntent, { stock }: Know): readonly StockAxle[] {
  const wanted = Object.entries(givenValues(question));
  return stock.filter(({ values }) => wanted.every(([field, value]) => values[field as FieldId] === value));
}
