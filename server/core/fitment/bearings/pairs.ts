// What goes with what: cone and cup, the set of a spindle, what has the same size, the seal.
import { type BearingRow, bearings, type HubSetRow, hubSets, type SealRow, seals } from '#data';
import { Fraction } from '../../quantity/index.ts';
import { asStamped } from './identify.ts';

const one = (text: string) => asStamped(text);

export type Pairing =
  | { readonly code: 'pair'; readonly row: BearingRow }
  | { readonly code: 'notAPair'; readonly cupsForCone: readonly string[]; readonly conesForCup: readonly string[] }
  | { readonly code: 'unknown'; readonly which: readonly string[] };

/** Whether this cone runs in this cup; what each would want if not. Equal outside sizes do not make a pair. */
export function pairing(cone: string, cup: string): Pairing {
  const [inner, outer] = [one(cone), one(cup)];
  const row = bearings.find((found) => found.cone === inner && found.cup === outer);
  if (row) return { code: 'pair', row };
  const cups = cupsFor(inner);
  const cones = conesFor(outer);
  const which = [...(cups.length > 0 ? [] : [inner]), ...(cones.length > 0 ? [] : [outer])];
  if (which.length > 0) return { code: 'unknown', which };
  return { code: 'notAPair', cupsForCone: cups, conesForCup: cones };
}

export const cupsFor = (cone: string): string[] => bearings.filter((row) => row.cone === one(cone)).map(({ cup }) => cup);
export const conesFor = (cup: string): string[] => bearings.filter((row) => row.cup === one(cup)).map(({ cone }) => cone);

/** Pairs of the same bore, outside and assembled width within the tolerance, in; the row itself left out. */
export function interchange(row: BearingRow, tolerance: Fraction = new Fraction('0.0005')): readonly BearingRow[] {
  const near = (key: 'bore' | 'od' | 'width', other: BearingRow) => new Fraction(row[key]).sub(other[key]).abs().lte(tolerance);
  return bearings.filter((other) => other.id !== row.id && near('bore', other) && near('od', other) && near('width', other));
}

/** Sets often found with these bearings, or on an axle of this capacity where no number is known. Only a suggestion. */
export function setsFor(known: {
  readonly inner?: string;
  readonly outer?: string;
  readonly capacity?: Fraction;
}): readonly HubSetRow[] {
  const holds = (pair: string, number: string) => pair.split('/').includes(one(number));
  const { inner, outer, capacity } = known;
  if (inner !== undefined || outer !== undefined) {
    return hubSets.filter(
      (set) => (inner === undefined || holds(set.inner, inner)) && (outer === undefined || holds(set.outer, outer)),
    );
  }
  return capacity ? hubSets.filter((set) => capacity.equals(set.capacity)) : [];
}

/** Seals that run on this journal and press into this bore, in; either may be left out. */
export function sealsFor(journal: Fraction | undefined, bore: Fraction | undefined, tolerance: Fraction): readonly SealRow[] {
  const near = (wanted: Fraction | undefined, have: string) => wanted === undefined || wanted.sub(have).abs().lte(tolerance);
  if (journal === undefined && bore === undefined) return [];
  return seals.filter(({ inside, outside }) => near(journal, inside) && near(bore, outside));
}
