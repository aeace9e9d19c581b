// Sums asked mid-job. Exact where it can be said, "about" where a whole pound or a tape's mark is nearer.
import { dimensionOf, Fraction, measured, type Quantity, type SumAsked, type SumResult, workOut } from '#core';
import { type FieldId, fieldOf, type UnitId } from '#data';
import type { Sum, Term } from '#intents';
import type { ValueRecord } from '#log/events';
import type { Answer } from '../types.ts';
import { sayFieldOf, sentence } from '../words.ts';
import { type Ask, answer, same, type Words } from './service-ask.ts';
import { askBack } from './service-follow-ups.ts';

export function compute(ask: Ask): Answer {
  const { sum, otherwise } = ask.question;
  if (!sum) return askBack('compute.notUnderstood');
  const noted = notedIn(sum).map((term) => ({ ...term, value: readingOf(term, ask) }));
  const lacking = noted.find(({ value }) => value === undefined);
  if (lacking) return answer('compute.notMeasured', notMeasured(lacking.field, ask), { missing: [lacking.field] });
  const first = workedOut(sum, ask);
  const second = otherwise && workedOut(otherwise, ask);
  const apart = second?.result.code === 'sum' && first.result.code === 'sum' && !sameAmount(first.result, second.result);
  return answer(`compute.${first.result.code}`, apart ? bothWays(first.words, second.words) : first.words, {
    used: noted.map(({ value }) => value),
  });
}

/** Told in the order said first: the ear cannot hear brackets. */
const bothWays = (first: Words, second: Words): Words => ({
  speak: `In the order said: ${lower(first.speak)} The other way round: ${lower(second.speak)}`,
  show: `In the order said: ${first.show}\nThe other way round: ${second.show}`,
});
const lower = (text: string): string => text.replace(/^./, (letter) => letter.toLowerCase());

type Done = Extract<SumResult, { readonly code: 'sum' }>;
const sameAmount = (a: Done, b: Done): boolean => a.result.unit === b.result.unit && a.result.value.equals(b.result.value);

interface WorkedOut {
  readonly result: SumResult;
  readonly words: Words;
}

type Manner = Extract<Sum, { readonly op: 'tell' }>;

function workedOut(sum: Sum, ask: Ask): WorkedOut {
  const manner = sum.op === 'tell' ? sum : undefined;
  const result = workOut(manner ? inManner(manner, ask) : (resolved(sum, ask) as SumAsked));
  return { result, words: result.code === 'sum' ? told(result, manner, ask) : faults[result.code] };
}

/** Thousandths and tape marks are of an inch, also where it was said in millimetres. */
function inManner({ as, parts, a }: Manner, ask: Ask): SumAsked {
  const inner = resolved(a, ask);
  const plain: SumAsked = { op: 'add', a: inner, b: { value: '0' } };
  const found = workOut(plain);
  const length = found.code === 'sum' && dimensionOf(found.result.unit) === 'length';
  return length && (as === 'thousandths' || parts !== undefined) ? { op: 'convert', a: plain, into: 'in' } : plain;
}

/** With the job's values in place of their names. */
function resolved(term: Term, ask: Ask): SumAsked | SumAsked['a'] {
  if ('field' in term) return readingOf(term, ask) ?? { value: '0' };
  if (!('op' in term)) return term;
  if (term.op === 'tell') return resolved(term.a, ask);
  const a = resolved(term.a, ask);
  return term.op === 'convert' ? { op: 'convert', a, into: term.into } : { op: term.op, a, b: resolved(term.b, ask) };
}

type Noted = Extract<Term, { readonly field: unknown }>;

function notedIn(term: Term): readonly Noted[] {
  if ('field' in term) return [term];
  return 'op' in term ? [...notedIn(term.a), ...('b' in term ? notedIn(term.b) : [])] : [];
}

const readingOf = ({ field, side }: Noted, { readings }: Ask): ValueRecord | undefined =>
  measured(readings, { field, ...(side ? { side } : {}) });

function notMeasured(field: FieldId, { know }: Ask): Words {
  return {
    speak: `I have no ${sayFieldOf(field, know.shop)} yet. Call it out, then ask again.`,
    show: `No ${fieldOf(field).label} yet: call it out, then ask again.`,
  };
}

const faults: Readonly<Record<Exclude<SumResult['code'], 'sum'>, Words>> = {
  unlikeUnits: same('Those two are not the same kind of thing. Say the units again.'),
  divideByNothing: same('Nothing divides by zero. Say the sum again.'),
  noSuchUnit: same('Multiply or divide by a plain number. Say the sum again.'),
};

/** A tape's fraction or a short decimal is told as it is; longer ones are rounded and say so. */
function told({ result, assumed }: Done, manner: Manner | undefined, ask: Ask): Words {
  const from = assumed === undefined ? '' : `, taken as ${unitNames[assumed] ?? assumed}`;
  const { words, rounded } = manner ? inWords(result, manner, ask) : plainly(result, ask);
  return {
    speak: `${sentence(words.speak)}${from}.`,
    show: `${words.show}${rounded ? ` (${result.value.valueOf().toFixed(3)})` : ''}${from}`,
  };
}

function plainly(result: Quantity, { tell, know }: Ask) {
  const exact = isShort(result) && !(result.unit === 'in' && know.shop.lengthUnit === 'mm');
  return { words: exact ? tell.exact(result) : tell.amount(result), rounded: !exact };
}

/** As asked: so many thousandths, a decimal, or the nearest of so many parts. */
function inWords({ value, unit }: Quantity, { as, parts }: Manner, { tell }: Ask) {
  const step = as === 'fraction' ? new Fraction(1, parts ?? 64) : new Fraction(1, as === 'thousandths' ? 1000 : 10_000);
  const near = value.roundTo(step);
  const rounded = !near.equals(value);
  const amount = { value: near, unit };
  const words =
    as === 'fraction'
      ? parts !== undefined && near.d !== 1n && near.d !== BigInt(parts)
        ? inParts(near, parts, tell)
        : tell.exact(amount)
      : as === 'thousandths'
        ? thousandths(near, tell.count(Number(near.mul(1000))))
        : tell.decimal(amount);
  const about = rounded ? 'about ' : '';
  return { words: { speak: `${about}${words.speak}`, show: `${about}${words.show}` }, rounded };
}

const partNames: Readonly<Record<number, string>> = {
  4: 'quarters',
  8: 'eighths',
  16: 'sixteenths',
  32: 'thirty-seconds',
  64: 'sixty-fourths',
};

/** Not brought down: five eighths are ten sixteenths. */
function inParts(value: Fraction, parts: number, { count }: Ask['tell']): Words {
  const whole = Number(value.floor());
  const some = count(Number(value.sub(whole).mul(parts)));
  const before = whole === 0 ? undefined : count(whole);
  return {
    speak: `${before ? `${before.speak} and ` : ''}${some.speak} ${partNames[parts] ?? ''}`,
    show: `${before ? `${before.show} ` : ''}${some.show}/${parts}`,
  };
}

const thousandths = (value: Fraction, count: Words): Words => ({
  speak: `${count.speak} thousandth${value.equals('1/1000') ? '' : 's'}`,
  show: `${value.valueOf().toFixed(3)} in`,
});

const unitNames: Readonly<Partial<Record<UnitId, string>>> = {
  in: 'inches',
  mm: 'millimetres',
  'lbf.ft': 'foot pounds',
  'N.m': 'newton metres',
  lb: 'pounds',
  kg: 'kilograms',
  psi: 'psi',
  kPa: 'kilopascals',
  degF: 'Fahrenheit',
  degC: 'Celsius',
  mi: 'miles',
  km: 'kilometres',
};

function isShort({ value }: Quantity): boolean {
  return value.d <= 64n ? (value.d & (value.d - 1n)) === 0n || 1000n % value.d === 0n : 1000n % value.d === 0n;
}
