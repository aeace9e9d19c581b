// U-bolt torque: the highest that spring shops publish for the thread, in stages, crosswise.
import { type UBoltRow, uBolts } from '#data';
import { Fraction, type Quantity } from '../quantity/index.ts';
import { threadOf } from './fastener.ts';
import { type Range, rangeOf } from './ranges.ts';
import { type TorqueStage, thirds } from './stages.ts';

export interface UBoltJoint {
  readonly thread?: string;
  /** "5" or "8". */
  readonly grade?: string;
  readonly plated?: boolean;
  readonly maker?: { readonly low: Quantity; readonly high: Quantity };
}

/** `highest`: the most that is safe whatever the grade and plating; `ranges`: each grade and plating for itself. */
export type UBoltTorque =
  | {
      readonly code: 'maker';
      readonly highest: Range;
      readonly ranges: readonly Range[];
      readonly stages: readonly TorqueStage[];
    }
  | {
      readonly code: 'published';
      readonly highest: Range;
      readonly ranges: readonly Range[];
      readonly stages: readonly TorqueStage[];
    }
  | { readonly code: 'threadUnknown' | 'nonePublished'; readonly ranges: readonly Range[] };

/** What U-bolts get, lb-ft. */
export function uBoltTorque(joint: UBoltJoint): UBoltTorque {
  if (joint.maker) return fromMaker(joint.maker);
  if (joint.thread === undefined) return { code: 'threadUnknown', ranges: [] };
  const thread = threadOf(joint.thread)?.id ?? joint.thread;
  const rows = uBolts.filter((row) => row.thread === thread && (joint.grade === undefined || row.grade === joint.grade));
  const ranges = rows.flatMap((row) => rangesOf(row, joint.plated));
  const [highest] = ranges.toSorted((one, other) => one.high.compare(other.high));
  if (!highest) return { code: 'nonePublished', ranges };
  return { code: 'published', highest, ranges, stages: thirds(highest.high, highest.high) };
}

function fromMaker({ low, high }: { readonly low: Quantity; readonly high: Quantity }): UBoltTorque {
  const highest: Range = {
    low: low.value,
    high: high.value,
    unit: low.unit,
    row: 'maker',
    source: "the part maker's value, as given",
  };
  return { code: 'maker', highest, ranges: [highest], stages: thirds(low.value, high.value) };
}

function rangesOf(row: UBoltRow, plated: boolean | undefined): readonly Range[] {
  const least =
    uBolts.find(({ thread, least: some }) => thread === row.thread && some !== undefined)?.least ?? halfOf(row.plated);
  const named = (finish: 'plated' | 'unplated') =>
    rangeOf(least, row[finish], 'lbf.ft', { id: `${row.id}.${finish}`, source: row.source });
  if (plated === undefined) return [named('plated'), named('unplated')];
  return [named(plated ? 'plated' : 'unplated')];
}

/** Where nothing is published below, under half of the highest counts as low: common practice, no source. */
function halfOf(torque: string): string {
  return new Fraction(torque).div(2).toFraction();
}
