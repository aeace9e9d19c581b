// One utterance: tokens, then statements, commands and questions in the order said. Every word ends up in an intent, a filler, or `unclaimed`.
import { clausesOf } from './clauses.ts';
import { type Item, itemAt } from './items.ts';
import { mend } from './mend.ts';
import { bind, wherePlaced } from './refine/bind.ts';
import { cellsOf } from './refine/cells.ts';
import { intentsOf, spanOf } from './refine/intents.ts';
import { isStray, meantItems } from './refine/meant-items.ts';
import { mayLean } from './rules/again.ts';
import { ruleAt } from './rules/index.ts';
import { isRemark } from './rules/remark.ts';
import { mayBeWorn } from './stamped/worn.ts';
import { addItem, callingOf, newStatement } from './statement.ts';
import { type Token, tokenise } from './tokens.ts';
import type { Expects, Intent, Topic, Understanding, Where } from './types.ts';
import { wordList } from './wordbook.ts';
import { separators } from './words/fillers.ts';

/** What was said, exactly. Pure and total: never throws, cost linear in the text. `expects` settles what would else be ambiguous. */
export function understand(text: string, expects?: Expects): Understanding {
  const heard = hearing(text, expects);
  const { intents, strays } = read(heard);
  return {
    text,
    normalised: heard.tokens.map(({ word }) => word).join(' '),
    intents,
    unclaimed: strays.map(({ span }) => text.slice(...span)),
  };
}

const isSeparator = wordList(separators);

export interface Hearing {
  readonly tokens: readonly Token[];
  readonly text: string;
  readonly expects: Expects | undefined;
  /** For each token, where its statement ends: at a comma, a full stop, or the end. */
  readonly stops: readonly number[];
  /** Something may lean on the value before: the same elsewhere, so much more or less. */
  readonly leans: boolean;
  /** Some of a number may be unreadable. */
  readonly worn: boolean;
}

function hearing(text: string, expects: Expects | undefined): Hearing {
  const tokens = mend(tokenise(text));
  const stops = tokens.map(() => tokens.length);
  let stop = tokens.length;
  for (let at = tokens.length - 1; at >= 0; at -= 1) {
    stops[at] = stop;
    if (isSeparator(tokens[at]) && tokens[at]?.word !== 'then') stop = at;
  }
  return { tokens, text, expects, stops, leans: mayLean(tokens), worn: mayBeWorn(tokens) };
}

function read(heard: Hearing): { intents: Intent[]; strays: Token[] } {
  const { tokens, expects } = heard;
  const intents: Intent[] = [];
  const strays: Token[] = [];
  let current = newStatement();
  const flush = () => {
    const done = meant(current.items, heard);
    intents.push(...done.intents);
    strays.push(...done.strays);
    current = newStatement();
  };
  for (let at = 0; at < tokens.length; ) {
    const rule = ruleAt(heard, at, current);
    if (rule) {
      flush();
      intents.push(...withSize(intents, rule.intents, heard));
      at = rule.end;
    } else {
      const item = itemAt(tokens, at, callingOf(current, expects));
      addItem(current, item, tokens);
      at = item.end;
    }
  }
  flush();
  return { intents, strays };
}

/** Asked of a size that may have been said just before: "two and five eighths apart, what pattern is it". */
const sized: ReadonlySet<Topic> = new Set<Topic>(['boltPattern', 'bearing', 'seal']);

/** A question that gives no size takes the nameless one before it, which is else of nothing. */
function withSize(before: Intent[], asked: readonly Intent[], { text }: Hearing): readonly Intent[] {
  const [question, size] = [asked[0], before.at(-1)];
  if (question?.kind !== 'question' || question.given || !sized.has(question.topic) || size?.kind !== 'quantity') return asked;
  if (!size.span || !question.span) return asked;
  before.pop();
  const words = `${text.slice(...size.span).toLowerCase()} ${question.words ?? ''}`;
  return [{ ...question, given: [size], words, span: [size.span[0], question.span[1]] }, ...asked.slice(1)];
}

interface Meaning {
  readonly intents: readonly Intent[];
  readonly strays: readonly Token[];
}

/** What the parts between two rules mean: measures, remarks, or nothing known. */
function meant(items: readonly Item[], heard: Hearing): Meaning {
  let told: readonly Item[] = [];
  const clauses = clausesOf(items, heard.tokens).map((clause): Meaning => {
    const named = clause.items.some(({ is }) => is === 'names') ? [] : told.filter(({ is }) => is === 'names');
    if (clause.is === 'measures') return measured([...named, ...clause.items], heard, wherePlaced(told));
    told = clause.items;
    return { intents: wordsOf('note', clause.items, heard), strays: [] };
  });
  const [only] = clauses;
  if (only && clauses.length === 1) return only;
  return { intents: clauses.flatMap(({ intents }) => intents), strays: clauses.flatMap(({ strays }) => strays) };
}

function measured(said: readonly Item[], heard: Hearing, where: Where): Meaning {
  const { tokens, expects } = heard;
  const items = meantItems(said, tokens, expects?.fields ?? []);
  const intents = intentsOf(bind(cellsOf(items), where), tokens, expects);
  const strays = items.some(isStray) ? items.filter(isStray).flatMap(({ start, end }) => tokens.slice(start, end)) : [];
  if (intents.length > 0) return { intents, strays };
  if (items.every(({ is }) => is === 'filler' || is === 'stop' || is === 'and')) return { intents: [], strays: [] };
  const isNote = isRemark(tokens, items[0]?.start ?? 0, items.at(-1)?.end ?? 0);
  return { intents: wordsOf(isNote ? 'note' : 'unknown', items, heard), strays: isNote ? [] : strays };
}

/** The words as they were given, without what only joins them to others. */
function wordsOf(kind: 'note' | 'unknown', items: readonly Item[], { tokens, text }: Hearing): Intent[] {
  const isJoint = ({ is }: Item) => is === 'stop' || is === 'and';
  const [first, last] = [items.find((item) => !isJoint(item)), items.findLast((item) => !isJoint(item))];
  if (!first || !last) return [];
  const span = spanOf(tokens, first.start, last.end);
  return [{ kind, text: text.slice(...span), span }];
}
