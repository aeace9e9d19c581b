// The parts of a statement, read left to right: names, values, places, and what stands between them.
import type { FieldId } from '#data';
import { fieldNames } from './fields.ts';
import { lexicon } from './lexicon.ts';
import { remembered } from './memo.ts';
import { isNumberWord } from './numbers/classes.ts';
import { type QuantityReading, readQuantity } from './numbers/quantity.ts';
import type { Stamp } from './stamped/index.ts';
import type { Token } from './tokens.ts';
import type { AxlePosition, Side, Stage } from './types.ts';
import { type Calling, valueAt } from './value-at.ts';
import { wordTable } from './wordbook.ts';
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
      '(tightened|loosened|snugged) [it|the nut] [up] [(one|two|a|half a) (flat|flats|slot|slots|notch|hole)]',
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
  const found = [halfOf(tokens, at), valueAt(tokens, at, calling), named(tokens, at), listed(tokens, at)].filter(
    (item) => item !== undefined,
  );
  return found.reduce<Item>(
    (best, item) => (item.end > best.end || best.is === 'stray' || best.is === 'filler' ? item : best),
    single(tokens, at),
  );
}

/** The name at `at`; in "tread left four right five" the left is a side, not what is left of the tread. */
function nameAt(tokens: readonly Token[], at: number): ReturnType<typeof fieldNames.longest> {
  const found = fieldNames.longest(tokens, at);
  const sided =
    found && tokens[found.end - 1]?.word === 'left' && tokens.some(({ word }, i) => i >= found.end && word === 'right');
  const shorter = sided ? fieldNames.longest(tokens.slice(at, found.end - 1), 0) : undefined;
  return shorter ? { ...shorter, end: at + shorter.end } : found;
}

function named(tokens: readonly Token[], at: number): Item | undefined {
  const field = nameAt(tokens, at);
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

/** True where a place begins, if nothing longer does. */
export const mayBePlace = (tokens: readonly Token[], at: number): boolean => names.longest(tokens, at)?.meaning.is === 'place';

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
