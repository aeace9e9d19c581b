// "How much will it carry?"
import { type Carrying, type CarryingPart, carrying, numberOf, readTrailer, type TongueCode, tableRules } from '#core';
import type { Answerer } from '../types.ts';
import { listed } from '../words.ts';
import { givenReadings, readingsOf } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';

const partNames: Readonly<Record<CarryingPart, string>> = {
  axle: 'the axle',
  tyres: 'the two tyres',
  springs: 'springs',
  hubs: 'hubs and bearings',
  wheels: 'wheels',
};

const tongueWords: Readonly<Record<TongueCode, string>> = {
  light: 'light for a ball coupler: ten to fifteen is usual',
  right: 'between ten and fifteen, as is usual on a ball coupler',
  heavy: 'heavy for a ball coupler: ten to fifteen is usual',
  beyondReason: 'more than any coupling is meant to take; weigh it again',
};

const raising: Readonly<Record<'axle' | 'tyres', string>> = {
  axle: 'a stronger axle would raise it, as far as the other parts allow',
  tyres: 'stronger tyres would raise it, as far as the axle and the other parts allow',
};

export const load: Answerer = (question, job, know) => {
  const trailer = readTrailer([...readingsOf(job), ...givenReadings(question)]);
  const capacity = numberOf(job.candidate?.values.capacity ?? '');
  const found = carrying(trailer, tableRules, capacity);
  const sources = ['49 CFR 571.3 (GAWR), 571.120 S5.1.2', ...found.links.map(({ source }) => source)];
  const caution = found.margin?.value.lt(0) ? 'Overloaded as it stands. Do not tow it so.' : undefined;
  return tell(know, found.weakest ? 'load' : 'loadUnknown', (voice) => linesOf(found, voice), {
    sources: [...new Set(sources)],
    rests: found.rests,
    missing: found.missing,
    ...(caution === undefined ? {} : { caution }),
  });
};

function linesOf(found: Carrying, voice: Voice) {
  const { weakest, load: most, margin, marginPercent, tongue, unknown, passengerTyres } = found;
  const carries = weakest && `${voice.amount(weakest.rating)} on one axle, set by ${partNames[weakest.part]}`;
  const loaded = most && `the load is ${found.loadLeast ? 'at most ' : ''}${voice.amount(most)}`;
  const percent = marginPercent && voice.text(marginPercent.abs().round().toString());
  const amount = margin && voice.amount({ ...margin, value: margin.value.abs() });
  const sign = margin?.value.compare(0) ?? 0;
  const spare =
    margin && (sign === 0 ? 'nothing to spare' : `${amount} ${sign < 0 ? 'too much' : 'to spare'}, ${percent} percent`);
  const onTongue =
    tongue && `${voice.text(tongue.percent.round().toString())} percent on the tongue, ${tongueWords[tongue.code]}`;
  const open = wanting(found.missing, voice);
  return {
    always: [carries, loaded, spare, carries === undefined || loaded === undefined ? open : undefined],
    more: [
      ...found.links.map(({ part, rating }) => `${partNames[part]}: ${voice.amount(rating)}`),
      onTongue,
      passengerTyres ? 'passenger-car tyres count divided by 1.10 on a trailer' : undefined,
      weakest && (weakest.part === 'axle' || weakest.part === 'tyres') ? raising[weakest.part] : undefined,
      `not on the job, and may be weaker: ${listed(unknown.map((part) => partNames[part]))}`,
      carries === undefined || loaded === undefined ? undefined : open,
    ],
  };
}
