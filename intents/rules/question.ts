// Questions: an opening word, then the words that tell the topic; values named in it are `given`.
import Fraction from 'fraction.js';
import { type FieldId, fieldOf } from '#data';
import { fieldNames, holds, isPlausible } from '../fields.ts';
import { type Item, itemAt } from '../items.ts';
import { lexicon } from '../lexicon.ts';
import { part } from '../memo.ts';
import { isNumberWord } from '../numbers/classes.ts';
import { readAmount } from '../numbers/likeliest.ts';
import { table } from '../read.ts';
import { bind } from '../refine/bind.ts';
import { cellsOf, isValue } from '../refine/cells.ts';
import { intentsOf, spanOf } from '../refine/intents.ts';
import { type Token, tokenise } from '../tokens.ts';
import type { Intent, MeasureIntent, QuantityIntent, QuestionIntent, Topic, Where } from '../types.ts';
import type { Hearing } from '../understand.ts';
import { wordTable } from '../wordbook.ts';
import {
  aboutParts,
  havingOpeners,
  judgingWords,
  moreOpeners,
  nounOpeners,
  openers,
  sureOpeners,
  tellings,
  topics,
} from '../words/questions.ts';
import { defectAt } from './remark.ts';

const sure = table([['sure' as const, sureOpeners]]);
const opening = table([['opens' as const, openers]]);
const having = table([['has' as const, havingOpeners]]);
const nouns = table([['noun' as const, nounOpeners]]);
const leaning = table([['more' as const, moreOpeners]]);
const parts = lexicon(aboutParts);

interface Keyed {
  readonly topic: Topic;
  readonly at: number;
  /** Lists of alternatives: every list must be met by some word. */
  readonly groups: readonly ReadonlySet<string>[];
}

type Rows = (token: Token) => readonly Keyed[] | undefined;

/** Rows by the words that their first list holds. */
function keyedOf(rows: readonly { readonly topic: Topic; readonly keys: readonly string[] }[]): Rows {
  const byFirst = new Map<string, Keyed[]>();
  const keyed = rows.flatMap(({ topic, keys }) => keys.map((key) => ({ topic, lists: key.split(' ') })));
  for (const [at, { topic, lists }] of keyed.entries()) {
    const groups = lists.map((list) => new Set(list.split('|')));
    for (const word of groups[0] ?? []) byFirst.set(word, [...(byFirst.get(word) ?? []), { topic, at, groups }]);
  }
  return wordTable(byFirst);
}
const keyed = keyedOf(topics);
const telling = keyedOf(tellings);

/** True where a question opens; only at the very start of a statement may "is" or "does" open one. */
export function opens(tokens: readonly Token[], at: number, stop: number, first: boolean): boolean {
  if (sure.best(tokens, at, stop) !== undefined) return true;
  if (!first) return false;
  const noun = nouns.best(tokens, at, stop) !== undefined && !defectAt(tokens, at, stop);
  return noun || opening.best(tokens, at, stop) !== undefined || asksThing(tokens, at, stop) || turnedRound(tokens, at, stop);
}

/** "Got a seventy-two inch axle"; but "got an inch and a half under the fender" measures. */
const asksThing = (tokens: readonly Token[], at: number, stop: number): boolean => {
  const thing = having.best(tokens, at, stop);
  return thing !== undefined && readAmount(tokens, thing.end - 1) === undefined;
};

/**
 * Asked by the order of the words: "should it be ninety", "is red grease compatible with lithium complex", "four brakes should draw how many
 * amps". Before a number or a name only with a word that judges: "is one sixty too hot" asks, "was seventy-two" tells.
 */
export function turnedRound(tokens: readonly Token[], at: number, stop: number): boolean {
  const words = part(tokens, at, Math.min(stop, at + longest));
  const second = words[1];
  if (!auxiliaries.has(words[0]?.word ?? '')) {
    const modal = words.findIndex(({ word }) => modals.has(word));
    return modal > 0 && words.some((_, i) => i > modal && sure.best(tokens, at + i, stop) !== undefined);
  }
  if (isNumberWord(second) || fieldNames.longest(tokens, at + 1)) {
    if (words.some(({ word }) => judgingWords.has(word))) return true;
  } else if (subjects.has(second?.word ?? '') && !ownWords.has(words[0]?.word ?? '')) return true;
  return !itemsIn(words).some(isValue);
}

const modals: ReadonlySet<string> = new Set(['should', 'would', 'must', 'ought']);
/** "Have the left at ninety", "do it": what is told or bidden may begin so too. */
const ownWords: ReadonlySet<string> = new Set(['have', 'has', 'do', 'did']);

/** "Is that okay", "is it too loose": what was told last is to be judged. */
export const judgesLast = (tokens: readonly Token[], at: number, stop: number): boolean => {
  const words = Math.min(stop, at + longest) - at;
  if (words < 2 || words > 7 || !auxiliaries.has(tokens[at]?.word ?? '')) return false;
  return pronouns.has(tokens[at + 1]?.word ?? '') && itemsJudge(tokens, at + 2, stop);
};

/** A judging word, and nothing named or numbered beside it. */
const itemsJudge = (tokens: readonly Token[], at: number, stop: number): boolean =>
  part(tokens, at, stop).some(({ word }) => judgingWords.has(word)) &&
  itemsIn(part(tokens, at, stop)).every(({ is }) => namelessKinds.has(is));

const namelessKinds: ReadonlySet<Item['is']> = new Set(['filler', 'stray', 'correct', 'same', 'place', 'and']);

const pronouns: ReadonlySet<string> = new Set(['that', 'it', 'this', 'these', 'those', 'they']);
const subjects: ReadonlySet<string> = new Set([...pronouns, ...'the a an there i we you my our'.split(' ')]);

/** What opens a question that a yes or a no would answer. */
export const auxiliaries: ReadonlySet<string> = new Set(
  "is are was were isn't aren't does do did can could should would will shall may has have".split(' '),
);

/** Words beyond these tell no topic. */
const longest = 60;

/** The question that opens at `at`, with the clauses after its comma that still belong to it. */
export function questionAt(hearing: Hearing, at: number): { intent: QuestionIntent; end: number } | undefined {
  const { tokens, stops } = hearing;
  let stop = stops[at] ?? tokens.length;
  let intent = questionIn(hearing, at, stop);
  // "Does a seventy-two, fifty-eight axle fit": the topic may come after the comma.
  if (!intent && tokens[stop]?.word === ',' && itemsIn(part(tokens, at, stop)).some(isValue)) {
    stop = stops[stop + 1] ?? tokens.length;
    intent = questionIn(hearing, at, stop);
  }
  if (!intent) return undefined;
  let end = stop;
  while (tokens[end]?.word === ',' && goesOn(hearing, end > stop || intent.given !== undefined, at, end + 1))
    end = stops[end + 1] ?? tokens.length;
  return { intent: end === stop ? intent : (questionIn(hearing, at, stop, end) ?? intent), end };
}

/** "What torque for the U-bolts, half inch, grade five": sizes of what is asked about; but "does it fit, spring centre fifty-eight" measures. */
function goesOn({ tokens, stops }: Hearing, given: boolean, at: number, from: number): boolean {
  const stop = stops[from] ?? tokens.length;
  const items = itemsIn(part(tokens, from, Math.min(stop, from + longest)));
  if (items.some(({ is }) => is === 'correct' || is === 'change') || opens(tokens, from, stop, true)) return false;
  if (!items.some(isValue)) return boltWords.has(tokens[from]?.word ?? '');
  const values = intentsOf(bind(cellsOf(items)), part(tokens, from, stop), undefined);
  if (values.every(({ kind }) => kind === 'quantity')) return true;
  const supposes = part(tokens, at, from).some(({ word }) => word === 'if' || word === 'suppose');
  const tells = part(tokens, from, stop).some(({ word }) => tellingVerbs.has(word));
  return supposes || (given && !tells);
}

/** How a bolt is made and put in, said after its size. */
const boltWords: ReadonlySet<string> = new Set('grade class dry oiled lubed greased anti never'.split(' '));
const tellingVerbs: ReadonlySet<string> = new Set("is are was were it's measures measured reads shows".split(' '));

/** The question in tokens `at..stop`, when its words tell a topic; values up to `end` are given. */
function questionIn(hearing: Hearing, at: number, stop: number, end = stop): QuestionIntent | undefined {
  const told = topicOf(keyed, part(hearing.tokens, at, Math.min(stop, at + longest)));
  return questionOf(hearing, at, { stop, end, told });
}

/** The rest of the breath, where it can only be meant to be worked out: "ninety foot pounds, wrench eighteen inches, extension three". */
export function toldIn(hearing: Hearing, at: number): QuestionIntent | undefined {
  const topic = topicOf(telling, part(hearing.tokens, at, at + longest));
  const found = topic && questionOf(hearing, at, { stop: hearing.tokens.length, told: topic });
  return found && { ...found, told: true };
}

/** "What about oiled": nothing of its own is asked, so it leans on the question before. */
export function moreIn(hearing: Hearing, at: number): { intent: QuestionIntent; end: number } | undefined {
  const { tokens, stops } = hearing;
  const stop = stops[at] ?? tokens.length;
  const opener = leaning.best(tokens, at, stop);
  if (!opener || opener.end === stop || stop - opener.end > mostLeaning || questionIn(hearing, at, stop)) return undefined;
  if (itemsIn(part(tokens, opener.end, stop)).every(({ is }) => is === 'filler')) return undefined;
  const found = questionOf(hearing, opener.end, { stop, told: 'more' });
  return found && { intent: { ...found, span: spanOf(tokens, at, stop) }, end: stop };
}

const mostLeaning = 8;

interface Asked {
  readonly stop: number;
  readonly end?: number;
  readonly told: Topic | undefined;
}

function questionOf({ tokens: all }: Hearing, at: number, { stop, end = stop, told }: Asked): QuestionIntent | undefined {
  const tokens = part(all, at, Math.min(stop, at + longest));
  const asked = itemsIn(tokens);
  const field = longestName(asked);
  const whole = end === stop ? tokens : part(all, at, Math.min(end, at + longest));
  const named = (end === stop ? asked : itemsIn(whole)).filter(gives);
  const given = intentsOf(bind(cellsOf(named)), whole, undefined)
    .map(asGiven)
    .filter(isGiven)
    .map(asPlausible);
  const topic = told ?? given.map(ofSize).find((found) => found !== undefined) ?? (field ? 'value' : undefined);
  if (!topic) return undefined;
  const of = ofTopic(topic, tokens, field, asked);
  return {
    kind: 'question',
    topic,
    ...(of ? { of } : {}),
    ...(given.length > 0 ? { given } : topic === 'open' ? {} : whereIn(asked)),
    words: whole.map(({ word }) => word).join(' '),
    span: spanOf(all, at, end),
  };
}

/** Of words of choice only the load range and index behind a tyre's size: "electric" in a question chooses nothing. */
const gives = (item: Item) =>
  item.is !== 'same' && (item.is !== 'choice' || item.field === 'loadRange' || item.field === 'loadIndex');

/** A size or a part number by itself asks about what it is of: "compare 205 75 15 with 225 75 15", "what's L68149 measure". */
function ofSize(given: MeasureIntent | QuantityIntent): Topic | undefined {
  const kind = given.kind === 'measure' ? holds(given.field) : 'number';
  return kind === 'tyre' || kind === 'bearing' ? kind : undefined;
}

/** The name with the most words tells most: "wide", in "how wide is the hub face", tells nothing. */
function longestName(items: readonly Item[]): FieldId | undefined {
  const names = items.filter((item) => item.is === 'names');
  const longest = names.reduce<(typeof names)[number] | undefined>(
    (best, item) => (best && best.end - best.start >= item.end - item.start ? best : item),
    undefined,
  );
  return longest?.fields[0];
}

/** "what tyre for thirty-five hundred": a field named far off takes only what it can be; pounds are then a capacity. */
function asPlausible(given: MeasureIntent | QuantityIntent): MeasureIntent | QuantityIntent {
  if (given.kind !== 'measure' || holds(given.field) !== 'number') return given;
  const [value, unit] = [new Fraction(given.value), given.unit];
  if (isPlausible(fieldOf(given.field), value, unit)) return given;
  const { field: _field, also: _also, ...bare } = given;
  const pounds = given.unitSaid ? unit === 'lb' : value.compare(1000) >= 0;
  if (pounds && isPlausible(fieldOf('capacity'), value, 'lb')) return { ...given, field: 'capacity', unit: 'lb' };
  return { ...bare, kind: 'quantity', ...(given.unitSaid ? {} : { unit: '1' }) };
}

/** Nothing is corrected by a question: "what do I set it to for ninety foot pounds". */
function asGiven(intent: Intent): Intent {
  if (intent.kind !== 'correct') return intent;
  const { kind: _kind, field, not: _not, ...said } = intent;
  return field ? { kind: 'measure', field, ...said } : { kind: 'quantity', ...said };
}

const isGiven = (intent: { kind: string }): intent is MeasureIntent | QuantityIntent =>
  intent.kind === 'measure' || intent.kind === 'quantity';

/** The first row whose every group is met; a row that begins with none of the words is not tried. */
function topicOf(rows: Rows, tokens: readonly Token[]): Topic | undefined {
  let best: Keyed | undefined;
  for (const token of tokens) {
    for (const row of rows(token) ?? []) if ((!best || row.at < best.at) && inOrder(row.groups, tokens)) best = row;
  }
  return best?.topic;
}

/** Each group has a word in the question, one after the other; other words may stand between. */
function inOrder(groups: readonly ReadonlySet<string>[], tokens: readonly Token[]): boolean {
  let met = 0;
  for (const { word } of tokens) {
    if (groups[met]?.has(word)) met += 1;
    if (met === groups.length) return true;
  }
  return false;
}

/** The parts of some words by themselves. */
export function itemsIn(tokens: readonly Token[]): Item[] {
  const items: Item[] = [];
  for (let at = 0; at < tokens.length; at = items.at(-1)?.end ?? tokens.length) {
    items.push(itemAt(tokens, at));
  }
  return items;
}

function ofTopic(topic: Topic, tokens: readonly Token[], field: FieldId | undefined, asked: readonly Item[]): string | undefined {
  if (topic === 'torque' || topic === 'more') return partIn(tokens) ?? field;
  if (topic !== 'bearing') return field;
  const position = asked.find((item) => item.is === 'position')?.position;
  return position === 'inner' ? 'innerBearing' : position === 'outer' ? 'outerBearing' : field;
}

function partIn(tokens: readonly Token[]): string | undefined {
  for (const at of tokens.keys()) {
    const found = parts.longest(tokens, at);
    if (found) return found.meaning;
  }
  return undefined;
}

/** A question's words with each part or field by its id, so that "lug nuts" and "wheel nuts" ask the same. */
export function gist(words: string): string {
  const tokens = tokenise(words);
  const said: string[] = [];
  for (let at = 0; at < tokens.length; ) {
    const part = parts.longest(tokens, at);
    const field = fieldNames.longest(tokens, at);
    const found = part ?? (field && { end: field.end, meaning: field.meaning.join(' ') });
    said.push(found?.meaning ?? tokens[at]?.word ?? '');
    at = found?.end ?? at + 1;
  }
  return said.join(' ');
}

function whereIn(items: readonly Item[]): Where {
  let where: Where = {};
  for (const item of items) {
    if (item.is === 'place' && !('side' in item.place && item.place.side === 'other'))
      where = { ...where, ...(item.place as Where) };
  }
  return where;
}
