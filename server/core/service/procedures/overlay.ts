// A shop's own procedures laid over the ones that come with the tool.
import type { Procedure, ProcedureStep } from '#data';

/** A step of a shop: replaces the step of its id, or comes `after` another, or last. */
export type ShopStep = ProcedureStep & { readonly after?: string };

/** What a shop adds or changes. A new id is a whole new procedure; a known one changes the steps it names. */
export interface ShopProcedure {
  readonly id: string;
  readonly title?: string;
  readonly steps: readonly ShopStep[];
  readonly drop?: readonly string[];
}

/** The procedures with a shop's own laid over them, by id. Check the result with `checkProcedures` of #data/schema. */
export function withShopProcedures(own: readonly Procedure[], shop: readonly ShopProcedure[]): readonly Procedure[] {
  const changed = own.map((procedure) => shop.filter(({ id }) => id === procedure.id).reduce(overlay, procedure));
  const added = shop.filter(({ id }) => own.every((procedure) => procedure.id !== id));
  return [...changed, ...added.map(({ id, title, steps }) => ({ id, title: title ?? id, steps: steps.map(bare) }))];
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
