// The value that begins somewhere in a statement: a number or a trade token, whichever the words before it and what is waited for call for.
import type Fraction from 'fraction.js';
import { type FieldId, fieldOf, fields, type UnitId } from '#data';
import { fieldNames, type Holds, holds, isPlausible } from './fields.ts';
import type { Item } from './items.ts';
import type { Plausible } from './numbers/likeliest.ts';
import { type QuantityReading, quantityStarts, readQuantity } from './numbers/quantity.ts';
import { unitVocabulary } from './numbers/unit.ts';
import { readStamp, type Stamp, stampStarts } from './stamped/index.ts';
import { sidewallAt } from './stamped/tyre.ts';
import type { Token } from './tokens.ts';
import { wordList } from './wordbook.ts';
import { fillers, separators } from './words/fillers.ts';

/** What the words so far call for. */
export interface Calling {
  readonly fields: readonly FieldId[];
  /** True when nothing was named and the dialogue's question stands in for a name. */
  readonly implied: boolean;
}

export function valueAt(tokens: readonly Token[], at: number, calling: Calling): Item | undefined {
  if (!mayStart(tokens, at, calling)) return undefined;
  const sidewall = sidewallAt(tokens, at);
  if (sidewall) return { is: 'choice', field: sidewall.field, choice: sidewall.choice, start: at, end: sidewall.end };
  const quantity = quantityAt(tokens, at, calling);
  if (quantity && (isPronoun(tokens, at, quantity) || (calling.fields.length > 0 && isTime(tokens, quantity)))) return undefined;
  const asked = calling.fields.length > 0 ? calling.fields.map(holds) : askedAfter(tokens, quantity);
  const stamp = canStamp(asked, calling) ? stampAt(tokens, at, asked, calling) : undefined;
  if (
    stamp &&
    !(quantity && isRather(quantity, stamp, calling)) &&
    (!quantity || stamp.end >= quantity.end || asked.includes(stamp.holds))
  )
    return { is: 'stamp', stamp: threadOf(stamp, calling), start: at, end: stamp.end };
  return quantity && { is: 'number', quantity, start: at, end: quantity.end };
}

/**
 * "Plate says thirty nine hundred", where a VIN and a weight are waited for: what is no VIN, nor spelled like one, is the weight. "Tyre six ten
 * kilopascals" has a unit, and is no size.
 */
function isRather({ number, value: size, unit, end }: QuantityReading, stamp: Stamp, calling: Calling): boolean {
  const { digits = '', chunks = 0 } = number.whole ?? {};
  const isWeight = stamp.problem !== undefined && calling.implied && chunks < digits.length;
  const hasUnit = unit !== undefined && end > stamp.end && calling.fields.length > 0;
  return (isWeight || hasUnit) && plausibleFor(calling)?.(size, unit) === true;
}

function stampAt(tokens: readonly Token[], at: number, asked: readonly Holds[], calling: Calling): Stamp | undefined {
  const found = readStamp(tokens, at, asked);
  if (!found || !isSpelled(found.holds) || !isAside(tokens, at, found, calling)) return found;
  const others = asked.filter((kind) => !isSpelled(kind));
  return readStamp(tokens, at, others);
}

const isSpelled = (kind: Holds): boolean => kind === 'vin' || kind === 'serial';

/** What is spelled and waited for is all that is said: "outer and nut are on" is no VIN with an R in it. */
function isAside(tokens: readonly Token[], at: number, { end, problem }: Stamp, { implied }: Calling): boolean {
  if (!implied || (problem === undefined && end - at > 8)) return false;
  const last = tokens[end];
  if (last && !separators.has(last.word)) return true;
  let first = at;
  while (first > 0 && fillers.has(tokens[first - 1]?.word ?? '')) first -= 1;
  return first > 0 && !separators.has(tokens[first - 1]?.word ?? '');
}

/** A thread that nothing names is of what is waited for. */
function threadOf(stamp: Stamp, { fields, implied }: Calling): Stamp {
  const field = implied && stamp.holds === 'thread' ? fields.find((one) => holds(one) === 'thread') : undefined;
  return field ? { ...stamp, field } : stamp;
}

/** Most words begin no value; only after a stamped field's name may any word be spelling. */
function mayStart(tokens: readonly Token[], at: number, calling: Calling): boolean {
  const token = tokens[at];
  if (token?.kind === 'mark') return isSign(token);
  if (token?.kind !== 'word') return !isExponent(tokens, at);
  return starts(token) || calling.fields.some((field) => holds(field) !== 'number');
}

/** "Tread thirty seconds": a time, or a fraction whose top was lost; no size of what was named. */
const isTime = (tokens: readonly Token[], { end, unit }: QuantityReading): boolean =>
  unit === undefined && /^(second|minute|hour|day|week)s?$/.test(tokens[end]?.word ?? '');

const starts = wordList([...quantityStarts, ...stampStarts]);
const isSign = wordList(['-', '+', '~']);
const placeNouns = wordList('left right front rear middle inner outer side'.split(' '));
const points = wordList(
  'this that the these those which each every another other no any last first next new old only same wrong right bad good'.split(
    ' ',
  ),
);

/** "this one", "another one", "one that fits": no number. */
function isPronoun(tokens: readonly Token[], at: number, { end, unit }: QuantityReading): boolean {
  if (tokens[at]?.word !== 'one' || end !== at + 1 || unit !== undefined) return false;
  const next = tokens[end]?.word;
  // "The left one is seventy".
  if (placeNouns(tokens[at - 1])) return next === 'is' || next === 'was' || next === 'reads';
  return next === 'that' || next === 'which' || (points(tokens[at - 1]) && next !== 'by' && next !== 'x');
}

/** "3 km2", "9 m/s2": no number of its own. */
const isExponent = (tokens: readonly Token[], at: number) =>
  tokens[at]?.glued === true && /^[23]$/.test(tokens[at]?.word ?? '') && unitVocabulary.has(tokens[at - 1]?.word ?? '');

/** "five thirty twelve tyre", "25580 inner bearing": the name comes after. */
function askedAfter(tokens: readonly Token[], quantity: QuantityReading | undefined): readonly Holds[] {
  if (quantity?.number.shape !== 'whole' || quantity.unit !== undefined) return [];
  return (fieldNames.longest(tokens, quantity.end)?.meaning ?? []).map(holds).filter((kind) => kind !== 'number');
}

function quantityAt(tokens: readonly Token[], at: number, calling: Calling): QuantityReading | undefined {
  if (tokens[at - 1]?.word === 'not') return readQuantity(tokens, at, notLookAlikes);
  if (!calling.implied) return readQuantity(tokens, at, plausibleFor(calling));
  const whole = readQuantity(tokens, at);
  const gauge = whole?.number.whole?.form === 'run' && whole.unit ? ofUnit.get(whole.unit) : undefined;
  if (gauge && calling.fields.length === 0) return readQuantity(tokens, at, gauge);
  const named = whole && nameAfter(tokens, whole.end);
  // "Twelve six at the battery", "eighty one on the hub face": the name comes after.
  if (named) return readQuantity(tokens, at, plausibleFor({ fields: named.meaning, implied: false }));
  if (calling.fields.length > 0) return readQuantity(tokens, at, plausibleFor(calling));
  if (whole?.number.whole?.form !== 'run' || notTwoLengths(whole.value, whole.unit)) return whole;
  return readQuantity(tokens, at, notTwoLengths);
}

function nameAfter(tokens: readonly Token[], end: number): ReturnType<typeof fieldNames.longest> {
  const [joint, article] = [tokens[end]?.word ?? '', tokens[end + 1]?.word];
  const after = nameJoints.has(joint) ? end + (article === 'the' ? 2 : 1) : end;
  return fieldNames.longest(tokens, end) ?? fieldNames.longest(tokens, after);
}

const nameJoints = new Set(['on', 'at', 'for', 'across']);

/** After "hub face" only a number can come, however it is chopped. */
const canStamp = (asked: readonly Holds[], calling: Calling) =>
  calling.implied || asked.length === 0 || asked.some((kind) => kind !== 'number');

function plausibleFor(calling: Calling): Plausible | undefined {
  const rows = calling.fields.map(fieldOf).filter(({ min }) => min !== undefined);
  if (rows.length === 0) return undefined;
  const decimal = rows.every(({ id }) => inDecimals.has(id));
  const countedIn = counted.find(({ ids }) => calling.fields.every((field) => ids.has(field)))?.size;
  return Object.assign((number: Fraction, unit: UnitId | undefined) => rows.some((row) => isPlausible(row, number, unit)), {
    decimal,
    ...(countedIn ? { countedIn } : {}),
  });
}

/** Fields called by the number of their parts; of thirty-seconds only where there is no inch of them, of a tread and a lining. */
const counted = [1000, 32].map((size) => ({
  size,
  ids: new Set(fields.filter(({ step, max }) => step === `1/${size}` && (size === 1000 || Number(max) <= 1)).map(({ id }) => id)),
}));

/** Fields that are read off in tenths, hundredths and so on. */
const inDecimals: ReadonlySet<FieldId> = new Set(
  fields.filter(({ step }) => step !== undefined && /^1\/10+$/.test(step)).map(({ id }) => id),
);

/** Units that only one kind of gauge shows, without a field's name: "eleven nine volts". */
const ofUnit: ReadonlyMap<UnitId, Plausible | undefined> = new Map(
  (['voltage', 'magnetCurrent', 'magnetResistance'] as const).map((field) => [
    fieldOf(field).unit ?? '1',
    plausibleFor({ fields: [field], implied: false }),
  ]),
);

/** "not fifteen fifty": what was heard and what was meant, not fifteen hundred and fifty. */
const notLookAlikes: Plausible = (value) => {
  const [first, second] = [Number(value.n / 100n), Number(value.n % 100n)];
  const alike = (teen: number, ten: number) => teen > 12 && teen < 20 && ten === (teen - 10) * 10;
  return value.d !== 1n || !(alike(first, second) || alike(second, first));
};

/** "seventy-two fifty-eight" with no name is a hub face and a spring centre, not seven thousand and more. */
const notTwoLengths: Plausible = (value, unit) => {
  if (unit !== undefined || value.d !== 1n) return true;
  const [hubFace, springCentre] = [value.n / 100n, value.n % 100n];
  return !(hubFace >= 40n && hubFace <= 120n && springCentre >= 20n && springCentre < hubFace && hubFace - springCentre <= 40n);
};
