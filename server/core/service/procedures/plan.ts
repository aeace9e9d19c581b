// Which steps a job has, in order, given what is known of the trailer so far.
import type { JobKindId, Procedure, ProcedureStep } from '#data';
import { oncePer } from '../../once.ts';
import { type AxleName, measured, type Place, type Reading } from '../reading.ts';
import { holds } from './condition.ts';
import { type Practice, plainPractice } from './overlay.ts';

/** One step to do at one place. `key` is `procedure/step`, `procedure/step@left`, `@front`, `@front.right`. */
export interface PlannedStep {
  readonly key: string;
  readonly procedure: string;
  readonly title: string;
  readonly step: ProcedureStep;
  readonly place: Place;
  /** The job brings a new axle: what was found is not what is fitted. */
  readonly replaces: boolean;
}

/** The steps of a kind of job that apply now, in working order. More values may add or drop later steps, never reorder them.
 * The same list as before while the values say the same about what applies. */
export function planSteps(kind: JobKindId, readings: readonly Reading[], practice = plainPractice): readonly PlannedStep[] {
  const plans = plansFor(practice)(readings);
  const plan = plans.get(kind) ?? planNow(kind, readings, practice);
  plans.set(kind, plan);
  return plan;
}

/** A plan is asked for dozens of times a turn, while the values stay the same ones. */
const plansFor = oncePer((_practice: Practice) =>
  oncePer((_readings: readonly Reading[]) => new Map<JobKindId, readonly PlannedStep[]>()),
);

function planNow(kind: JobKindId, readings: readonly Reading[], practice: Practice): readonly PlannedStep[] {
  const { whens, plans } = routeOf(practice)(kind);
  const axles = axlesInWork(readings);
  const now = new Map(whens.map((when) => [when, holds(when, readings)]));
  const facts = [...axles, ...now.values()].join();
  const plan = plans.get(facts) ?? walkAll(kind, axles, ({ when }) => when === undefined || now.get(when) === true, practice);
  if (plans.size >= plansKept) plans.clear();
  plans.set(facts, plan);
  return plan;
}

const plansKept = 200;

/** What a kind of job in a practice depends on, and the plans made so far by what it came to. */
const routeOf = oncePer(({ procedures, kinds }: Practice) => {
  const routes = new Map(
    kinds.map((kind) => {
      const steps = procedures.filter(({ id }) => kind.procedures.includes(id)).flatMap((procedure) => procedure.steps);
      return [
        kind.id,
        { whens: steps.flatMap(({ when }) => (when ? [when] : [])), plans: new Map<string, readonly PlannedStep[]>() },
      ];
    }),
  );
  return (kind: JobKindId) => routes.get(kind) ?? { whens: [], plans: new Map<string, readonly PlannedStep[]>() };
});

type Axles = readonly (AxleName | undefined)[];
type Applies = (step: ProcedureStep) => boolean;

function walkAll(kind: JobKindId, axles: Axles, applies: Applies, { procedures, kinds }: Practice): readonly PlannedStep[] {
  const job = kinds.find(({ id }) => id === kind);
  const replaces = job?.replaces === true;
  return (job?.procedures ?? [])
    .flatMap((id) => procedures.filter((procedure) => procedure.id === id))
    .flatMap((procedure) => walk(procedure, axles, applies))
    .map((step) => ({ ...step, replaces }));
}

type Walked = Omit<PlannedStep, 'replaces'>;

/** A hub is finished before the next is begun: steps in a row that repeat alike are walked place by place. */
function walk(procedure: Procedure, axles: Axles, applies: Applies): Walked[] {
  return runs(procedure.steps).flatMap((run) =>
    placesOf(run[0]?.repeat, axles).flatMap((place) => run.filter(applies).map((step) => planned(procedure, step, place))),
  );
}

function runs(steps: readonly ProcedureStep[]): ProcedureStep[][] {
  const all: ProcedureStep[][] = [];
  for (const step of steps) {
    const last = all.at(-1);
    if (last?.[0]?.repeat === step.repeat && step.repeat !== undefined) last?.push(step);
    else all.push([step]);
  }
  return all;
}

function placesOf(repeat: ProcedureStep['repeat'], axles: Axles): readonly Place[] {
  const onAxle = (axle: AxleName | undefined): Place => (axle === undefined ? {} : { axle });
  const bothSides = (place: Place): Place[] => [
    { ...place, side: 'left' },
    { ...place, side: 'right' },
  ];
  if (repeat === 'axle') return axles.map(onAxle);
  if (repeat === 'wheel') return axles.map(onAxle).flatMap(bothSides);
  return repeat === 'side' ? bothSides({}) : [{}];
}

function planned(procedure: Procedure, step: ProcedureStep, place: Place): Walked {
  const where = [place.axle, place.side].filter((name) => name !== undefined).join('.');
  const key = `${procedure.id}/${step.id}${where && `@${where}`}`;
  return { key, procedure: procedure.id, title: procedure.title, step, place };
}

const axlesOf: Readonly<Record<string, readonly AxleName[]>> = { tandem: ['front', 'rear'], triple: ['front', 'middle', 'rear'] };

/** Names of the axles that the work is on; a single axle has none. A tandem is all in work until one axle is named. */
export function axlesInWork(readings: readonly Reading[]): Axles {
  const all = axlesOf[measured(readings, { field: 'axleCount' })?.value ?? 'single'];
  if (all === undefined) return [undefined];
  const named = measured(readings, { field: 'axleInWork' })?.value;
  return all.some((axle) => axle === named) ? all.filter((axle) => axle === named) : all;
}
