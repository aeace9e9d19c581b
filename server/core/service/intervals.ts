// Next service: by date and by miles, whichever comes first.
import { procedures, type ServiceIntervalRow, serviceIntervals } from '#data';
import { Fraction } from '../quantity/index.ts';
import { addMonths } from './months.ts';

/** What one job did to a trailer: the steps done, each with its time. */
export interface PastJob {
  readonly steps: readonly { readonly step: string; readonly at: string }[];
  /** "single", "tandem" or "triple", where it was told. */
  readonly axleCount?: string;
  /** Miles, where it was read. */
  readonly odometer?: string;
}

/** When a service was last done to the whole trailer. */
interface Served {
  readonly at: string;
  readonly odometer?: string;
}

/** One service that falls due; `state` on the day asked, by date and, where both odometers are known, by miles. */
export interface DueService {
  readonly row: ServiceIntervalRow;
  readonly last: Served;
  readonly dueAt?: string;
  readonly dueMiles?: Fraction;
  readonly state: 'notYet' | 'soon' | 'due';
}

/** What falls due when, from what was done to one trailer; soonest first. Dates compare as YYYY-MM-DD. */
export function nextServices(past: readonly PastJob[], today: string, odometer?: string): readonly DueService[] {
  return serviceIntervals
    .filter(({ usual }) => usual)
    .flatMap((row) => {
      const last = row.steps
        .flatMap((step) => servedBy(step, past) ?? [])
        .toSorted(byTime)
        .at(-1);
      return last ? [dueFrom(row, last, today.slice(0, 10), odometer)] : [];
    })
    .toSorted((one, other) => (one.dueAt ?? '9').localeCompare(other.dueAt ?? '9'));
}

const byTime = (one: Served, other: Served): number => one.at.localeCompare(other.at);

/** Each place of the trailer counts from the last time that the step was done there, and the trailer from the oldest of them; half done is not done. */
function servedBy(step: string, past: readonly PastJob[]): Served | undefined {
  const places = new Map<string, Served>();
  const done = past.flatMap(({ steps, odometer }) =>
    steps.map(({ step: key, at }) => ({ key, at, ...(odometer === undefined ? {} : { odometer }) })),
  );
  for (const { key, ...served } of done.toSorted(byTime)) {
    const [name, place = ''] = key.split('@');
    if (name === step) places.set(place, served);
  }
  return places.size < placesOf(step, past) ? undefined : [...places.values()].toSorted(byTime)[0];
}

const axleNumber: Readonly<Record<string, number>> = { single: 1, tandem: 2, triple: 3 };

function placesOf(key: string, past: readonly PastJob[]): number {
  const axles = axleNumber[past.findLast(({ axleCount }) => axleCount !== undefined)?.axleCount ?? 'single'] ?? 1;
  const [procedure, id] = key.split('/');
  const step = procedures.find((one) => one.id === procedure)?.steps.find((one) => one.id === id);
  return { wheel: 2 * axles, axle: axles, side: 2, once: 1 }[step?.repeat ?? 'once'];
}

function dueFrom(row: ServiceIntervalRow, last: Served, today: string, odometer: string | undefined): DueService {
  const dueAt = row.months === undefined ? undefined : addMonths(last.at, Number(row.months));
  const dueMiles =
    row.miles === undefined || last.odometer === undefined ? undefined : new Fraction(last.odometer).add(row.miles);
  const overMiles = dueMiles !== undefined && odometer !== undefined && dueMiles.compare(odometer) <= 0;
  const state = overMiles || (dueAt !== undefined && dueAt <= today) ? 'due' : isSoon(dueAt, today) ? 'soon' : 'notYet';
  return { row, last, state, ...(dueAt === undefined ? {} : { dueAt }), ...(dueMiles === undefined ? {} : { dueMiles }) };
}

/** Within a month. */
function isSoon(dueAt: string | undefined, today: string): boolean {
  return dueAt !== undefined && dueAt <= addMonths(today, 1);
}
