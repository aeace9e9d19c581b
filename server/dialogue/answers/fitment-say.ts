// Numbers of the fitment answers: exact where a tape can show them, "about" to the sixteenth where not.

import { Fraction, type Quantity } from '#core';
import type { FieldId, UnitId } from '#data';
import { type Manner, sayField, sayValue, showField, showValue } from '#intents';

/** One way of putting numbers and fields: spoken or shown. */
export interface Voice {
  readonly amount: (amount: Quantity) => string;
  readonly value: (field: FieldId, value: string, unit?: UnitId) => string;
  readonly field: (field: FieldId) => string;
  readonly text: (text: string) => string;
}

/** Rounding of what was computed: a tape's sixteenth, a millimetre, a pound. */
const grain: Readonly<Partial<Record<UnitId, Fraction>>> = { in: new Fraction(1, 16), mm: new Fraction(1), lb: new Fraction(1) };

export function voiceOf(manner: Manner, spoken: boolean): Voice {
  const value = spoken ? sayValue : showValue;
  const amount = (given: Quantity) => value(undefined, tidy(given), manner);
  return {
    amount,
    value: (field, text, unit) => value(field, { value: text, ...(unit && unit !== '1' && { unit }) }, manner),
    field: (field) => (spoken ? sayField : showField)(field, manner),
    text: spoken ? inWords : (text) => text,
  };
}

/** A computed amount as it is told: exact where that is short, else to the grain with "about". */
export function tidy({ value, unit }: Quantity): { readonly value: string; readonly unit: UnitId; readonly hedge?: 'about' } {
  const step = grain[unit];
  if (!step || value.div(step).d === 1n) return { value: value.toFraction(), unit };
  return { value: value.roundTo(step).toFraction(), unit, hedge: 'about' };
}

/** "rack 2, 3,500 pound axle" -> "rack two, thirty-five hundred pound axle". */
export function inWords(text: string): string {
  return text.replace(/\d[\d,]*/g, (digits) => {
    const number = digits.replace(/,$/, '').replaceAll(',', '');
    return sayValue(undefined, { value: number, unit: '1' }) + (digits.endsWith(',') ? ',' : '');
  });
}
