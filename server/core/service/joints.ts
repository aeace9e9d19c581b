// What the job's values say about its joints: stud, wheel, U-bolt thread and the maker's own figures.
import { type FieldId, fieldOf } from '#data';
import { convert, Fraction, type Quantity, quantity } from '../quantity/index.ts';
import type { Range } from './ranges.ts';
import { isNumber, makersValue, measured, type Reading } from './reading.ts';
import { type UBoltTorque, uBoltTorque } from './u-bolts.ts';
import { type WheelNutTorque, wheelNutTorque } from './wheel-nuts.ts';

/** Wheel nuts of this job, lb-ft. */
export function wheelNutsOf(readings: readonly Reading[]): WheelNutTorque {
  const wheelType = measured(readings, { field: 'wheelType' })?.value;
  return wheelNutTorque({
    ...present('thread', measured(readings, { field: 'studThread' })?.value),
    ...present('wheelType', wheelType),
    ...present('wheelDiameter', wheelDiameterOf(readings)),
    ...present('maker', makersRange(readings, 'wheelNutTorque')),
  });
}

/** U-bolts of this job, lb-ft. */
export function uBoltsOf(readings: readonly Reading[]): UBoltTorque {
  return uBoltTorque({
    ...present('thread', measured(readings, { field: 'uBoltThread' })?.value),
    ...present('maker', makersRange(readings, 'uBoltTorque')),
  });
}

/** The maker's published value in the field's usual unit: both ends the same when one figure was given. */
export function makersRange(
  readings: readonly Reading[],
  field: FieldId,
): { readonly low: Quantity; readonly high: Quantity } | undefined {
  const given = makersValue(readings, field);
  const usual = fieldOf(field).unit;
  if (!given || usual === undefined || !isNumber(given.value)) return undefined;
  const unit = given.unit === undefined || given.unit === '1' ? usual : given.unit;
  const inUsual = (value: string) => convert(quantity(value, unit), usual);
  return { low: inUsual(given.value), high: inUsual(given.to ?? given.value) };
}

/** What a wrench may be off its setting: a twentieth either way (common practice, no source). */
const wrench = new Fraction(1, 20);

/** Limits of a field in this job: the maker's figure (a torque with what a wrench may be off), else what is published for its joints. */
export function limitsOf(field: FieldId, readings: readonly Reading[]): Range | undefined {
  const maker = makersRange(readings, field);
  if (maker) return makersLimits(field, maker);
  if (field === 'wheelNutTorque') return widest(wheelNutsOf(readings).ranges);
  return field === 'uBoltTorque' ? widest(uBoltsOf(readings).ranges) : undefined;
}

function makersLimits(field: FieldId, { low, high }: { readonly low: Quantity; readonly high: Quantity }): Range {
  const off = field.endsWith('Torque') ? wrench : new Fraction(0);
  const range = { low: low.value.mul(off.neg().add(1)), high: high.value.mul(off.add(1)), unit: low.unit };
  return { ...range, row: 'maker', source: "the part maker's value, as given" };
}

/** From the least that any document allows to the most. */
function widest(ranges: readonly Range[]): Range | undefined {
  const [least] = ranges.toSorted((one, other) => one.low.compare(other.low));
  const [most] = ranges.toSorted((one, other) => other.high.compare(one.high));
  return least && most && { ...least, high: most.high };
}

/** Inches: as measured, else the rim of the tyre's designation ("ST205/75R15"). */
export function wheelDiameterOf(readings: readonly Reading[]): string | undefined {
  const said = measured(readings, { field: 'wheelDiameter' })?.value;
  if (said !== undefined) return said;
  const tyre = measured(readings, { field: 'tyreSize' })?.value ?? '';
  return /(?:\d[RDB]|-)(\d{1,2}(?:\.5)?)(?!\d)/.exec(tyre)?.[1];
}

/** Studs of one wheel: as counted, else from the bolt pattern ("5x9/2"). */
export function studCountOf(readings: readonly Reading[]): number | undefined {
  const counted =
    measured(readings, { field: 'lugCount' })?.value ??
    /^(\d+)x/.exec(measured(readings, { field: 'boltPattern' })?.value ?? '')?.[1];
  return counted === undefined ? undefined : Number(counted);
}

/** Nominal drum of the brake size ("10x9/4" is 10). */
export function drumOf(readings: readonly Reading[]): string | undefined {
  return /^([\d./]+)x/.exec(measured(readings, { field: 'brakeSize' })?.value ?? '')?.[1];
}

function present<K extends string, V>(key: K, value: V | undefined): { [P in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { [P in K]?: V });
}
