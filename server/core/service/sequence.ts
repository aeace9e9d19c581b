// In which order nuts are tightened.
import { tighteningOrders } from '#data';

/** Holes numbered clockwise from the top. */
export interface TighteningOrder {
  readonly code: 'order';
  readonly studs: number;
  readonly order: readonly number[];
  readonly row: string;
  readonly source: string;
}
export interface NoOrder {
  readonly code: 'noOrder';
  readonly studs: number;
  readonly known: readonly number[];
}

/** The crossing order of a wheel with so many studs. */
export function tighteningOrder(studs: number): TighteningOrder | NoOrder {
  const row = tighteningOrders.find((one) => one.studs === studs);
  if (!row) return { code: 'noOrder', studs, known: tighteningOrders.map((one) => one.studs) };
  return { code: 'order', studs, order: row.order, row: row.id, source: row.source };
}

/** The four legs of one spring's U-bolts, crosswise: each leg is followed by the one diagonally opposite. */
export const uBoltLegs = ['front inside', 'rear outside', 'front outside', 'rear inside'] as const;
