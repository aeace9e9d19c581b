// A shop's own procedures laid over the ones that come with the tool.
import { type JobKind, jobKinds, type Procedure, type ProcedureStep, procedures } from '#data';

/** A step of a shop: replaces the step of its id, or comes `after` another, or last. */
export type ShopStep = ProcedureStep & { readonly after?: string };

/** What a shop adds or changes. A known id changes the steps it names; a new one is a whole procedure, `jobs` says of which kinds. */
export interface ShopProcedure {
  readonly id: string;
  readonly title?: string;
  readonly steps: readonly ShopStep[];
  readonly drop?: readonly string[];
  readonly jobs?: readonly string[];
  /** The procedure that a new one follows in its jobs; absent = last. */
  readonly after?: string;
}

/** How work goes in one shop. */
export interface Practice {
  readonly procedures: readonly Procedure[];
  readonly kinds: readonly JobKind[];
}

/** How work goes where a shop has said nothing of its own. */
export const plainPractice: Practice = { procedures, kinds: jobKinds };

/** The practice with a shop's own laid over it. Check the result with `checkProcedures` of #data/schema. */
export function withShopProcedures(own: Practice, shop: readonly ShopProcedure[]): Practice {
  const added = shop.filter((one) => !isKnown(own, one));
  const changed = own.procedures.map((procedure) => shop.filter(({ id }) => id === procedure.id).reduce(overlay, procedure));
  return {
    procedures: [...changed, ...added.map(({ id, title, steps }) => ({ id, title: title ?? id, steps: steps.map(bare) }))],
    kinds: own.kinds.map((kind) => added.reduce(join, kind)),
  };
}

/** Names in a shop's procedure that nothing answers to, each with the step it stands in ('' = the whole procedure). */
export function strayNames(own: Practice, shop: ShopProcedure): readonly { readonly step: string; readonly fault: string }[] {
  const steps = own.procedures.find(({ id }) => id === shop.id)?.steps ?? [];
  const isStep = (name: string) => [...steps, ...shop.steps].some(({ id }) => id === name);
  const place = isKnown(own, shop) ? [] : placeFaults(own, shop);
  return [
    ...(shop.drop ?? [])
      .filter((name) => !isStep(name))
      .map((name) => ({ step: '', fault: `drops step '${name}', which is not there` })),
    ...place.map((fault) => ({ step: '', fault })),
    ...shop.steps.flatMap(({ id, after }) =>
      after === undefined || isStep(after) ? [] : [{ step: id, fault: `comes after step '${after}', which is not there` }],
    ),
  ];
}

function placeFaults(own: Practice, { jobs = [], after }: ShopProcedure): readonly string[] {
  const strange = jobs.filter((name) => own.kinds.every(({ id }) => id !== name));
  const apart = own.kinds.filter(({ id, procedures }) => jobs.includes(id) && after !== undefined && !procedures.includes(after));
  return [
    ...strange.map((name) => `names job '${name}'; there are ${own.kinds.map(({ id }) => id).join(', ')}`),
    ...apart.map(({ id }) => `comes after procedure '${after}', which job '${id}' does not have`),
  ];
}

const isKnown = (own: Practice, { id }: ShopProcedure): boolean => own.procedures.some((procedure) => procedure.id === id);

function join(kind: JobKind, { id, jobs = [], after }: ShopProcedure): JobKind {
  if (!jobs.includes(kind.id)) return kind;
  const at = after === undefined ? kind.procedures.length : kind.procedures.indexOf(after) + 1;
  return { ...kind, procedures: kind.procedures.toSpliced(at, 0, id) };
}

function overlay(procedure: Procedure, shop: ShopProcedure): Procedure {
  const kept = procedure.steps.filter(({ id }) => !shop.drop?.includes(id));
  return { ...procedure, title: shop.title ?? procedure.title, steps: shop.steps.reduce(place, kept) };
}

function place(steps: readonly ProcedureStep[], own: ShopStep): readonly ProcedureStep[] {
  const at = steps.findIndex(({ id }) => id === own.id);
  if (at >= 0) return steps.with(at, bare(own));
  const before = own.after === undefined ? -1 : steps.findIndex(({ id }) => id === own.after);
  return steps.toSpliced(before < 0 ? steps.length : before + 1, 0, bare(own));
}

function bare({ after: _after, ...step }: ShopStep): ProcedureStep {
  return step;
}
