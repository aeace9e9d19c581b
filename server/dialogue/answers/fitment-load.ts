// "How much will it carry?"
import {
  type Carrying,
  type CarryingPart,
  carrying,
  convert,
  dimensionOf,
  type Fraction,
  numberOf,
  type Quantity,
  quantity,
  readTrailer,
  type TongueCode,
  tableRules,
} from '#core';
import type { QuestionIntent } from '#intents';
import type { Answerer } from '../types.ts';
import { listed } from '../words.ts';
import { givenReadings, readingsOf } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';
import { tyre } from './fitment-tyre.ts';

const partNames: Readonly<Record<CarryingPart, string>> = {
  axle: 'the axle',
  tyres: 'the two tyres',
  springs: 'the two springs',
  hubs: 'the two hubs and their bearings',
  wheels: 'the two wheels',
};

const tongueWords: Readonly<Record<TongueCode, string>> = {
  light: 'light for a ball coupler: ten to fifteen is usual',
  right: 'between ten and fifteen, as is usual on a ball coupler',
  heavy: 'heavy for a ball coupler: ten to fifteen is usual',
  beyondReason: 'more than any coupling is meant to take; weigh it again',
};

/** What raising it would take, and how far that goes before the next part sets it. */
function raising({ weakest, next }: Carrying, voice: Voice): string | undefined {
  if (!weakest) return undefined;
  const stronger = weakest.part === 'axle' ? 'a stronger axle' : `stronger ${weakest.part}`;
  const limit = next
    ? `to ${voice.amount(next.rating)}, where ${partNames[next.part]} would set it`
    : 'as far as the other parts allow';
  return `${stronger} would raise it ${limit}`;
}

/** "Can it carry four thousand pounds": the weight asked about. */
function askedWeight({ given = [] }: QuestionIntent): Quantity | undefined {
  const said = given.find(({ kind, unit }) => kind === 'quantity' && unit && dimensionOf(unit) === 'mass');
  return said?.unit && convert(quantity(said.value, said.unit), 'lb');
}

/** What the axles carry together, less the weight asked about, in pounds. */
function leftOver({ weakest, axles = 1 }: Carrying, asked: Quantity | undefined): Quantity | undefined {
  return weakest && asked && { value: weakest.rating.value.mul(axles).sub(asked.value), unit: 'lb' };
}

export const load: Answerer = (question, job, know, now) => {
  if (question.given?.some((said) => said.kind === 'measure' && said.field === 'tyreSize')) return tyre(question, job, know, now);
  const trailer = readTrailer([...readingsOf(job), ...givenReadings(question)]);
  const capacity = numberOf(job.candidate?.values.capacity ?? '');
  const found = carrying(trailer, tableRules, capacity);
  const sources = ['49 CFR 571.3 (GAWR), 571.120 S5.1.2', ...found.links.map(({ source }) => source)];
  const asked = askedWeight(question);
  const over = leftOver(found, asked);
  const caution = found.margin?.value.lt(0)
    ? 'Overloaded as it stands. Do not tow it so.'
    : over?.value.lt(0)
      ? 'That would overload it.'
      : undefined;
  const first = (voice: Voice) => asked && over && answerTo(asked, over, found, voice);
  const words = question.words ?? '';
  const lines = (voice: Voice) => asAsked(words, first(voice), found, voice);
  return tell(know, found.weakest || found.tongue ? 'load' : 'loadUnknown', lines, {
    sources: [...new Set(sources)],
    rests: found.rests,
    missing: found.missing,
    ...(caution === undefined ? {} : { caution }),
  });
};

/** A weight on the axles alone: what the tongue takes comes off it. Too much for one part is a no; for a yes the others must be known too. */
function answerTo(asked: Quantity, over: Quantity, { axles = 1, links }: Carrying, voice: Voice): string {
  const on = axles === 1 ? 'one axle' : `${voice.text(String(axles))} axles`;
  const by = voice.amount({ ...over, value: over.value.abs() });
  return over.value.lt(0)
    ? `no: ${voice.amount(asked)} is ${by} too much for ${on}`
    : `as far as ${listed(links.map(({ part }) => partNames[part]))} go, ${voice.amount(asked)} on ${on} leaves ${by}`;
}

/** What the words ask for is spoken first; the rest stands on the screen. */
function asAsked(words: string, first: string | undefined, found: Carrying, voice: Voice) {
  const { always, more } = linesOf(found, voice);
  const onTongue = tongueLines(found, voice);
  if (/tongue|hitch|coupler/.test(words)) {
    const lead = onTongue.length > 0 ? onTongue : [`tell me ${listed(tongueWanted.map(voice.field), 'or')}`];
    return { always: [first, ...lead], more: [...always, ...more] };
  }
  if (/equali[sz]er|share/.test(words)) return { always: [shareLine(found, voice)], more: [first, ...always, ...more] };
  const raise = raising(found, voice);
  if (/raise|more|increase|upgrade|weakest|what would|limit/.test(words))
    return { always: [first, ...always, raise], more: [...more, ...onTongue] };
  return { always: [first, ...always], more: [...more, ...onTongue, raise] };
}

/** Arms of an equaliser share the load the other way round: the shorter arm's axle carries more. */
function shareLine({ shares, axles, load }: Carrying, voice: Voice): string | undefined {
  if (axles === 1) return 'one axle carries it all; an equaliser joins two';
  if (!shares)
    return `arms alike share alike; else ${wanting(['frontArm', 'rearArm', ...(axles === 2 ? [] : (['axleCount'] as const))], voice)}`;
  const percent = (share: Fraction) => voice.amount({ value: share.mul(100).round(1), unit: '1' });
  const most = load ? `, at most ${voice.amount(load)} on the axle in work` : '';
  return `${percent(shares.front)} percent on the front axle, ${percent(shares.rear)} on the rear${most}`;
}

const tongueWanted = ['tongueWeight', 'loadCentre'] as const;

/** Weight and share on the tongue, and where the axle would stand for a usual share. */
function tongueLines({ tongue }: Carrying, voice: Voice): string[] {
  if (!tongue) return [];
  const { weight, percent, code, reckoned, axleAt, share } = tongue;
  const number = voice.amount({ value: percent.round(1), unit: '1' });
  return [
    `${voice.amount(weight)} on the tongue${reckoned ? ', by moments about the coupler' : ''}: ${number} percent, ${tongueWords[code]}`,
    ...(axleAt && share
      ? [
          `${voice.text(share.toString())} percent with the axle ${voice.amount(axleAt)} behind the coupler, the load left where it is`,
        ]
      : []),
  ];
}

function linesOf(found: Carrying, voice: Voice) {
  const { weakest, load: most, margin, marginPercent, unknown, passengerTyres } = found;
  const carries = weakest && `${voice.amount(weakest.rating)} on one axle, set by ${partNames[weakest.part]}`;
  const loaded = most && `the load is ${found.loadLeast ? 'at most ' : ''}${voice.amount(most)}`;
  const percent = marginPercent && voice.text(marginPercent.abs().round().toString());
  const amount = margin && voice.amount({ ...margin, value: margin.value.abs() });
  const sign = margin?.value.compare(0) ?? 0;
  const spare =
    margin && (sign === 0 ? 'nothing to spare' : `${amount} ${sign < 0 ? 'too much' : 'to spare'}, ${percent} percent`);
  const open = wanting(found.missing, voice);
  return {
    always: [carries, loaded, spare, carries === undefined || loaded === undefined ? open : undefined],
    more: [
      ...found.links.map(({ part, rating }) => `${partNames[part]}: ${voice.amount(rating)}`),
      passengerTyres ? 'passenger-car tyres count divided by 1.10 on a trailer' : undefined,
      unknown.length > 0 ? `not on the job, and may be weaker: ${listed(unknown.map((part) => partNames[part]))}` : undefined,
      carries === undefined || loaded === undefined ? undefined : open,
    ],
  };
}
