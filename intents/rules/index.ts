// Rules that read a whole statement: notes, questions, commands, strikes.
import { fieldOf } from '#data';
import { itemAt } from '../items.ts';
import { lexicon } from '../lexicon.ts';
import { part } from '../memo.ts';
import { table } from '../read.ts';
import { wherePlaced } from '../refine/bind.ts';
import { spanOf } from '../refine/intents.ts';
import type { Statement } from '../statement.ts';
import type { Token } from '../tokens.ts';
import type { CommandName, Intent } from '../types.ts';
import type { Hearing } from '../understand.ts';
import { commandWords, noteWords, politeWords, strikeWords } from '../words/commands.ts';
import { interjections, separators } from '../words/fillers.ts';
import { askers, chooseWords } from '../words/questions.ts';
import { adjusted, movedTo, sameElsewhere } from './again.ts';
import { computeIn } from './compute.ts';
import { meaningAt } from './meaning.ts';
import { auxiliaries, itemsIn, judgesLast, moreIn, opens, questionAt, toldIn, turnedRound } from './question.ts';
import { toldAt } from './told.ts';
import { wornIn } from './worn.ts';

export interface Read {
  readonly intents: readonly Intent[];
  readonly end: number;
}

const commands = table(commandWords.map(({ name, said }) => [name, said] as const));
const strikes = table([['strike' as const, strikeWords]]);
const polite = lexicon([[true, politeWords]]);
const asking = table([['asks' as const, askers]]);
const none = table([['none' as const, ['no <field>']]]);
const straight = lexicon([['straight' as const, ["[it is|it's|its] [a] straight (axle|beam|tube) [with] [no drop|zero drop]"]]]);
const choosing = table([['choose' as const, chooseWords]]);
const notes = table([['note' as const, noteWords]]);

/** The rule that reads from `at`, when one does. */
export function ruleAt(hearing: Hearing, at: number, current: Statement): Read | undefined {
  return (
    (current.fresh ? (toldAt(hearing, at) ?? note(hearing, at) ?? nothingOf(hearing, at)) : undefined) ??
    (current.fresh ? chosen(hearing, at) : undefined) ??
    movedTo(hearing.tokens, at, current) ??
    leaning(hearing, at, current) ??
    command(hearing, at, current.fresh) ??
    question(hearing, at, current)
  );
}

function leaning(hearing: Hearing, at: number, current: Statement): Read | undefined {
  if (!hearing.leans) return undefined;
  const stop = hearing.stops[at] ?? hearing.tokens.length;
  return sameElsewhere(hearing.tokens, at, stop, current) ?? adjusted(hearing, at);
}

/** "No drop", "no end play on the left": a length of nothing, where nothing follows that could be a value of its own. */
function nothingOf({ tokens, stops }: Hearing, at: number): Read | undefined {
  const found = none.best(tokens, at, tokens.length) ?? straight.longest(tokens, at);
  const field = found && ('caught' in found ? found.caught.field?.[0] : 'drop');
  const end = stops[at] ?? tokens.length;
  if (!found || !field || end - found.end > 8) return undefined;
  const rest = itemsIn(part(tokens, found.end, end));
  const { unit, min } = fieldOf(field);
  if (unit !== 'in' || min !== '0' || !rest.every(({ is }) => is === 'place' || is === 'filler')) return undefined;
  const said = { value: '0', unit, unitSaid: false, resolution: '1', ...wherePlaced(rest), span: spanOf(tokens, at, end) };
  return { end, intents: [{ kind: 'measure', field, ...said }] };
}

/** "Take that one", "the lower one on rack two": asks whether that one is to be it. */
function chosen({ tokens, stops, text }: Hearing, at: number): Read | undefined {
  const stop = stops[at] ?? tokens.length;
  const found = choosing.best(tokens, at, stop);
  if (found?.end !== stop) return undefined;
  const span = spanOf(tokens, at, stop);
  return {
    end: stop,
    intents: [{ kind: 'question', topic: 'fits', of: 'chosen', words: text.slice(...span).toLowerCase(), span }],
  };
}

/** A question may follow measures without a comma: "hub face seventy-two what fits". */
function question(hearing: Hearing, at: number, current: Statement): Read | undefined {
  const { tokens } = hearing;
  const { opening } = current;
  const stop = hearing.stops[at] ?? tokens.length;
  const whole = opening && stop < tokens.length ? computeIn(tokens, at, tokens.length) : undefined;
  if (whole) return { intents: [whole], end: tokens.length };
  const sum = opening ? computeIn(tokens, at, stop) : undefined;
  if (sum) return { intents: [sum], end: stop };
  const worn = opening ? wornIn(hearing, at) : undefined;
  if (worn) return { intents: [worn.intent], end: worn.end };
  const meaning = opening ? meaningAt(hearing, at) : undefined;
  if (meaning) return { intents: [meaning.intent], end: meaning.end };
  const more = opening ? moreIn(hearing, at) : undefined;
  if (more) return { intents: [more.intent], end: more.end };
  const told = opening && tokens[at]?.kind !== 'mark' ? toldIn(hearing, at) : undefined;
  if (told) return { intents: [told], end: tokens.length };
  const isFirst = !current.asksNothing && opens(tokens, at, stop, opening);
  const found = isFirst ? questionAt(hearing, at) : undefined;
  if (found) return { intents: [found.intent], end: found.end };
  current.asksNothing ||= isFirst;
  const span = spanOf(tokens, at, stop);
  if (opening && judgesLast(tokens, at, stop)) {
    const words = tokens.slice(at, stop).map(({ word }) => word);
    return { intents: [{ kind: 'question', topic: 'judged', words: words.join(' '), span }], end: stop };
  }
  const asks = isFirst && opening && ((asking.best(tokens, at, stop)?.end ?? stop) < stop || turnedRound(tokens, at, stop));
  return asks ? { intents: [{ kind: 'unknown', text: hearing.text.slice(...span), span }], end: stop } : undefined;
}

function note({ tokens, text }: Hearing, at: number): Read | undefined {
  const found = notes.best(tokens, at, tokens.length);
  if (!found?.caught.rest) return undefined;
  const [start] = found.caught.rest;
  const verbatim = text.slice(...spanOf(tokens, start, tokens.length));
  return { end: tokens.length, intents: [{ kind: 'note', text: verbatim, span: spanOf(tokens, at, tokens.length) }] };
}

function command(hearing: Hearing, at: number, fresh: boolean): Read | undefined {
  const found = commandFrom(hearing, at, fresh);
  const asked = found || !fresh ? undefined : polite.longest(hearing.tokens, at);
  return found ?? (asked && commandFrom(hearing, asked.end, fresh));
}

function commandFrom(hearing: Hearing, at: number, fresh: boolean): Read | undefined {
  const { tokens, text } = hearing;
  const stop = hearing.stops[at] ?? tokens.length;
  const strike = strikes.best(tokens, at, stop);
  const found = commands.best(tokens, at, stop);
  const end = Math.max(strike?.end ?? 0, found?.end ?? 0);
  const says =
    found?.meaning === 'confirm' && end === found.end && (hearing.expects?.yesNo || !interjections.has(tokens[at]?.word ?? ''));
  const goesOn = says && goingOn.has(commands.best(tokens, end, stop)?.meaning);
  if (end === 0 || !((ends(tokens, end) || goesOn) && (fresh || end === stop))) return undefined;
  if (!fresh && describes(hearing, at)) return undefined;
  if (corrects(hearing, at, end)) return undefined;
  if (found && decides.has(found.meaning) && isAsked(hearing, at)) return undefined;
  const span = spanOf(tokens, at, end);
  if (strike && strike.end >= end) {
    const field = strike.caught.field?.[0];
    const where = field ? wherePlaced(itemsIn(part(tokens, at, end))) : {};
    return { end, intents: [{ kind: 'strike', ...(field ? { field } : {}), ...where, span }] };
  }
  if (!found || (!fresh && answers.has(found.meaning))) return undefined;
  const rest = found.caught.rest && text.slice(...spanOf(tokens, ...found.caught.rest));
  const field = found.caught.field?.[0];
  return {
    end,
    intents: [{ kind: 'command', name: found.meaning, ...(rest ? { rest } : {}), ...(field ? { field } : {}), span }],
  };
}

/** Said after a yes in the same breath: "yes done". */
const goingOn: ReadonlySet<CommandName | undefined> = new Set(['done', 'next']);

/** "Does it look right", "is it done": words that a question ends in. */
function isAsked({ tokens }: Hearing, at: number): boolean {
  let start = at;
  while (start > 0 && !separators.has(tokens[start - 1]?.word ?? '')) start -= 1;
  while (interjections.has(tokens[start]?.word ?? '')) start += 1;
  return start < at && auxiliaries.has(tokens[start]?.word ?? '');
}

/** What a question never does by the way. */
const decides: ReadonlySet<CommandName> = new Set(['confirm', 'deny', 'done']);

/** Said only by themselves: "end play is good" is no yes. */
const answers: ReadonlySet<CommandName> = new Set(['confirm', 'deny', 'repeat', 'slower']);

/** "no, fifty-eight", "wait, left sixty": what takes back and the value after its comma are one saying. */
function corrects({ tokens }: Hearing, at: number, end: number): boolean {
  if (tokens[end]?.word !== ',' || itemAt(tokens, at).is !== 'correct') return false;
  return ['number', 'stamp', 'choice', 'names', 'place'].includes(itemAt(tokens, end + 1).is);
}

/** "wheel offset twenty negative", "spindle at the back": the word belongs to the measure before it. */
function describes({ tokens }: Hearing, at: number): boolean {
  const { is } = itemAt(tokens, at);
  return is === 'minus' || is === 'place' || is === 'same' || is === 'choice';
}

const ends = (tokens: readonly Token[], at: number) =>
  tokens[at] === undefined || separators.has(tokens[at].word) || tokens[at].word === 'and';
