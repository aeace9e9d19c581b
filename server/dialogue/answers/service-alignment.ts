// Alignment: what the job's readings say of squareness, spacing and toe, and the limits where nothing is measured yet.
import { gravityOf, judgeReading, measured } from '#core';
import { alignmentLimits, type FieldId } from '#data';
import type { ValueRecord } from '#log/events';
import type { AlignmentView, Answer } from '../types.ts';
import { type Ask, answer, join, lines } from './service-ask.ts';
import { judged } from './service-judged.ts';

const asked: readonly FieldId[] = ['couplerDiagonal', 'axleSpacing', 'toeFront'];

export function alignment(ask: Ask): Answer {
  const values = asked.flatMap((field) => latestOf(ask, field));
  const told = values.flatMap((value) => {
    const words = judged(value, ask);
    return words ? [words] : [];
  });
  if (told.length === 0) return unmeasured();
  return answer(
    `alignment.${told.some(({ gravity }) => gravity === 'bad') ? 'out' : told.some(({ gravity }) => gravity === 'doubtful') ? 'unsure' : 'good'}`,
    {
      speak: join(...told.map(({ speak }) => speak)),
      show: lines(...told.map(({ show }) => show), 'Unloaded, level, rolled forward straight, brakes off.'),
    },
    { sources: alignmentLimits.filter(({ usual }) => usual).map(({ source }) => source), used: partners(ask, values) },
  );
}

/** The last reading of a field on each axle; the other side is found by the judge. */
function latestOf({ readings }: Ask, field: FieldId): readonly ValueRecord[] {
  const axles = [...new Set(readings.filter((value) => value.field === field).map(({ axle }) => axle))];
  return axles.flatMap((axle) => measured(readings, { field, ...(axle ? { axle } : {}) }) ?? []);
}

function partners({ readings }: Ask, values: readonly ValueRecord[]): readonly ValueRecord[] {
  const fields = new Set<FieldId>([...values.map(({ field }) => field), 'toeRear']);
  return readings.filter(({ field }) => fields.has(field));
}

function unmeasured(): Answer {
  return answer(
    'alignment.unmeasured',
    {
      speak: 'Measure coupler to spindle end, left and right; an eighth of an inch apart at most.',
      show: lines(
        'Coupler to each spindle end, same tape, same pull.',
        ...alignmentLimits.map(({ about, limit, of, source }) => `${of}: ${limit} in, ${about} (${source})`),
      ),
    },
    { sources: alignmentLimits.map(({ source }) => source), missing: ['couplerDiagonal'] },
  );
}

/** What the page draws of an axle's squareness; undefined without a reading. */
export function alignmentView(ask: Ask): AlignmentView | undefined {
  const value = measured(ask.readings, { field: 'couplerDiagonal' });
  if (!value) return undefined;
  const told = (side: 'left' | 'right') => {
    const reading = measured(ask.readings, {
      field: 'couplerDiagonal',
      stage: value.stage,
      side,
      ...(value.axle ? { axle: value.axle } : {}),
    });
    return reading ? { [side]: ask.tell.value('couplerDiagonal', reading.value).show } : {};
  };
  const judgement = judgeReading(value, ask.readings);
  const verdict = judgement?.about === 'square' ? judgement.verdict : undefined;
  if (!judgement || !verdict || verdict.code === 'impossibleDiagonals') return { ...told('left'), ...told('right') };
  const inch = (amount: typeof verdict.difference) => ask.tell.amount({ value: amount, unit: 'in' }).show;
  const move =
    verdict.move && gravityOf(judgement) !== 'good'
      ? { side: verdict.move.side, direction: verdict.move.direction, distance: inch(verdict.move.oneEnd) }
      : undefined;
  return {
    ...told('left'),
    ...told('right'),
    difference: inch(verdict.difference),
    longer: verdict.longer,
    ...(move ? { move } : {}),
  };
}
