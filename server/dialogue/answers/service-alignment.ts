// Alignment: what the job's readings say of squareness, spacing and toe, and the limits where nothing is measured yet.
import { gravityOf, judgeReading, measured, placeOf } from '#core';
import { alignmentLimits, type FieldId } from '#data';
import type { ValueRecord } from '#log/events';
import type { AlignmentView, Answer } from '../types.ts';
import { type Ask, answer, join, lines } from './service-ask.ts';
import { judged } from './service-judged.ts';

const kinds: readonly { readonly field: FieldId; readonly words: RegExp }[] = [
  { field: 'couplerDiagonal', words: /square|diagonal|thrust|which way|which end|which side|coupler/ },
  { field: 'axleSpacing', words: /parallel|spacing|tandem|axle to axle/ },
  { field: 'toeFront', words: /\btoe\b/ },
];

/** What the question names; all of it where it names none. */
function askedIn({ words }: Ask): readonly FieldId[] {
  const named = kinds.filter((kind) => kind.words.test(words));
  return (named.length > 0 ? named : kinds).map(({ field }) => field);
}

export function alignment(ask: Ask): Answer {
  const asked = askedIn(ask);
  const values = asked.flatMap((field) => latestOf(ask, field));
  const told = values.flatMap((value) => {
    const words = judged(value, ask);
    return words ? [words] : [];
  });
  if (told.length === 0) return unmeasured(asked);
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
  return axles.flatMap((axle) => measured(readings, { field, ...(axle && { axle }) }) ?? []);
}

function partners({ readings }: Ask, values: readonly ValueRecord[]): readonly ValueRecord[] {
  const fields = new Set<FieldId>([...values.map(({ field }) => field), 'toeRear']);
  return readings.filter(({ field }) => fields.has(field));
}

const howTo: Readonly<Partial<Record<FieldId, { readonly of: string; readonly speak: string; readonly show: string }>>> = {
  couplerDiagonal: {
    of: 'square',
    speak: 'Measure coupler to spindle end, left and right; an eighth of an inch apart at most.',
    show: 'Coupler to each spindle end, same tape, same pull.',
  },
  axleSpacing: {
    of: 'spacing',
    speak: 'Measure axle to axle at the spindle ends, left and right; a sixteenth apart at most.',
    show: 'Front to rear spindle end, left and right, same tape, same pull.',
  },
  toeFront: {
    of: 'toe',
    speak:
      'Measure across the tyres or rims at hub height, in front and behind; say toe front and toe rear. A sixteenth between them at most.',
    show: 'Across both tyres or rims at hub height, in front of the axle and behind it.',
  },
};

function unmeasured(asked: readonly FieldId[]): Answer {
  const [field = 'couplerDiagonal'] = asked;
  const how = howTo[field];
  const rows = alignmentLimits.filter(({ of }) => asked.length > 1 || of === how?.of);
  return answer(
    'alignment.unmeasured',
    {
      speak: how?.speak ?? '',
      show: lines(how?.show, ...rows.map(({ about, limit, of, source }) => `${of}: ${limit} in, ${about} (${source})`)),
    },
    { sources: rows.map(({ source }) => source), missing: asked.length > 1 ? ['couplerDiagonal'] : [field] },
  );
}

/** What the page draws of an axle's squareness; undefined without a reading. */
export function alignmentView(ask: Ask): AlignmentView | undefined {
  const value = measured(ask.readings, { field: 'couplerDiagonal' });
  if (!value) return undefined;
  const told = (side: 'left' | 'right') => {
    const reading = measured(ask.readings, { field: 'couplerDiagonal', stage: value.stage, ...placeOf({ ...value, side }) });
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
