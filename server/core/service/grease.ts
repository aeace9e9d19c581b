// Grease: which kinds may meet, which grade it is, how much a hub takes and how many strokes that is.
import { type GreaseThickenerRow, greaseGrades, greaseThickeners } from '#data';
import { Fraction } from '../quantity/index.ts';

export type GreaseMix =
  | {
      readonly code: 'mixes' | 'mixesBorderline' | 'mixesNot';
      readonly one: string;
      readonly other: string;
      readonly source: string;
    }
  | { readonly code: 'thickenerUnknown'; readonly known: readonly string[] };

/** Whether two thickeners may meet, by name as the trade says it. */
export function mayMix(one: string, other: string): GreaseMix {
  const [first, second] = [thickenerOf(one), thickenerOf(other)];
  if (!first || !second) return { code: 'thickenerUnknown', known: greaseThickeners.map(({ said }) => said[0] ?? '') };
  const letter = first.mixes[greaseThickeners.indexOf(second)];
  const code = letter === 'C' ? 'mixes' : letter === 'B' ? 'mixesBorderline' : 'mixesNot';
  return { code, one: first.id, other: second.id, source: first.source };
}

/** The longest name wins: "lithium complex" is not "lithium". */
function thickenerOf(name: string): GreaseThickenerRow | undefined {
  const text = name.toLowerCase();
  const named = greaseThickeners.flatMap((row) => row.said.filter((said) => text.includes(said)).map((said) => ({ row, said })));
  return named.toSorted((a, b) => b.said.length - a.said.length)[0]?.row;
}

/** Every thickener named in a text, in the order of the table. */
export function thickenersIn(text: string): readonly string[] {
  const words = text.toLowerCase();
  const named = greaseThickeners.flatMap(({ said }) => said.filter((name) => words.includes(name)));
  return named.filter(
    (name) => !named.some((longer) => longer !== name && longer.includes(name) && !words.replace(longer, '').includes(name)),
  );
}

/** NLGI grade of a worked penetration (tenths of a millimetre); between the bands there is none. */
export function gradeByPenetration(penetration: Fraction): string | undefined {
  return greaseGrades.find(({ min, max }) => penetration.compare(min) >= 0 && penetration.compare(max) <= 0)?.id;
}

/** Inches. The hollow of a hub between its two bearings, round the spindle. */
export interface HubHollow {
  readonly bore: Fraction;
  readonly spindle: Fraction;
  readonly length: Fraction;
}

/** Cubic inches between bore and spindle; undefined where the spindle would not go in. pi to six digits. */
export function cavityVolume({ bore, spindle, length }: HubHollow): Fraction | undefined {
  if (spindle.compare(bore) >= 0 || length.compare(0) <= 0 || spindle.compare(0) < 0) return undefined;
  return bore.mul(bore).sub(spindle.mul(spindle)).mul(length).mul('0.785398');
}

/** Grams per cubic inch of grease near 0.9 g/cm3 (common practice, no source). */
const gramsPerCubicInch = new Fraction('16.387064').mul('0.9');

/** Grams of grease that fill so many cubic inches. */
export function gramsToFill(cubicInches: Fraction): Fraction {
  return cubicInches.mul(gramsPerCubicInch);
}

/** Whole strokes of a gun that gives `perStroke` grams; undefined for a gun that gives nothing. */
export function strokesFor(grams: Fraction, perStroke: Fraction): number | undefined {
  return perStroke.compare(0) > 0 ? grams.div(perStroke).ceil().valueOf() : undefined;
}

/** Grams per stroke that hand guns give: measure your own (machinerylubrication.com/Read/206). */
export const strokeRange = { low: new Fraction(1), high: new Fraction(3), source: 'machinerylubrication.com/Read/206' } as const;
