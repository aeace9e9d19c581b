// Which single measurement, off by one mark of its tape, would change the verdict.
import { type FieldId, fieldOf } from '#data';
import { convert, type Fraction, quantity } from '../quantity/index.ts';
import { numberOf } from './number.ts';
import { tableRules } from './rules.ts';
import type { Candidate, FitReading, FitResult, Rules } from './types.ts';
import { judge, needsOf } from './verdict.ts';

export interface Touchy {
  readonly reading: FitReading;
  /** The value one mark off, in the reading's unit, and the verdict it would bring. */
  readonly ifIt: string;
  readonly would: FitResult;
}

/** Read off a label or counted: there is no mark to be off by. */
const labels: ReadonlySet<FieldId> = new Set(['capacity', 'gvwr', 'brakeFlange']);

/** Readings to take again before ordering: each is moved by one mark either way, alone. */
export function sensitivity(readings: readonly FitReading[], candidate: Candidate, rules: Rules = tableRules): readonly Touchy[] {
  const now = judge(needsOf(readings, rules), candidate);
  const used = new Set(now.rows.flatMap(({ rests }) => rests));
  return readings
    .filter(({ id, field }) => used.has(id) && !labels.has(field))
    .flatMap((reading) => {
      const changed = nudged(reading)
        .map((moved) => ({ reading, ifIt: moved.value, would: resultWith(readings, moved, candidate, rules) }))
        .filter(({ would }) => would !== now.result);
      return changed.slice(0, 1);
    });
}

function resultWith(readings: readonly FitReading[], moved: FitReading, candidate: Candidate, rules: Rules): FitResult {
  return judge(
    needsOf(
      readings.map((reading) => (reading.id === moved.id ? moved : reading)),
      rules,
    ),
    candidate,
  ).result;
}

/** The reading one mark down and one mark up; nothing for a token. */
function nudged(reading: FitReading): FitReading[] {
  const value = numberOf(reading.value);
  const step = markOf(reading);
  if (!value || !step) return [];
  return [value.sub(step), value.add(step)].map((moved) => ({ ...reading, value: moved.toFraction() }));
}

/** One mark of the tape or scale, in the reading's unit: never coarser than the field's own step, however round the number. */
function markOf(reading: FitReading): Fraction | undefined {
  const { step, unit } = fieldOf(reading.field);
  if (step === undefined || unit === undefined) return undefined;
  const given = reading.unit === undefined || reading.unit === '1' ? unit : reading.unit;
  const size = convert(quantity(step, unit), given).value.sub(convert(quantity('0', unit), given).value);
  return size.gt(0) ? size : undefined;
}
