// The job's values as the service core sees them: what was said, where, and whether it still stands.
import type { FieldId, UnitId } from '#data';
import { convert, Fraction, type Quantity, quantity } from '../quantity/index.ts';

export type AxleName = 'front' | 'middle' | 'rear';
export type SideName = 'left' | 'right';

/** One value of a job. A record's values fit as they are; corrected and struck ones are passed over. */
export interface Reading {
  readonly field: FieldId;
  readonly value: string;
  readonly to?: string;
  readonly hedge?: 'under' | 'over' | 'about' | 'atLeast' | 'atMost';
  readonly unit?: UnitId;
  readonly side?: SideName | 'both';
  readonly axle?: AxleName;
  readonly stage: 'found' | 'fitted';
  /** The part maker's published value: a limit, not a measurement. */
  readonly origin?: 'maker';
  readonly status?: 'heard' | 'confirmed' | 'corrected' | 'struck';
}

/** Where on the trailer a step is done. */
export interface Place {
  readonly side?: SideName;
  readonly axle?: AxleName;
}

/** The place of anything that may have one; both sides are no place of one side. */
export function placeOf({ side, axle }: { readonly side?: SideName | 'both'; readonly axle?: AxleName }): Place {
  return { ...(side === undefined || side === 'both' ? {} : { side }), ...(axle === undefined ? {} : { axle }) };
}

export interface Wanted extends Place {
  readonly field: FieldId;
  readonly stage?: 'found' | 'fitted';
}

/** The last standing measurement that answers, maker's figures left out; `stage` left out prefers what was fitted. */
export function measured<R extends Reading>(readings: readonly R[], want: Wanted): R | undefined {
  const fitting = readings.filter((reading) => reading.origin !== 'maker' && answers(reading, want));
  if (want.stage === undefined) return fitting.findLast(({ stage }) => stage === 'fitted') ?? fitting.at(-1);
  return fitting.findLast(({ stage }) => stage === want.stage);
}

/** The part maker's published value for a field, when the technician gave one. */
export function makersValue<R extends Reading>(readings: readonly R[], field: FieldId): R | undefined {
  return readings.findLast((reading) => reading.origin === 'maker' && answers(reading, { field }));
}

function answers(reading: Reading, want: Wanted): boolean {
  if (reading.field !== want.field || reading.status === 'corrected' || reading.status === 'struck') return false;
  const rightAxle = want.axle === undefined || reading.axle === want.axle;
  const rightSide = want.side === undefined || reading.side === want.side || reading.side === 'both';
  return rightAxle && rightSide;
}

/** A reading as an exact amount in `unit`. @throws TypeError when the reading is a token or of another dimension. */
export function amountIn(reading: Reading, unit: UnitId): Quantity {
  const given = reading.unit === undefined || reading.unit === '1' ? unit : reading.unit;
  return convert(quantity(reading.value, given), unit);
}

/** True when both say the same: as words, or as exact numbers ("1/2" and "0.5"). */
export function sameValue(one: string, other: string): boolean {
  if (one === other) return true;
  return isNumber(one) && isNumber(other) && new Fraction(one).equals(other);
}

/** True for text that reads as one exact number, "579/8" or "0.005". */
export function isNumber(text: string): boolean {
  return /^-?\d+(\.\d+)?(\/\d+)?$/.test(text) && !/\/0+$/.test(text);
}
