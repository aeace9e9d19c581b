// What a verdict was not looked at for, for want of a value: a fit that was not looked at all round says so.
import type { Row, Verdict } from '#core';
import { listed } from '../words.ts';
import type { Voice } from './fitment-say.ts';
import { wanting } from './fitment-tell.ts';
import { checkNames } from './fitment-words.ts';

/** Rows that are open and still do not hold the verdict open. */
export const unseen = ({ rows }: Verdict): readonly Row[] =>
  rows.filter(({ result, essential, remedy }) => result === 'cannotSayYet' && !essential && remedy !== 'oldAxleBent');

/** Rows that are said whatever the verdict: a law on an axle without brakes, an old axle that was measured bent. */
export const warnings = ({ rows }: Verdict): readonly Row[] =>
  rows.filter(({ code, remedy }) => remedy === 'askTheState' || remedy === 'oldAxleBent' || code === 'lawExempts');

/** "not looked at: drop, beam and four more; tell me drop"; nothing where all was looked at. */
export function unseenLine(rows: readonly Row[], voice: Voice, most = Number.POSITIVE_INFINITY): string | undefined {
  const checks = [...new Set(rows.map(({ check }) => check))];
  if (checks.length === 0) return undefined;
  const told = checks.slice(0, most);
  const names = told.map((check) => voice.text(checkNames[check]));
  const more = checks.length > told.length ? [`${voice.text(String(checks.length - told.length))} more`] : [];
  const lacking = rows.filter(({ check }) => told.includes(check)).flatMap(({ missing }) => missing);
  return [`not looked at: ${listed([...names, ...more])}`, wanting(lacking, voice)].filter(Boolean).join('; ');
}

/** Of several axles: first the checks on which they differ, for those tell them apart. */
export function unseenOf(verdicts: readonly Verdict[]): readonly Row[] {
  const kinds = ({ field }: Row) => new Set(verdicts.map(({ candidate }) => candidate.values[field])).size;
  const rows = verdicts.flatMap(unseen);
  return [...rows.filter((row) => kinds(row) > 1), ...rows.filter((row) => kinds(row) === 1)];
}
