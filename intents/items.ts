// The parts of a statement, read left to right: names, values, places, and what stands between them.
import type Fraction from 'fraction.js';
import { type FieldId, fieldOf, fields, type UnitId } from '#data';
import { fieldNames, type Holds, holds, isPlausible } from './fields.ts';
import { lexicon } from './lexicon.ts';
import { remembered } from './memo.ts';
import { isNumberWord } from './numbers/classes.ts';
import type { Plausible } from './numbers/likeliest.ts';
import { type QuantityReading, quantityStarts, readQuantity } from './numbers/quantity.ts';
import { unitVocabulary } from './numbers/unit.ts';
import { readStamp, type Stamp, stampStarts } from './stamped/index.ts';
import { sidewallAt } from './stamped/tyre.ts';
import type { Token } from './tokens.ts';
import type { AxlePosition, Side, Stage } from './types.ts';
import { wordList, wordTable } from './wordbook.ts';
import { choiceWords } from './words/choices.ts';
import { changeWords, correctionWords, denialWords, makerWords } from './words/correcting.ts';
import { fillers, separators } from './words/fillers.ts';
import {
  axleWords,
  type Position,
  positionWords,
  sameWords,
  sideWords,
  sizeNames,
  sizeWords,
  stageWords,
  thingNames,
} from './words/where.ts';

export type Place = { readonly side: Side | 'other' } | { readonly axle: AxlePosition } | { readonly stage: Stage };

export type Item = {
  readonly start: number;
  readonly end: number;
} /** `qualifies`: only says which of the sizes of what is named beside it, of the value before or after; `mirrors`: "eye to eye"; `isThing`: names no size of the thing. */ & (
  | {
      readonly is: 'names';
      readonly fields: readonly FieldId[];
      readonly place?: Place;
      readonly qualifies?: 'before' | 'after';
      readonly mirrors?: boolean;
      readonly isThing?: boolean;
    }
  | { readonly is: 'number'; readonly quantity: QuantityReading }
  | { readonly is: 'stamp'; readonly stamp: Stamp }
  | { readonly is: 'choice'; readonly field: FieldId; readonly choice: string }
  | { readonly is: 'place'; readonly place: Place }
  | { readonly is: 'position'; readonly position: Position }
  | { readonly is: 'correct'; readonly alone: 'deny' | 'strike' | 'pause' | 'nothing' }
  | { readonly is: 'same' }
  | { readonly is: 'not' | 'change' | 'maker' | 'minus' | 'by' | 'stop' | 'and' | 'filler' | 'stray' }
);

type Word = Item extends infer I ? (I extends Item ? Omit<I, 'start' | 'end'> : never) : never;

const names = lexicon<Word>([
  ...sideWords.map(([side, said]) => [{ is: 'place', place: { side } }, said] as const),
  ...axleWords.map(([axle, said]) => [{ is: 'place', place: { axle } }, said] as const),
  ...stageWords.map(([stage, said]) => [{ is: 'place', place: { stage } }, said] as const),
  ...positionWords.map(([position, said]) => [{ is: 'position', position }, said] as const),
  ...sizeWords.map(({ fields, after }) => [{ is: 'names', fields, qualifies: 'before' }, after] as const),
  ...sizeWords.map(({ fields, before = [] }) => [{ is: 'names', fields, qualifies: 'after' }, before] as const),
  [{ is: 'same' }, sameWords],
  [{ is: 'maker' }, makerWords],
  [{ is: 'change' }, changeWords],
  [{ is: 'not' }, denialWords],
  [{ is: 'minus' }, ['(negative|neg)']],
  // Words of place that tell no place.
  [
    { is: 'filler' },
    [
      '(back|backed|backing) (off|it off|out|up) [[a] (quarter|half|full|eighth|third|sixth) [of] [a] turn]',
      '[a] (quarter|half|full) [of a] turn',
      '(right|left) hand (thread|threads|threaded)',
      'bias [ply]',
      'low (pro|profile)',
      'right (now|there|here|away)',
      'left (over|to do|to go)',
    ],
  ],
  // Caps, areas and volumes are no measure of ours; "cap" is no capacity and "square" no shape there.
  [
    { is: 'stray' },
    [
      '(grease|dust|hub) (cap|caps)',
      '(square|sq|cubic|cu) (inch|inches|foot|feet|ft|yard|yards|mile|miles|meter|meters|metre|metres|centimeter|centimeters|centimetre|centimetres|millimeter|millimeters|millimetre|millimetres|kilometer|kilometers|kilometre|kilometres|mm|cm|m|km)',
    ],
  ],
  // A bolt's strength is no number of its own.
  [
    { is: 'stray' },
    [
      '[sae] grade (two|five|eight|2|5|8)',
      '[property] class (eight|ten|twelve) [point] (eight|nine)',
      '[property] class (8.8|10.9|12.9)',
    ],
  ],
  ...correctionWords.map(([alone, said]) => [{ is: 'correct', alone }, said] as const),
  ...choiceWords.map(({ field, choice, said }) => [{ is: 'choice', field, choice }, said] as const),
]);

/** Every word of a place, a choice, a correction. */
export const itemWords: ReadonlySet<string> = names.vocabulary;

/** What the words so far call for. */
export interface Calling {
  readonly fields: readonly FieldId[];
  /** True when nothing was named and the dialogue's question stands in for a name. */
  readonly implied: boolean;
}

/** Before anything was named. */
const nothingCalled: Calling = { fields: [], implied: true };

/** The next part, which is never empty: a word that nothing claims is a stray. */
export function itemAt(tokens: readonly Token[], at: number, calling?: Calling): Item {
  const calls = calling && (calling.fields.length > 0 || !calling.implied);
  return calls ? itemCalled(tokens, at, calling) : bareItem(tokens, at);
}

/** Many rules ask for the same part before anything was named. */
const bareItem = remembered((tokens, at): Item => itemCalled(tokens, at, nothingCalled));

function itemCalled(tokens: readonly Token[], at: number, calling: Calling): Item {
  const found = [halfOf(tokens, at), value(tokens, at, calling), named(tokens, at), listed(tokens, at)].filter(
    (item) => item !== undefined,
  );
  return found.reduce<Item>(
    (best, item) => (item.end > best.end || best.is === 'stray' || best.is === 'filler' ? item : best),
    single(tokens, at),
  );
}

function value(tokens: readonly Token[], at: number, calling: Calling): Item | undefined {
  if (!mayStart(tokens, at, calling)) return undefined;
  const sidewall = sidewallAt(tokens, at);
  if (sidewall) return { is: 'choice', field: sidewall.field, choice: sidewall.choice, start: at, end: sidewall.end };
  const quantity = quantityAt(tokens, at, calling);
  if (quantity && (isPronoun(tokens, at, quantity) || (calling.fields.length > 0 && isTime(tokens, quantity)))) return undefined;
  const asked = calling.fields.length > 0 ? calling.fields.map(holds) : askedAfter(tokens, quantity);
  const stamp = canStamp(asked, calling) ? readStamp(tokens, at, asked) : undefined;
  if (
    stamp &&
    !(quantity && isRather(quantity, stamp, calling)) &&
    (!quantity || stamp.end >= quantity.end || asked.includes(stamp.holds))
  )
    return { is: 'stamp', stamp: threadOf(stamp, calling), start: at, end: stamp.end };
  return quantity && { is: 'number', quantity, start: at, end: quantity.end };
}

/** "Plate says thirty nine hundred", where a VIN and a weight are waited for: what is no VIN, nor spelled like one, is the weight. */
function isRather({ number, value: size, unit }: QuantityReading, stamp: Stamp, calling: Calling): boolean {
  const { digits = '', chunks = 0 } = number.whole ?? {};
  return stamp.problem !== undefined && calling.implied && chunks < digits.length && plausibleFor(calling)?.(size, unit) === true;
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
  const named = whole && fieldNames.longest(tokens, whole.end);
  // "Twelve six at the battery": the name comes after.
  if (named) return readQuantity(tokens, at, plausibleFor({ fields: named.meaning, implied: false }));
  if (calling.fields.length > 0) return readQuantity(tokens, at, plausibleFor(calling));
  if (whole?.number.whole?.form !== 'run' || notTwoLengths(whole.value, whole.unit)) return whole;
  return readQuantity(tokens, at, notTwoLengths);
}

/** After "hub face" only a number can come, however it is chopped. */
const canStamp = (asked: readonly Holds[], calling: Calling) =>
  calling.implied || asked.length === 0 || asked.some((kind) => kind !== 'number');

function plausibleFor(calling: Calling): Plausible | undefined {
  const rows = calling.fields.map(fieldOf).filter(({ min }) => min !== undefined);
  if (rows.length === 0) return undefined;
  const decimal = rows.every(({ id }) => inDecimals.has(id));
  const thousandths = rows.every(({ step }) => step === '1/1000');
  return Object.assign((number: Fraction, unit: UnitId | undefined) => rows.some((row) => isPlausible(row, number, unit)), {
    decimal,
    thousandths,
  });
}

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

function named(tokens: readonly Token[], at: number): Item | undefined {
  const field = fieldNames.longest(tokens, at);
  if (field?.end === at + 1 && sizeNames.has(tokens[at]?.word ?? '')) return undefined;
  const isThing = field?.end === at + 1 && thingNames.has(tokens[at]?.word ?? '');
  return (
    interrupted(tokens, at, field?.end ?? at) ??
    (field && {
      is: 'names',
      fields: field.meaning,
      mirrors: isMirror(tokens, at, field.end),
      isThing,
      start: at,
      end: field.end,
    })
  );
}

const isMirror = (tokens: readonly Token[], at: number, end: number): boolean =>
  tokens[at + 1]?.word === 'to' && tokens[at]?.word === tokens[end - 1]?.word;

/** A place may stand inside a name: "coupler to left spindle". */
function interrupted(tokens: readonly Token[], at: number, longest: number): Item | undefined {
  if (!fieldNames.leads(tokens[at])) return undefined;
  for (let from = at + 1; from < at + 4; from += 1) {
    const found = tokens[from] && listed(tokens, from);
    if (found?.is !== 'place' || !('side' in found.place)) continue;
    const without = [...tokens.slice(at, from), ...tokens.slice(found.end, found.end + 6)];
    const field = fieldNames.longest(without, 0);
    const end = field ? at + field.end + (found.end - from) : 0;
    if (field && end > found.end && end > longest)
      return { is: 'names', fields: field.meaning, place: found.place, start: at, end };
  }
  return undefined;
}

/** "Right half forty-two", "left half is 41": half of the hub face, where no part of one can be meant. */
function halfOf(tokens: readonly Token[], at: number): Item | undefined {
  const side = tokens[at]?.word;
  if ((side !== 'left' && side !== 'right') || tokens[at + 1]?.word !== 'half') return undefined;
  const is = /^(is|was|reads|measures|at)$/.test(tokens[at + 2]?.word ?? '') ? 1 : 0;
  const size = readQuantity(tokens, at + 2 + is);
  if (!size || size.value.compare(2) < 0) return undefined;
  return { is: 'names', fields: ['halfFace'], place: { side }, start: at, end: at + 2 };
}

function listed(tokens: readonly Token[], at: number): Item | undefined {
  const found = names.longest(tokens, at);
  if (!found) return undefined;
  // "front axle spacing": the axle belongs to the field's name, not to the place.
  const last = found.end - 1;
  const lends =
    found.meaning.is === 'place' && last > at && nameEnd(tokens, last) > Math.max(found.end, nameEnd(tokens, found.end));
  return { ...found.meaning, start: at, end: lends ? last : found.end };
}

const nameEnd = (tokens: readonly Token[], at: number) => fieldNames.longest(tokens, at)?.end ?? 0;

function single(tokens: readonly Token[], at: number): Item {
  const token = tokens[at];
  const mark = token?.kind === 'mark' && !isNumberWord(token) ? 'filler' : 'stray';
  return { is: token ? (singles(token) ?? mark) : 'stop', start: at, end: at + 1 };
}

/** What a word is by itself; the first that claims it. */
const singles = wordTable<'stop' | 'by' | 'and' | 'filler'>([
  ...Array.from(fillers, (word) => [word, 'filler'] as const),
  ['by', 'by'],
  ['x', 'by'],
  ['and', 'and'],
  ['&', 'and'],
  ...Array.from(separators, (word) => [word, 'stop'] as const),
]);
