// "Is the axle bent?": halves of the hub face, camber and toe, as far as they were measured.
import {
  type Camber,
  type FitReading,
  Fraction,
  type Quantity,
  readTrailer,
  type Straightness,
  straightness,
  tableRules,
} from '#core';
import type { FieldId } from '#data';
import type { Answerer } from '../types.ts';
import { givenReadings, readingsOf } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';

const told: ReadonlySet<FieldId> = new Set<FieldId>(['halfFace', 'camberTop', 'camberBottom', 'toeFront', 'toeRear']);

export const straight: Answerer = (question, job, know) => {
  const readings = [...readingsOf(job), ...givenReadings(question)];
  const found = straightness(readTrailer(ofOneAxle(readings)), tableRules);
  const parts = Object.values(found);
  const missing = wantedFor(question.words ?? '', found);
  const bent = parts.some((part) => !part.straight);
  return tell(
    know,
    parts.length === 0 ? 'straight.unmeasured' : bent ? 'straight.bent' : 'straight.good',
    (voice) => linesOf(found, { missing, bent, camberFirst: /camber/.test(question.words ?? '') }, voice),
    {
      sources: [...new Set(parts.map(({ source }) => source))],
      rests: parts.flatMap(({ basis }) => basis.rests).filter((id) => !id.startsWith('given.')),
      missing,
      ...(bent
        ? { caution: 'A bent beam is never straightened by heat or hammer here: the axle maker decides, else another axle.' }
        : {}),
    },
  );
};

/** The new axle's readings where it was measured, else the old one's: never some of each. */
function ofOneAxle(readings: readonly FitReading[]): FitReading[] {
  const stage = readings.some((reading) => told.has(reading.field) && reading.stage === 'fitted') ? 'fitted' : 'found';
  return readings
    .filter((reading) => !told.has(reading.field) || reading.stage === stage)
    .map((reading) => (told.has(reading.field) ? { ...reading, stage: 'found' } : reading));
}

/** What would tell: of the way asked about, else the halves first. */
function wantedFor(words: string, { halves, camber, toe }: Straightness): FieldId[] {
  if (/camber/.test(words)) return camber ? [] : ['camberTop', 'camberBottom'];
  if (/toe/.test(words)) return toe ? [] : ['toeFront', 'toeRear'];
  return halves ? [] : ['halfFace', ...(toe ? [] : (['toeFront', 'toeRear'] as const))];
}

interface Telling {
  readonly missing: readonly FieldId[];
  readonly bent: boolean;
  readonly camberFirst: boolean;
}

function linesOf({ halves, camber, toe }: Straightness, { missing, bent, camberFirst }: Telling, voice: Voice) {
  const leans = (camber?.found ?? []).map((wheel) => camberLine(wheel, voice));
  const stands = halves && halvesLine(halves.found, halves.straight, voice);
  const lines = [...(camberFirst ? [...leans, stands] : [stands, ...leans]), toe && toeLine(toe.found, voice)];
  const any = lines.some((line) => line !== undefined);
  const head = any ? (bent ? 'bent or shifted' : 'straight, as far as measured') : undefined;
  const how = 'middle of the frame to each hub face, left and right; rim top and bottom to a plumb line; toe at front and rear';
  return {
    always: [...(camberFirst ? [...lines, head] : [head, ...lines]), wanting(missing, voice)],
    more: [any ? undefined : how],
  };
}

function halvesLine({ toLeft, whole }: NonNullable<Straightness['halves']>['found'], straight: boolean, voice: Voice): string {
  const off = voice.amount({ ...toLeft, value: toLeft.value.abs() });
  const side = toLeft.value.lt(0) ? 'right' : 'left';
  const stands = toLeft.value.equals(0) ? 'halves alike' : `the beam stands ${off} to the ${side}`;
  return `${stands}, ${voice.amount(whole)} in all${straight ? '' : ': shifted on its springs, or bent'}`;
}

function camberLine({ side, out, degrees }: Camber, voice: Voice): string {
  const lean = voice.amount({ ...out, value: out.value.abs() });
  const angle = degrees === undefined ? '' : `, ${voice.amount(hundredths(Math.abs(degrees)))}`;
  if (out.value.equals(0)) return `${side} wheel stands upright`;
  return `${side} wheel leans ${out.value.lt(0) ? 'in' : 'out'} at the top, ${lean} over the rim${angle}`;
}

const hundredths = (degrees: number): Quantity => ({ value: new Fraction(Math.round(degrees * 100), 100), unit: 'deg' });

function toeLine(total: Quantity, voice: Voice): string {
  if (total.value.equals(0)) return 'no toe';
  return `toe ${total.value.lt(0) ? 'out' : 'in'} ${voice.amount({ ...total, value: total.value.abs() })} in all`;
}
