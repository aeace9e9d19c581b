// What leans on the value said last: the same at another place, or so much more or less. The dialogue knows which value that is.
import Fraction from 'fraction.js';
import { type Item, itemAt } from '../items.ts';
import { lexicon } from '../lexicon.ts';
import type { Amount } from '../numbers/amount.ts';
import { readAmount } from '../numbers/likeliest.ts';
import { wherePlaced } from '../refine/bind.ts';
import { spanOf } from '../refine/intents.ts';
import type { Statement } from '../statement.ts';
import type { Token } from '../tokens.ts';
import type { CommandIntent, Where } from '../types.ts';
import type { Hearing } from '../understand.ts';
import { wordList } from '../wordbook.ts';
import { leaningWords, lessWords, moreWords, movedWords, putWords, takeWords } from '../words/again.ts';

interface Read {
  readonly intents: readonly CommandIntent[];
  readonly end: number;
}

const after = lexicon([
  [1, moreWords],
  [-1, lessWords],
]);
const before = lexicon([
  [1, putWords],
  [-1, takeWords],
]);
const moved = lexicon([[true, movedWords]]);
const fromThat = lexicon([[true, ['(to|off|from|of|on) (that|it|the last [one|value|number]|there)']]]);

/** "Same on the other side", "right the same": nothing but places and "the same", and nothing measured in the same breath. */
export function sameElsewhere(tokens: readonly Token[], at: number, stop: number, current: Statement): Read | undefined {
  if (!current.fresh || current.measures) return undefined;
  const items = itemsTo(tokens, at, stop);
  // "The same as the left" tells where from.
  const places = items.filter(({ is, start }) => is === 'place' && !isSource(tokens, start));
  const only = items.every(({ is }) => is === 'same' || is === 'place' || is === 'filler' || is === 'and');
  if (!only || places.length === 0 || !items.some(({ is }) => is === 'same')) return undefined;
  const other = places.some((item) => item.is === 'place' && 'side' in item.place && item.place.side === 'other');
  const { side, ...where } = wherePlaced(places);
  return told(tokens, at, stop, { name: 'same', ...where, ...(side && !other ? { side } : {}) });
}

/** "That was the rear axle", "I meant the left, not the right": nothing but the place where the value said last belongs. */
export function movedTo(tokens: readonly Token[], at: number, current: Statement): Read | undefined {
  const found = current.fresh ? moved.longest(tokens, at) : undefined;
  if (!found) return undefined;
  const items = itemsTo(tokens, found.end, tokens.length);
  const denied = items.findIndex(({ is }) => is === 'not');
  const only = items.every(({ is }) => is === 'place' || is === 'filler' || is === 'and' || is === 'not' || is === 'stop');
  const where = wherePlaced(denied < 0 ? items : items.slice(0, denied));
  if (!only || (where.side === undefined && where.axle === undefined)) return undefined;
  return told(tokens, at, tokens.length, { name: 'moved', ...where });
}

const isSource = (tokens: readonly Token[], at: number): boolean =>
  tokens[at - 1]?.word === 'as' || (tokens[at - 1]?.word === 'the' && tokens[at - 2]?.word === 'as');

const leaning = wordList(leaningWords);

/** True where something may lean on the value before; asked once of an utterance. */
export const mayLean = (tokens: readonly Token[]): boolean => tokens.some(leaning);

/** "An eighth less", "right a sixteenth more", "add half an inch to that". */
export function adjusted({ tokens, stops }: Hearing, at: number): Read | undefined {
  const lead = leadOf(tokens, at);
  const stop = stops[lead.end] ?? tokens.length;
  const put = before.longest(tokens, lead.end);
  const amount = readAmount(tokens, put?.end ?? lead.end);
  if (!amount || amount.end > stop || !isPart(amount)) return undefined;
  const tail = put ? (fromThat.longest(tokens, amount.end) ?? { end: amount.end }) : after.longest(tokens, amount.end);
  const way = put?.meaning ?? after.longest(tokens, amount.end)?.meaning;
  // "Add three eighths, a quarter and a sixteenth" is a sum of its own.
  const goesOn = put !== undefined && tokens[stop]?.word === ',';
  if (!tail || tail.end !== stop || goesOn || way === undefined) return undefined;
  const value = amount.value.mul(new Fraction(way)).toFraction();
  const said = { value, unit: amount.unit ?? '1', unitSaid: amount.unit !== undefined };
  return told(tokens, at, stop, { name: 'adjust', said, ...lead.where });
}

/** More or less by a part of something, or by a unit; "two more" may be anything. */
const isPart = ({ number, unit }: Amount) => number.shape !== 'whole' || unit !== undefined;

/** "No, make that", "right is": what takes back, its comma, and where. */
function leadOf(tokens: readonly Token[], at: number): { end: number; where: Where } {
  const items: Item[] = [];
  let end = at;
  while (end < tokens.length && items.length < 8) {
    const item = itemAt(tokens, end);
    const pause = item.is === 'stop' && items.at(-1)?.is === 'correct';
    const silent = item.is === 'filler';
    if (!(pause || silent || item.is === 'correct' || item.is === 'place')) break;
    items.push(item);
    end = item.end;
  }
  // "Make that a" ends in the article of what follows.
  const article = end > at && /^an?$/.test(tokens[end - 1]?.word ?? '');
  return { end: article ? end - 1 : end, where: wherePlaced(items) };
}

/** The parts from `at` to `stop`; none where they are many. */
function itemsTo(tokens: readonly Token[], at: number, stop: number) {
  const items: Item[] = [];
  for (let end = at; end < stop && items.length < 12; end = items.at(-1)?.end ?? stop) items.push(itemAt(tokens, end));
  return (items.at(-1)?.end ?? at) >= stop ? items : [];
}

const told = (tokens: readonly Token[], at: number, end: number, intent: Omit<CommandIntent, 'kind' | 'span'>): Read => ({
  end,
  intents: [{ kind: 'command', ...intent, span: spanOf(tokens, at, end) }],
});
