// A number with its unit, exact and in the unit said: "half an inch", "six foot two", "two inches and three eighths".
import Fraction from 'fraction.js';
import type { UnitId } from '#data';
import type { Token } from '../tokens.ts';
import { classOf, isNumberWord } from './classes.ts';
import { readParts } from './fraction.ts';
import { type NumberReading, numberOf, readNumbers } from './number.ts';
import { readUnit, type UnitReading } from './unit.ts';

export interface Amount {
  readonly start: number;
  readonly end: number;
  readonly value: Fraction;
  readonly unit: UnitId | undefined;
  /** The unit's name as said: "mil" may mean two things. */
  readonly unitWord: string | undefined;
  readonly resolution: string | undefined;
  readonly soundsLike: readonly Fraction[];
  /** How the number itself was said. */
  readonly number: NumberReading;
  /** Where the number begins, after any hedge. */
  readonly numberAt: number;
  /** Its number was typed in digits, not spoken. */
  readonly typed: boolean;
}

export function withUnit(tokens: readonly Token[], number: NumberReading): Amount {
  const unit = readUnit(tokens, unitAt(tokens, number));
  const plain = amount(tokens, number, number.end, number.value, unit);
  if (!unit) return plain;
  return feetAndInches(tokens, plain, unit) ?? withSmaller(tokens, plain, unit) ?? partAfterUnit(tokens, plain, unit) ?? plain;
}

/** Lengths and weights said in two units, in millimetres and pounds: "two metres and five centimetres", "two yards seven feet". */
const sizes: Readonly<Partial<Record<UnitId, { readonly of: 'metric' | 'inches' | 'pounds'; readonly size: number }>>> = {
  km: { of: 'metric', size: 1_000_000 },
  m: { of: 'metric', size: 1000 },
  cm: { of: 'metric', size: 10 },
  mm: { of: 'metric', size: 1 },
  in: { of: 'inches', size: 1 },
  lb: { of: 'pounds', size: 1 },
};

/** The same amount goes on in a smaller unit of its kind; the sum is in the smaller one. */
function withSmaller(tokens: readonly Token[], larger: Amount, unit: UnitReading): Amount | undefined {
  const joint = classOf(tokens[larger.end])?.is === 'and' || tokens[larger.end]?.word === ',' ? 1 : 0;
  const number = readNumbers(tokens, larger.end + joint)[0];
  const next = number && number.whole?.form !== 'run' ? readUnit(tokens, unitAt(tokens, number)) : undefined;
  const [from, to] = [sizes[unit.unit], next && sizes[next.unit]];
  if (!number || !next || !from || !to || from.of !== to.of) return undefined;
  if (unit.times.mul(from.size).compare(next.times.mul(to.size)) <= 0) return undefined;
  const rest = withUnit(tokens, number);
  const last = sizes[rest.unit ?? next.unit] ?? to;
  return {
    ...rest,
    start: larger.start,
    numberAt: larger.numberAt,
    number: larger.number,
    value: larger.value.mul(from.size).div(last.size).add(rest.value),
  };
}

/** "half an inch", "three quarters of an inch", "a 3-inch tube". */
function unitAt(tokens: readonly Token[], number: NumberReading): number {
  let at = number.end;
  if (number.part) {
    if (tokens[at]?.word === 'of') at += 1;
    const article = classOf(tokens[at])?.is === 'article';
    return article && readUnit(tokens, at + 1) ? at + 1 : at;
  }
  const counted = tokens[at]?.word === 'of' && counts.has(tokens[at - 1]?.word ?? '');
  const hyphen = tokens[at]?.word === '-' && tokens[at]?.glued && tokens[at + 1]?.kind === 'word';
  return counted || hyphen ? at + 1 : at;
}

/** "a couple of thou", "two dozen of". */
const counts = new Set(['couple', 'pair', 'dozen', 'dozens']);

function amount(
  tokens: readonly Token[],
  number: NumberReading,
  end: number,
  value: Fraction,
  unit: UnitReading | undefined,
): Amount {
  const times = unit?.times;
  return {
    start: number.start,
    numberAt: number.start,
    end: unit?.end ?? end,
    value: times ? value.mul(times) : value,
    soundsLike: times ? number.soundsLike.map((like) => like.mul(times)) : number.soundsLike,
    number,
    typed: tokens[number.start]?.kind !== 'word',
    unit: unit?.unit,
    unitWord: unit?.said,
    resolution: number.resolution,
  };
}

/** "six foot two and a quarter", `7'-4 3/8"`, "4ft 11in", "six feet and two inches". Bare inches only below twelve. */
function feetAndInches(tokens: readonly Token[], feet: Amount, unit: UnitReading): Amount | undefined {
  if (unit.times.compare(12) !== 0) return undefined;
  const joint = tokens[feet.end];
  // "8 ft. 6 in."
  const stop = joint?.word === '.' && joint.glued && tokens[feet.end + 1]?.kind === 'number';
  const joined = classOf(joint)?.is === 'and' || joint?.word === ',' || stop;
  const dash = tokens[feet.end]?.word === '-' && isNumberWord(tokens[feet.end + 1]);
  const number = readNumbers(tokens, joined || dash ? feet.end + 1 : feet.end).find(
    ({ value }) => value.compare(12) < 0 && value.s >= 0n,
  );
  if (!number || number.whole?.form === 'run') return undefined;
  const inches = readUnit(tokens, unitAt(tokens, number));
  const said = inches?.unit === 'in' && inches.times.compare(1) === 0;
  if (inches ? !said : joined && !number.part) return undefined;
  return {
    ...feet,
    end: inches?.end ?? number.end,
    value: feet.value.add(number.value),
    soundsLike: [],
    resolution: number.resolution ?? feet.resolution,
  };
}

/** "two inches and three eighths", "a foot and a half", "a ton and three quarters": the part is of the unit just said. */
function partAfterUnit(tokens: readonly Token[], whole: Amount, unit: UnitReading): Amount | undefined {
  if (classOf(tokens[whole.end])?.is !== 'and') return undefined;
  const part = readParts(tokens, whole.end + 1).at(-1);
  if (!part || whole.number.shape === 'fraction') return undefined;
  const again = readUnit(tokens, part.end);
  const value = new Fraction(part.numerator, part.denominator).mul(unit.times);
  return {
    ...whole,
    end: again?.unit === unit.unit ? again.end : part.end,
    value: whole.value.add(value),
    resolution: `1/${part.denominator}`,
  };
}

/** "inch and three quarters", "an inch", "a foot and a half", "ton and a half": one of the unit. */
export function unitAndPart(tokens: readonly Token[], at: number): Amount | undefined {
  const article = classOf(tokens[at])?.is === 'article' ? 1 : 0;
  const unit = readUnit(tokens, at + article);
  // "a mi", "a g": letters are no unit by themselves.
  if (!unit || !/^.{3}|^[^aeiou]{2}$/.test(unit.said) || tokens[at + article]?.kind === 'mark') return undefined;
  const one = numberOf([at, at + article], 'whole', new Fraction(1), undefined, []);
  const whole = amount(tokens, one, one.end, one.value, unit);
  const found = partAfterUnit(tokens, whole, unit) ?? (article ? (feetAndInches(tokens, whole, unit) ?? whole) : undefined);
  return found && (article || found !== whole) ? found : undefined;
}
