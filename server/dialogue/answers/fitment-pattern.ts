// "What bolt pattern is it?" from a count and one hole-to-hole measurement.
import { identifyPattern, type PatternAnswer, type Quantity, quantity } from '#core';
import { fieldOf } from '#data';
import type { QuestionIntent } from '#intents';
import type { JobRecord } from '#log/events';
import type { Answerer } from '../types.ts';
import { liveValues } from '../values.ts';
import { listed } from '../words.ts';
import type { Voice } from './fitment-say.ts';
import { shown, tell } from './fitment-tell.ts';

export const boltPattern: Answerer = (question, job, know) => {
  const on = liveValues(job).findLast(({ field }) => field === 'boltPattern');
  const studs = studsOf(question, job);
  const between = betweenOf(question);
  if (!between) {
    if (on) return tell(know, 'boltPattern', (voice) => ({ always: [voice.value('boltPattern', on.value)] }), { rests: [on.id] });
    return tell(know, 'boltPatternUnknown', () => ({ always: ['count the studs and give me one distance, centre to centre'] }), {
      missing: ['boltPattern'],
    });
  }
  if (studs === undefined)
    return tell(know, 'boltPatternCount', () => ({ always: ['how many studs'] }), { missing: ['lugCount'] });
  const steps = stepsOf(question.words ?? '', studs);
  const found = identifyPattern({ studs, steps, between: between.value, resolution: between.resolution });
  return tell(
    know,
    found.ok ? (found.alike.length > 0 ? 'boltPatternAlike' : 'boltPattern') : 'boltPatternUnknown',
    (voice) => linesOf(found, voice),
    {
      sources: ['chord of a circle: circle = distance / sin(180 x steps / studs)'],
      missing: found.ok ? [] : ['boltPattern'],
    },
  );
};

function studsOf({ given = [] }: QuestionIntent, job: JobRecord): number | undefined {
  const said = given.find((one) => one.kind === 'measure' && one.field === 'lugCount');
  const on = liveValues(job).findLast(({ field }) => field === 'lugCount');
  return said || on ? Number((said ?? on)?.value) : undefined;
}

function betweenOf({ given = [] }: QuestionIntent): { readonly value: Quantity; readonly resolution: Quantity } | undefined {
  const said = given.find((one) => one.kind === 'quantity');
  if (!said) return undefined;
  const unit = said.unit === 'mm' || said.unit === 'cm' ? said.unit : 'in';
  const coarse = fieldOf('hubFace').step ?? '1/16';
  return { value: quantity(said.value, unit), resolution: unit === 'in' ? quantity(coarse, 'in') : quantity('1', 'mm') };
}

/** "across", "opposite": half way round; "skip one": two holes on; else the next hole. */
function stepsOf(words: string, studs: number): number {
  if (/opposite|across/.test(words) && studs % 2 === 0) return studs / 2;
  return /skip/.test(words) ? 2 : 1;
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
