// Values into words and onto the screen. One function each, and both parse back to the same value.
import { type Field, type FieldId, fieldOf, type UnitId } from '#data';
import type { Hedge } from '../types.ts';
import { choiceWords } from '../words/choices.ts';
import { unitSpoken } from '../words/units.ts';
import { exact, type NumberStyle, shownNumber, spokenNumber } from './number.ts';
import * as token from './token.ts';

export interface SaidValue {
  readonly value: string;
  readonly unit?: UnitId;
  readonly hedge?: Hedge;
  readonly to?: string;
  readonly plusMinus?: string;
}

/** How this shop likes it. Inches become exact millimetres where `lengthUnit` is mm; millimetres are never made inches. */
export interface Manner {
  readonly spelling?: 'british' | 'american';
  readonly lengthUnit?: 'in' | 'mm';
}

/** Words only: "seventy-two and three eighths inches", "five on four and a half", "about ninety foot pounds". */
export function sayValue(field: FieldId | undefined, said: SaidValue, manner: Manner = {}): string {
  return spelling(render(field, said, manner, true), manner);
}

/** For the screen: "72 3/8 in", "5 on 4 1/2", "90 lb-ft". */
export function showValue(field: FieldId | undefined, said: SaidValue, manner: Manner = {}): string {
  return render(field, said, manner, false);
}

/** The name we speak: "hub face", "U-bolt torque" is said "u bolt torque". */
export function sayField(field: FieldId, manner: Manner = {}): string {
  return spelling(fieldOf(field).said[0] ?? field, manner);
}

/** The label on the screen. */
export function showField(field: FieldId, manner: Manner = {}): string {
  return spelling(fieldOf(field).label, manner);
}

type Token = (value: string, unit: UnitId | undefined, words: boolean) => string;
const stamped: Token = (value, _unit, words) => (words ? token.spelled(value) : value);
const threaded: Token = (value, _unit, words) => token.thread(value, words);

const tokens: Readonly<Partial<Record<FieldId, Token>>> = {
  boltPattern: token.boltPattern,
  brakeSize: token.brakeSize,
  tyreSize: (value, _unit, words) => token.tyre(value, words),
  studThread: threaded,
  uBoltThread: threaded,
  spindleThread: threaded,
  bearing: stamped,
  innerBearing: stamped,
  outerBearing: stamped,
  cup: stamped,
  innerCup: stamped,
  outerCup: stamped,
  seal: stamped,
  serial: stamped,
  vin: stamped,
};

function render(field: FieldId | undefined, said: SaidValue, manner: Manner, words: boolean): string {
  const row = field && fieldOf(field);
  if (row?.choices) return choiceText(row.id, said.value);
  const asToken = field && tokens[field];
  if (asToken) return asToken(said.value, said.unit ?? row?.unit, words);
  return number(row, said, manner, words);
}

function choiceText(field: FieldId, choice: string): string {
  const phrase = choiceWords.find((row) => row.field === field && row.choice === choice)?.said[0] ?? choice;
  const plain = phrase.replace(/\s*[([].*?[)\]]/g, '');
  return choice.length === 1 ? `${plain.slice(0, -1)}${choice}` : plain;
}

function number(row: Field | undefined, said: SaidValue, manner: Manner, words: boolean): string {
  const given = said.unit ?? row?.unit ?? '1';
  const metric = manner.lengthUnit === 'mm' && given === 'in';
  const unit = metric ? 'mm' : given;
  const value = (text: string) => (metric ? exact(text).mul('25.4') : exact(text));
  const style = styleOf(row, unit, said);
  const text = (amount: string) => (words ? spokenNumber : shownNumber)(value(amount), style);
  const range = said.to === undefined ? '' : ` to ${text(said.to)}`;
  const span =
    range && words && said.hedge === undefined
      ? `between ${text(said.value)} and ${text(said.to ?? '0')}`
      : text(said.value) + range;
  const last = value(said.to ?? said.value);
  const tolerance = said.plusMinus === undefined ? '' : `${words ? ' plus or minus ' : ' ± '}${text(said.plusMinus)}`;
  const named = words && span.includes('thousandth') ? '' : unitText(unit, last.compare(0) > 0 && last.compare(1) <= 0, words);
  return `${hedges[said.hedge ?? 'none'][words ? 0 : 1]}${span}${named}${tolerance}`;
}

/** A tape's inches are read in halves to sixty-fourths; a gauge's in thousandths; everything else in decimals. */
function styleOf(row: Field | undefined, unit: UnitId, said: SaidValue): NumberStyle {
  if (unit !== 'in' && unit !== '1' && unit !== 'lb') return 'decimal';
  const gauge = row?.step === '1/1000';
  if (!gauge) return exact(said.value).d === 1000n ? 'decimal' : 'tape';
  return exact(row?.max ?? '1').compare('1/2') <= 0 ? 'thousandths' : 'decimal';
}

function unitText(unit: UnitId, single: boolean, words: boolean): string {
  const { one, many, short } = unitSpoken[unit];
  if (!words) return unit === 'deg' || unit === 'degF' || unit === 'degC' ? short : short && ` ${short}`;
  return single ? one && ` ${one}` : many && ` ${many}`;
}

const hedges: Readonly<Record<Hedge | 'none', readonly [said: string, shown: string]>> = {
  none: ['', ''],
  under: ['just under ', 'just under '],
  over: ['just over ', 'just over '],
  about: ['about ', 'about '],
  atLeast: ['at least ', 'at least '],
  atMost: ['at most ', 'at most '],
};

const american: readonly (readonly [RegExp, string])[] = [
  [/\b([cC])entre/g, '$1enter'],
  [/\b([tT])yre/g, '$1ire'],
  [/\b(\w*)metre/g, '$1meter'],
  [/\b([aA])luminium/g, '$1luminum'],
  [/\b([eE])qualiser/g, '$1qualizer'],
];

/** Any text in the shop's spelling. */
export function spelling(text: string, manner: Manner): string {
  if (manner.spelling !== 'american') return text;
  return american.reduce((left, [from, to]) => left.replace(from, to), text);
}
