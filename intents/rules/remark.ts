// A statement about the state of a part is a note, though nobody said "note": "the outer is too far gone".
import { bearingDamage } from '#data';
import { fieldNames } from '../fields.ts';
import { lexicon } from '../lexicon.ts';
import type { Token } from '../tokens.ts';
import { conditionWords, partWords, standIns } from '../words/conditions.ts';

const conditions = lexicon(conditionWords.map((row) => [row, row.said] as const));
/** A wire may be blue or brown: a colour alone is no damage of it. */
const damages = lexicon(
  bearingDamage.map(({ id, said }) => [id, said.filter((words) => !/^(blue|brown|dull|dirt|split)$/.test(words))] as const),
);
const proper = lexicon(partWords);
const parts = lexicon([...partWords, ['it', standIns]]);

/** True where a part is named by its own name. */
export const partAt = (tokens: readonly Token[], at: number): boolean => proper.longest(tokens, at) !== undefined;

/** A part and its condition, or damage that only a bearing shows. */
export const isRemark = (tokens: readonly Token[], at: number, end: number): boolean =>
  (conditionsIn(tokens, at, end).length > 0 && namesPart(tokens, at, end)) || damageIn(tokens, at, end);

/** Damage in the words of the bearing table: with a part named, or by a name or description that nothing else has. */
function damageIn(tokens: readonly Token[], at: number, end: number): boolean {
  for (let from = at; from < end; from += 1) {
    const found = damages.longest(tokens, from);
    const name = found && (found.end - from > 1 || /(ing|led)$/.test(tokens[from]?.word ?? ''));
    if (found && found.end <= end && (name || namesPart(tokens, at, end))) return true;
  }
  return false;
}

/** Where a defect of a named part is told, if one is. */
export function defectAt(tokens: readonly Token[], at: number, end: number): { start: number; end: number } | undefined {
  const defect = conditionsIn(tokens, at, end).find(({ seriousness }) => seriousness !== 'info');
  return defect && namesPart(tokens, at, end) ? defect : undefined;
}

/** "Two broken studs": what is counted from here on is broken. */
export function brokenAt(tokens: readonly Token[], at: number): boolean {
  const condition = conditions.longest(tokens, at);
  return condition !== undefined && parts.longest(tokens, condition.end) !== undefined;
}

function conditionsIn(tokens: readonly Token[], at: number, end: number) {
  const found: { start: number; end: number; seriousness: string }[] = [];
  for (let start = at; start < end; ) {
    const condition = conditions.longest(tokens, start);
    if (condition && condition.end <= end) found.push({ start, end: condition.end, seriousness: condition.meaning.seriousness });
    start = condition?.end ?? start + 1;
  }
  return found;
}

function namesPart(tokens: readonly Token[], at: number, end: number): boolean {
  for (let from = at; from < end; from += 1) if (parts.longest(tokens, from) ?? fieldNames.longest(tokens, from)) return true;
  return false;
}
