// What was typed into the log book's one search line, as what to look for: "blue trailer hub face 72 3/8".
import { Fraction } from '#core';
import { type FieldId, fields } from '#data';
import { understand } from '#intents';
import type { JobQuery } from '#log';

const number = /(?<![\w/.])(\d+ \d+\/\d+|\d+\/\d+|\d+\.\d+|\d+)(?![\w/.])/;

/** Spoken names of fields, longest first, so that "inner bearing" is not read as "bearing". */
const names = fields
  .flatMap(({ id, label, said }) => [label, ...said].map((name) => ({ id, name: name.toLowerCase() })))
  .sort((a, b) => b.name.length - a.name.length);

type Looked = Required<Pick<JobQuery, 'words' | 'values' | 'numbers'>>;

/** A measure as it would be called out asks for that value; a number alone, for the value or the word; the rest are words. */
export function readSearch(text: string): Looked {
  const values = measuresIn(text);
  return values.length > 0 ? { words: [], values, numbers: [] } : readLoosely(text);
}

/** "bolt pattern 5 on 4 1/2": all of it measures, with figures in them. */
function measuresIn(text: string): Looked['values'] {
  const { intents, unclaimed } = understand(text, { fields: [], yesNo: false });
  const measures = intents.flatMap((intent) => (intent.kind === 'measure' && /\d/.test(intent.value) ? [intent] : []));
  if (measures.length < intents.length || unclaimed.length > 0) return [];
  return measures.map(({ field, value }) => ({ field, value }));
}

/** A field's name before a number asks for that value, whatever else stands beside it. */
function readLoosely(text: string): Looked {
  const pieces = text.toLowerCase().split(number);
  const found: { words: string[]; values: { field: FieldId; value: string }[]; numbers: { value: string; typed: string }[] } = {
    words: [],
    values: [],
    numbers: [],
  };
  for (let i = 0; i < pieces.length; i += 2) {
    const before = (pieces[i] ?? '').trim();
    const value = pieces[i + 1];
    const named = value === undefined ? undefined : names.find(({ name }) => before === name || before.endsWith(` ${name}`));
    found.words.push(...(named ? before.slice(0, -named.name.length) : before).split(/\s+/).filter(Boolean));
    if (value === undefined) continue;
    if (named) found.values.push({ field: named.id, value: exactly(value) });
    else found.numbers.push({ value: exactly(value), typed: value });
  }
  return found;
}

/** "72 3/8" -> "579/8"; anything that is no number stays as it is. */
export function exactly(text: string): string {
  try {
    return new Fraction(text).toFraction();
  } catch {
    return text;
  }
}
