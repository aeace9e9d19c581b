// One utterance: tokens, then statements, commands and questions in the order said. Every word ends up in an intent, a filler, or `unclaimed`.
import { type Calling, type Item, itemAt } from './items.ts';
import { mend } from './mend.ts';
import { bind } from './refine/bind.ts';
import { cellsOf, isValue } from './refine/cells.ts';
import { compatible } from './refine/compatible.ts';
import { intentsOf, spanOf } from './refine/intents.ts';
import { ruleAt } from './rules/index.ts';
import { isRemark } from './rules/remark.ts';
import { type Token, tokenise } from './tokens.ts';
import type { Expects, Intent, Understanding } from './types.ts';

/** What was said, exactly. Pure and total: never throws, cost linear in the text. `expects` settles what would else be ambiguous. */
export function understand(text: string, expects?: Expects): Understanding {
  const tokens = mend(tokenise(text));
  const { intents, strays } = read({ tokens, text, expects });
  return {
    text,
    normalised: tokens.map(({ word }) => word).join(' '),
    intents,
    unclaimed: strays.map(({ span }) => text.slice(...span)),
  };
}

export interface Hearing {
  readonly tokens: readonly Token[];
  readonly text: string;
  readonly expects: Expects | undefined;
}

function read(hearing: Hearing): { intents: Intent[]; strays: Token[] } {
  const { tokens } = hearing;
  const intents: Intent[] = [];
  const strays: Token[] = [];
  let items: Item[] = [];
  const flush = () => {
    const done = statement(items, hearing);
    intents.push(...done.intents);
    strays.push(...done.strays);
    items = [];
  };
  for (let at = 0; at < tokens.length; ) {
    const rule = ruleAt(hearing, at, items);
    if (rule) {
      flush();
      intents.push(...rule.intents);
      at = rule.end;
      continue;
    }
    const item = itemAt(tokens, at, callingOf(items, hearing.expects));
    items.push(item);
    at = item.end;
  }
  flush();
  return { intents, strays };
}

/** The field that the words since the last value call for; before any, what the dialogue waits for. */
function callingOf(items: readonly Item[], expects: Expects | undefined): Calling {
  for (let at = items.length - 1; at >= 0; at -= 1) {
    const item = items[at];
    if (!item || isValue(item)) break;
    if (item.is === 'names' && !saidAfter(items, at)) return { fields: item.fields, implied: false };
  }
  return { fields: expects?.fields ?? [], implied: true };
}

/** "thirty-five hundred pound axle, five on ...": the name belongs to the value before it and calls for no other. */
function saidAfter(items: readonly Item[], at: number): boolean {
  const name = items[at];
  const value = items.slice(0, at).findLastIndex(isValue);
  const before = items[value];
  if (name?.is !== 'names' || !before || !isValue(before) || !compatible(name.fields, before)) return false;
  if (items.slice(value + 1, at).some(({ is }) => is !== 'filler')) return false;
  const earlier = items.slice(0, value).findLastIndex((item) => isValue(item) || item.is === 'names');
  return items[earlier]?.is !== 'names' || saidAfter(items, earlier);
}

/** Parts between two rules: measures, or words that hold none. */
export function statement(items: readonly Item[], { tokens, text, expects }: Hearing): { intents: Intent[]; strays: Token[] } {
  const intents = intentsOf(bind(cellsOf(items)), tokens, expects);
  const lost = items.filter(({ is }) => is === 'stray');
  const strays = lost.map(({ start }) => tokens[start]).filter((token) => token !== undefined);
  if (intents.length > 0) return { intents, strays };
  const [first, last] = [items.find(({ is }) => is !== 'stop' && is !== 'and'), items.findLast(({ is }) => is !== 'stop')];
  if (!first || !last || items.every(({ is }) => is === 'filler' || is === 'stop' || is === 'and'))
    return { intents: [], strays };
  const span = spanOf(tokens, first.start, last.end);
  const kind = isRemark(tokens, first.start, last.end) ? 'note' : 'unknown';
  return { intents: [{ kind, text: text.slice(...span), span }], strays: kind === 'note' ? [] : strays };
}
