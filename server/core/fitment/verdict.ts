// Does this axle fit this trailer: every check as a row, and what follows from all of them.
import type { FieldId } from '#data';
import { checks, essential, optional } from './checks/index.ts';
import { readTrailer } from './readings.ts';
import { tableRules } from './rules.ts';
import type { Candidate, FitReading, FitResult, Need, Row, Rules, Trailer, Verdict } from './types.ts';

/** All checks made ready for one trailer. Judge any number of axles against them. */
export interface Needs {
  readonly trailer: Trailer;
  readonly needs: readonly Need[];
}

export function needsOf(readings: readonly FitReading[], rules: Rules = tableRules): Needs {
  const trailer = readTrailer(readings);
  return { trailer, needs: checks.flatMap((check) => check(trailer, rules)) };
}

/** The verdict on one axle. Nothing is assumed: what is missing is named, what is only heard is flagged. */
export function judge({ trailer, needs }: Needs, candidate: Candidate): Verdict {
  const rows = needs.filter((need) => matters(need, candidate)).map((need) => rowOf(need, candidate));
  const result = resultOf(rows);
  const because = rows.filter((row) => row.result === result && (result !== 'cannotSayYet' || row.essential));
  const used = rows.filter((row) => row.result !== 'cannotSayYet' || row.code === 'tooCoarse');
  return {
    candidate,
    result,
    rows,
    because,
    missing: unique(rows.flatMap((row) => (row.essential ? row.missing : []))),
    rests: unique(used.flatMap((row) => row.rests)),
    unconfirmed: unique(used.flatMap((row) => row.unconfirmed)),
    problems: trailer.problems,
  };
}

/** @see needsOf, judge */
export function verdictOf(readings: readonly FitReading[], candidate: Candidate, rules?: Rules): Verdict {
  return judge(needsOf(readings, rules), candidate);
}

const matters = ({ check, field }: Need, { values }: Candidate): boolean => !optional.has(check) || values[field] !== undefined;

function rowOf({ check, field, needed, basis, source, judge: find, margin: marginOf }: Need, { values }: Candidate): Row {
  const measured = values[field];
  const { result, code, remedy, found, basis: own } = find(measured);
  const margin = measured === undefined ? undefined : marginOf?.(measured);
  return {
    check,
    essential: essential.has(check),
    field,
    source,
    lacking: measured === undefined,
    ...(own ?? basis),
    result,
    code,
    ...(remedy ? { remedy } : {}),
    ...(found ? { found } : {}),
    ...(measured === undefined ? {} : { measured }),
    ...(needed ? { needed } : {}),
    ...(margin ? { margin } : {}),
  };
}

/** One row that does not fit settles it; then an essential row that cannot be told; then work. */
export function resultOf(rows: readonly { readonly result: FitResult; readonly essential: boolean }[]): FitResult {
  if (rows.some(({ result }) => result === 'doesNotFit')) return 'doesNotFit';
  if (rows.some((row) => row.result === 'cannotSayYet' && row.essential)) return 'cannotSayYet';
  return rows.some(({ result }) => result === 'fitsWithWork') ? 'fitsWithWork' : 'fits';
}

const unique = <T extends FieldId | string>(all: readonly T[]): T[] => [...new Set(all)];
