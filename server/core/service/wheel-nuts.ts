// Wheel-nut torque: published ranges for the stud and the wheel; the maker's value stands before them all.
import { type FieldId, type WheelNutRow, wheelNuts } from '#data';
import { Fraction, type Quantity, quantity } from '../quantity/index.ts';
import { threadOf } from './fastener.ts';
import { commonRange, type Range, rangeOf } from './ranges.ts';
import { type TorqueStage, thirds } from './stages.ts';

export interface WheelJoint {
  /** Stud thread, "1/2-20". */
  readonly thread?: string;
  readonly wheelType?: string;
  /** Inches. */
  readonly wheelDiameter?: string;
  readonly maker?: { readonly low: Quantity; readonly high: Quantity };
}

/** `range` is what all of `ranges` allow; `missing` would narrow the documents further. */
export type WheelNutTorque =
  | { readonly code: 'maker'; readonly range: Range; readonly ranges: readonly Range[]; readonly stages: Staging }
  | {
      readonly code: 'published';
      readonly range: Range;
      readonly ranges: readonly Range[];
      readonly stages: Staging;
      readonly missing: readonly FieldId[];
    }
  | { readonly code: 'documentsDiffer'; readonly ranges: readonly Range[]; readonly missing: readonly FieldId[] }
  | { readonly code: 'studUnknown'; readonly ranges: readonly Range[]; readonly missing: readonly FieldId[] }
  | { readonly code: 'nonePublished'; readonly ranges: readonly Range[]; readonly missing: readonly FieldId[] };

export interface Staging {
  readonly steps: readonly TorqueStage[];
  /** Absent: thirds, common practice. */
  readonly row?: string;
  readonly source: string;
}

/** What the wheel nuts get, lb-ft. */
export function wheelNutTorque(joint: WheelJoint): WheelNutTorque {
  if (joint.maker) return fromMaker(joint.maker);
  if (joint.thread === undefined) return { code: 'studUnknown', ranges: [], missing: ['studThread'] };
  const rows = wheelNuts.filter((row) => mayApply(row, joint));
  const ranges = rows.map(finalOf);
  const missing = missingFor(rows, joint);
  if (rows.length === 0) return { code: 'nonePublished', ranges, missing };
  const range = commonRange(ranges);
  if (!range) return { code: 'documentsDiffer', ranges, missing };
  return { code: 'published', range, ranges, stages: stagingOf(rows, range), missing };
}

function fromMaker({ low, high }: { readonly low: Quantity; readonly high: Quantity }): WheelNutTorque {
  const range: Range = {
    low: low.value,
    high: high.value,
    unit: low.unit,
    row: 'maker',
    source: "the part maker's value, as given",
  };
  return { code: 'maker', range, ranges: [range], stages: { steps: thirds(low.value, high.value), source: thirdsSource } };
}

const thirdsSource = 'common practice, no source';

function mayApply(row: WheelNutRow, { thread = '', wheelType, wheelDiameter }: WheelJoint): boolean {
  const stud = threadOf(thread)?.diameter ?? thread.split('-')[0];
  const sizes = row.wheelDiameters;
  return (
    (row.stud === undefined ? isHalfInch(stud) : row.stud === stud) &&
    (row.wheelType === undefined || wheelType === undefined || row.wheelType === wheelType) &&
    (sizes === undefined || wheelDiameter === undefined || sizes.some((size) => quantity(size, 'in').value.equals(wheelDiameter)))
  );
}

/** The rows that name no stud are about light 12 and 13 inch wheels, whose stud is the half inch. */
function isHalfInch(stud: string | undefined): boolean {
  return stud === '1/2';
}

function finalOf(row: WheelNutRow): Range {
  const [low = '0', high = low] = row.stages.at(-1) ?? [];
  return rangeOf(low, high, 'lbf.ft', row);
}

/** Ask only for what would tell the rows apart. */
function missingFor(rows: readonly WheelNutRow[], { wheelType, wheelDiameter }: WheelJoint): readonly FieldId[] {
  const differ = !rows.every((row) => sameFinal(row, rows[0]));
  const bySize = differ && wheelDiameter === undefined && rows.some((row) => row.wheelDiameters);
  const byType = differ && wheelType === undefined && rows.some((row) => row.wheelType);
  return [...(bySize ? ['wheelDiameter' as const] : []), ...(byType ? ['wheelType' as const] : [])];
}

function sameFinal(row: WheelNutRow, other: WheelNutRow | undefined): boolean {
  return row.stages.at(-1)?.join() === other?.stages.at(-1)?.join();
}

function stagingOf(rows: readonly WheelNutRow[], range: Range): Staging {
  const staged = rows.find((row) => row.stages.length > 1);
  if (!staged) return { steps: thirds(range.low, range.high), source: thirdsSource };
  const before = staged.stages
    .slice(0, -1)
    .map(([low = '0', high = low]) => ({ low: new Fraction(low), high: new Fraction(high) }));
  return { steps: [...before, { low: range.low, high: range.high }], row: staged.id, source: staged.source };
}
