// What the parts between two rules are meant as, seen together: a shape that shapes nothing, a part that only names another, a name that is
// waited for.
import type { FieldId } from '#data';
import type { Item } from '../items.ts';
import { partAt } from '../rules/remark.ts';
import type { Token } from '../tokens.ts';
import { looseChoices } from '../words/choices.ts';

export const meantItems = (said: readonly Item[], tokens: readonly Token[], waited: readonly FieldId[]): readonly Item[] =>
  waitedFirst(withoutModifiers(withoutLoose(said, tokens), tokens), waited);

/** "Turn the wheel round", "square up the axle": a shape stands at the end of its clause, or before what it is the shape of, and beside no strange word. */
function withoutLoose(items: readonly Item[], tokens: readonly Token[]): readonly Item[] {
  const strange = items.some(isStray);
  const isLoose = ({ is, start, end }: Item) =>
    is === 'choice' && end === start + 1 && looseChoices.has(tokens[start]?.word ?? '');
  if (!items.some(isLoose)) return items;
  return items.map((item, at) => {
    const next = items[at + 1];
    const leads = next === undefined || next.is === 'stop' || next.is === 'and' || next.is === 'number' || next.is === 'names';
    return isLoose(item) && (strange || !leads || isOfOther(items.slice(0, at), tokens))
      ? { is: 'stray', start: item.start, end: item.end }
      : item;
  });
}

const ofBeam: ReadonlySet<FieldId> = new Set(['beamDiameter', 'beamShape']);

/** "Seal's in square": the shape of what was named before it, which is no beam. */
function isOfOther(before: readonly Item[], tokens: readonly Token[]): boolean {
  const named = before.findLast(({ is }) => is !== 'filler');
  if (named?.is !== 'names' || named.isThing || named.fields.some((field) => ofBeam.has(field))) return false;
  return partAt(tokens, named.start);
}

/** "Tyre date code is", "spring hanger bolts": a part before the name of another thing is no size of the part; "tyres take fifty" is. */
function withoutModifiers(items: readonly Item[], tokens: readonly Token[]): readonly Item[] {
  return items.map((item, at) => {
    const next = items[at + 1];
    if (item.is !== 'names' || item.end > item.start + 1 || !partAt(tokens, item.start)) return item;
    const place = { start: item.start, end: item.end };
    const after = items[at + 2];
    const named = after?.is === 'stray' || /^(is|are|was)$/.test(tokens[after?.start ?? -1]?.word ?? '');
    if (next?.is === 'stray' && named) return { is: 'stray', ...place };
    const isOther = next?.is === 'names' && !next.qualifies && !next.fields.some((field) => item.fields.includes(field));
    return isOther ? { is: 'filler', ...place } : item;
  });
}

/** Of fields that share a name, what the dialogue waits for comes first. */
function waitedFirst(items: readonly Item[], waited: readonly FieldId[]): readonly Item[] {
  if (waited.length === 0) return items;
  return items.map((item) => {
    const known = item.is === 'names' ? item.fields.filter((field) => waited.includes(field)) : [];
    if (item.is !== 'names' || known.length === 0 || known.length === item.fields.length) return item;
    return { ...item, fields: [...known, ...item.fields.filter((field) => !known.includes(field))] };
  });
}

export const isStray = ({ is }: Item): boolean => is === 'stray';
