// "How tall is a 205 75 15?", and what another size would change.
import {
  axleRpm,
  compareTyres,
  convert,
  Fraction,
  loadsOf,
  quantity,
  readTrailer,
  type TyreFigures,
  type TyreLoad,
  turnsPerMile,
  tyreFigures,
  tyreLoad,
  tyreOn,
} from '#core';
import type { TyreLoadRow } from '#data';
import type { QuestionIntent } from '#intents';
import type { Answerer } from '../types.ts';
import { liveValues } from '../values.ts';
import { readingsOf } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { shown, tell, wanting } from './fitment-tell.ts';

export const tyre: Answerer = (question, job, know) => {
  const on = liveValues(job).findLast(({ field }) => field === 'tyreSize');
  const [asked = on?.value, other = asked === on?.value ? undefined : on?.value] = askedFirst(question);
  if (asked === undefined)
    return tell(know, 'tyreUnknown', (voice) => ({ always: [wanting(['tyreSize'], voice)] }), {
      missing: ['tyreSize'],
      asks: true,
    });
  const figures = tyreFigures(asked);
  if (!figures)
    return tell(know, 'tyreUnreadable', () => ({
      always: [`${asked} is no tyre size; say it as two oh five, seventy-five, fifteen`],
    }));
  const carries = tyreLoad(asked === on?.value ? tyreOn(readTrailer(readingsOf(job))) : asked);
  const beside = other === undefined ? undefined : tyreFigures(other);
  return tell(
    know,
    'tyre',
    (voice) => ({
      ...linesOf(asked, figures, carries, voice, speedIn(question)),
      ...changes(other, beside, figures, asked, carries, voice),
    }),
    {
      sources: [figures.source, ...(carries ? [carries.source] : [])],
      rests: on && (asked === on.value || other === on.value) ? [on.id] : [],
    },
  );
};

/** Miles an hour of "how many rpm at fifty-five", a whole number; sixty where none is named. */
function speedIn({ given = [], words = '' }: QuestionIntent): number {
  const said = given.find(
    ({ kind, unit }) => kind === 'quantity' && (unit === 'mph' || unit === 'kmh' || (unit === '1' && /rpm|minute/.test(words))),
  );
  if (!said?.unit) return 60;
  return Math.round(said.unit === '1' ? Number(said.value) : convert(quantity(said.value, said.unit), 'mph').value.valueOf());
}

/** "Compare a 205 with a 225" asks what the second would change; "is a 225 taller than a 205" asks it of the first. */
function askedFirst(question: QuestionIntent): string[] {
  const [first, second, ...rest] = sizesIn(question);
  if (first === undefined || second === undefined || /\bthan\b/.test(question.words ?? '')) return sizesIn(question);
  return [second, first, ...rest];
}

const sizesIn = ({ given = [] }: QuestionIntent): string[] =>
  given.flatMap((said) =>
    said.kind === 'measure' && said.field === 'tyreSize' ? [[said.value, said.also?.value].filter(Boolean).join(' ')] : [],
  );

function linesOf(size: string, figures: TyreFigures, carries: TyreLoad | undefined, voice: Voice, mph = 60) {
  const { overall, width } = figures;
  const tall = overall && `about ${decimal(overall.value.valueOf(), voice)} inches tall`;
  const wide = width && `${decimal(width.value.valueOf(), voice)} wide`;
  const replaced = figures.replacedBy && `${figures.replacedBy} took its place`;
  const name = voice.value('tyreSize', size);
  return {
    always: [
      `${name}: ${[tall, wide].filter(Boolean).join(', ') || figures.source}`,
      carries && loadLine(carries, voice),
      replaced,
    ],
    more: [...more(figures, mph), ...(carries ? [] : loadsOf(size).map(rangeLine))],
  };
}

function changes(
  other: string | undefined,
  beside: TyreFigures | undefined,
  figures: TyreFigures,
  size: string,
  carries: TyreLoad | undefined,
  voice: Voice,
) {
  if (!beside || other === undefined) return {};
  if (alike(beside, figures)) return {};
  const { rideHeight, sideRoom, sameRim } = compareTyres(beside, figures);
  const from = voice.value('tyreSize', other);
  const up =
    rideHeight &&
    `it sits ${decimal(Math.abs(rideHeight.value.valueOf()), voice)} inches ${rideHeight.value.lt(0) ? 'lower' : 'higher'} than on ${from}`;
  const side =
    sideRoom &&
    `${decimal(Math.abs(sideRoom.value.valueOf()), voice)} inches ${sideRoom.value.lt(0) ? 'less' : 'more'} room on each side of the tyre`;
  const base = linesOf(size, figures, carries, voice);
  return { always: [...base.always, up, side, sameRim ? undefined : 'it is for another rim'] };
}

const alike = (a: TyreFigures, b: TyreFigures) =>
  (['overall', 'width'] as const).every((size) => a[size]?.value.toFraction() === b[size]?.value.toFraction());

const rangeLine = ({ size, loadRange, load, pressure }: TyreLoadRow) =>
  `${size} load range ${loadRange}: ${load} lb at ${pressure} psi`;

const loadLine = ({ counted, passenger, pressure }: TyreLoad, voice: Voice) =>
  `${voice.amount(counted)} a tyre on a trailer${passenger ? ', divided by one point one as a passenger-car tyre' : ''}${pressure ? `, at ${voice.amount(pressure)}` : ''}`;

function more({ overall, size }: TyreFigures, mph: number): string[] {
  if (!overall) return [];
  const turns = `${shown(turnsPerMile(overall), 0)} turns a mile unloaded, ${shown(axleRpm(overall, mph), 0)} a minute at ${mph} mph`;
  return [turns, `rim ${size.rim.toFraction()} in`, 'The figure on the sidewall decides'];
}

/** One place after the point, as figures or words. */
const decimal = (value: number, voice: Voice) => voice.amount({ value: tenths(value), unit: '1' });
const tenths = (value: number): Fraction => new Fraction(Math.round(value * 10), 10);
