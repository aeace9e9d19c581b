// "What bolt pattern is it?" from a count and one hole-to-hole measurement.
import { identifyPattern, type PatternAnswer, type Quantity, quantity } from '#core';
import { type FieldId, fieldOf } from '#data';
import type { QuestionIntent, Said } from '#intents';
import type { Answerer } from '../types.ts';
import { liveValues } from '../values.ts';
import { listed } from '../words.ts';
import type { Voice } from './fitment-say.ts';
import { shown, tell } from './fitment-tell.ts';

export const boltPattern: Answerer = (question, job, know) => {
  const live = liveValues(job);
  const on = live.findLast(({ field }) => field === 'boltPattern');
  const asked = measureIn(question, live.findLast(({ field }) => field === 'lugCount')?.value);
  const noted = asked.between ? undefined : live.findLast(({ field }) => isSpacing(field));
  const between = asked.between ?? (noted && distanceOf(noted));
  const { studs } = asked;
  const words = noted ? '' : (question.words ?? '');
  if (!between) {
    if (on) return tell(know, 'boltPattern', (voice) => ({ always: [voice.value('boltPattern', on.value)] }), { rests: [on.id] });
    return tell(know, 'boltPatternUnknown', () => ({ always: ['count the studs and give me one distance, centre to centre'] }), {
      missing: ['boltPattern'],
      asks: true,
    });
  }
  if (studs === undefined)
    return tell(know, 'boltPatternCount', () => ({ always: ['how many studs'] }), { missing: ['lugCount'], asks: true });
  const steps = between.field && !told.test(words) ? stepsBy[between.field](studs) : stepsOf(words, studs);
  const rests = [noted, noted && live.findLast(({ field }) => field === 'lugCount')].flatMap((value) => value?.id ?? []);
  const found = identifyPattern({ studs, steps, between: between.value, resolution: between.resolution });
  return tell(
    know,
    found.ok ? (found.alike.length > 0 ? 'boltPatternAlike' : 'boltPattern') : 'boltPatternUnknown',
    (voice) => linesOf(found, voice),
    {
      sources: ['chord of a circle: circle = distance / sin(180 x steps / studs)'],
      rests,
      missing: found.ok ? [] : ['boltPattern'],
    },
  );
};

interface Measured {
  readonly studs?: number;
  readonly between?: Between;
}

interface Between {
  readonly value: Quantity;
  readonly resolution: Quantity;
  /** Where the name it came under says how many holes on. */
  readonly field?: Spacing;
}

/** How many holes on, by the name of the distance. */
const stepsBy = {
  studSpacing: () => 1,
  studSkip: () => 2,
  studAcross: (studs: number) => studs / 2,
} as const;
type Spacing = keyof typeof stepsBy;
const isSpacing = (field: string | undefined): field is Spacing => field !== undefined && field in stepsBy;

/** "Five studs, two and five eighths between", "six, five and a half across": the count is whole and has no unit. */
function measureIn({ given = [], words = '' }: QuestionIntent, noted: string | undefined): Measured {
  const numbers = given.flatMap((said): SaidNumber[] => {
    if (said.kind === 'measure' && said.field === 'boltPattern') return holes.test(words) ? patternParts(said) : [];
    return said.kind === 'quantity' || said.field === 'lugCount' || isSpacing(said.field) ? [said] : [];
  });
  const count = numbers.length > 1 || noted === undefined ? numbers.find(isCount) : undefined;
  const distance = numbers.find((said) => said !== count && isSpacing(said.field)) ?? numbers.find((said) => said !== count);
  const studs = count?.value ?? noted;
  return { ...(studs !== undefined && { studs: Number(studs) }), ...(distance && { between: distanceOf(distance) }) };
}

type SaidNumber = Pick<Said, 'value' | 'unit' | 'unitSaid'> & { readonly field?: FieldId };

/** Words that say a distance between holes is meant, where the numbers alone would be a pattern. */
const holes = /hole|between|across|apart|opposite|skip|adjacent|cent(?:er|re) to/;

const isCount = ({ value, unitSaid, field }: SaidNumber): boolean =>
  !unitSaid && !isSpacing(field) && /^(?:[3-9]|1[0-2])$/.test(value);

function patternParts({ value, unit, unitSaid }: SaidNumber): SaidNumber[] {
  const [studs = '', circle = ''] = value.split('x');
  return [{ value: studs }, { value: circle, ...(unit && { unit }), ...(unitSaid !== undefined && { unitSaid }) }];
}

function distanceOf({ value, unit, field }: SaidNumber): Between {
  const named = isSpacing(field) ? { field } : {};
  if (unit === 'mm' || unit === 'cm') return { value: quantity(value, unit), resolution: quantity('1', 'mm'), ...named };
  return { value: quantity(value, 'in'), resolution: quantity(fieldOf('hubFace').step ?? '1/16', 'in'), ...named };
}

/** Words that say it of themselves, whatever the distance is called. */
const told = /opposite|across|skip|every other/;

/** "across", "opposite": half way round; "skip one": two holes on; else the next hole. */
function stepsOf(words: string, studs: number): number {
  if (/opposite|across/.test(words) && studs % 2 === 0) return studs / 2;
  return /skip|every other/.test(words) ? 2 : 1;
}

function linesOf(found: PatternAnswer, voice: Voice) {
  if (!found.ok)
    return {
      always: ['no standard pattern of that count is near; measure again, centre to centre'],
      more: [found.circleIn === undefined ? undefined : `circle ${shown(found.circleIn, 3)} in`],
    };
  const name = ({ pattern }: typeof found.best) =>
    `${voice.value('boltPattern', `${pattern.studs}x${pattern.circle}`)}${pattern.unit === 'mm' ? ' millimetres' : ''}`;
  const alike =
    found.alike.length > 0 ? `too near to tell from ${listed(found.alike.map(name), 'or')} with this tape` : undefined;
  return { always: [name(found.best), alike], more: [`circle ${shown(found.circleIn, 3)} in as measured`] };
}
