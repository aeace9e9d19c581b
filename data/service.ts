// The tables of hanging, setting, torquing and proving. Numbers are exact, as text; every row names its source.
import alignmentLimitTable from './service/alignment-limits.json' with { type: 'json' };
import bearingAdjustmentTable from './service/bearing-adjustments.json' with { type: 'json' };
import bearingDamageTable from './service/bearing-damage.json' with { type: 'json' };
import boltGradeTable from './service/bolt-grades.json' with { type: 'json' };
import brakeMagnetTable from './service/brake-magnets.json' with { type: 'json' };
import drumLimitTable from './service/drum-limits.json' with { type: 'json' };
import endPlayLimitTable from './service/end-play-limits.json' with { type: 'json' };
import greaseGradeTable from './service/grease-grades.json' with { type: 'json' };
import greaseServiceTable from './service/grease-services.json' with { type: 'json' };
import greaseThickenerTable from './service/grease-thickeners.json' with { type: 'json' };
import hubHeatTable from './service/hub-heat.json' with { type: 'json' };
import practicesTable from './service/practices.json' with { type: 'json' };
import retorqueTable from './service/retorque.json' with { type: 'json' };
import serviceIntervalTable from './service/service-intervals.json' with { type: 'json' };
import threadConditionTable from './service/thread-conditions.json' with { type: 'json' };
import threadTable from './service/threads.json' with { type: 'json' };
import tighteningOrderTable from './service/tightening-orders.json' with { type: 'json' };
import uBoltTable from './service/u-bolts.json' with { type: 'json' };
import wheelNutTable from './service/wheel-nuts.json' with { type: 'json' };
import wireGaugeTable from './service/wire-gauges.json' with { type: 'json' };

interface Row {
  readonly id: string;
  readonly source: string;
}

/** Areas in square inches for inch threads, square millimetres for metric. */
export interface ThreadRow extends Row {
  readonly diameter: string;
  readonly unit: string;
  readonly tpi?: string;
  readonly pitch?: string;
  readonly area: string;
}
export const threads: readonly ThreadRow[] = threadTable.rows;

/** Strengths in ksi or MPa for nominal diameters over `over` up to and with `to`, in `unit`. */
export interface BoltGradeRow extends Row {
  readonly grade: string;
  readonly unit: string;
  readonly over: string;
  readonly to: string;
  readonly proof: string;
  readonly yield: string;
  readonly tensile: string;
  readonly strengthUnit: string;
}
export const boltGrades: readonly BoltGradeRow[] = boltGradeTable.rows;

/** Nut factor K by the state of the thread. */
export interface ThreadConditionRow extends Row {
  readonly said: readonly string[];
  readonly used: string;
  readonly low: string;
  readonly high: string;
}
export const threadConditions: readonly ThreadConditionRow[] = threadConditionTable.rows;

/** lb-ft, [low, high] for each stage; the last stage is the final. Absent stud, diameters or type: the document does not say. */
export interface WheelNutRow extends Row {
  readonly stud?: string;
  readonly wheelDiameters?: readonly string[];
  readonly wheelType?: string;
  readonly stages: readonly (readonly string[])[];
}
export const wheelNuts: readonly WheelNutRow[] = wheelNutTable.rows;

/** Holes numbered clockwise from the top. */
export interface TighteningOrderRow extends Row {
  readonly studs: number;
  readonly order: readonly number[];
}
export const tighteningOrders: readonly TighteningOrderRow[] = tighteningOrderTable.rows;

/** Highest torque, lb-ft; `least` is the low end of a quote from a weak source. */
export interface UBoltRow extends Row {
  readonly thread: string;
  readonly least?: string;
  readonly grade: string;
  readonly plated: string;
  readonly unplated: string;
}
export const uBolts: readonly UBoltRow[] = uBoltTable.rows;

/** Torques in lb-ft, turns as fractions of a turn. */
export interface BearingAdjustmentRow extends Row {
  readonly about: string;
  readonly lock: string;
  readonly seat?: string;
  readonly backOff?: readonly string[];
  readonly said: string;
}
export const bearingAdjustments: readonly BearingAdjustmentRow[] = bearingAdjustmentTable.rows;

/** Inches. */
export interface EndPlayLimitRow extends Row {
  readonly about: string;
  readonly min: string;
  readonly max: string;
  readonly use: string;
}
export const endPlayLimits: readonly EndPlayLimitRow[] = endPlayLimitTable.rows;

/** `iso`: class of ISO 15243; a sign that has yet to be looked into has none. */
export interface BearingDamageRow extends Row {
  readonly iso?: string;
  readonly term: string;
  readonly said: readonly string[];
  readonly reuse: string;
  readonly why: string;
}
export const bearingDamage: readonly BearingDamageRow[] = bearingDamageTable.rows;

/** `mixes` stands in the order of the rows: C compatible, B borderline, I not. */
export interface GreaseThickenerRow extends Row {
  readonly said: readonly string[];
  readonly mixes: readonly string[];
}
export const greaseThickeners: readonly GreaseThickenerRow[] = greaseThickenerTable.rows;

/** Worked penetration in tenths of a millimetre at 25 C. */
export interface GreaseGradeRow extends Row {
  readonly min: string;
  readonly max: string;
}
export const greaseGrades: readonly GreaseGradeRow[] = greaseGradeTable.rows;

export interface GreaseServiceRow extends Row {
  readonly about: string;
}
export const greaseServices: readonly GreaseServiceRow[] = greaseServiceTable.rows;

/** Ohm, by nominal drum diameter in inches. */
export interface BrakeMagnetRow extends Row {
  readonly drums: readonly string[];
  readonly low: string;
  readonly high: string;
}
export const brakeMagnets: readonly BrakeMagnetRow[] = brakeMagnetTable.rows;

export interface WireGaugeRow extends Row {
  readonly ohmPer1000ft: string;
}
export const wireGauges: readonly WireGaugeRow[] = wireGaugeTable.rows;

/** Inches. */
export interface AlignmentLimitRow extends Row {
  readonly of: string;
  readonly limit: string;
  readonly usual: boolean;
  readonly about: string;
}
export const alignmentLimits: readonly AlignmentLimitRow[] = alignmentLimitTable.rows;

export interface PracticeRow extends Row {
  readonly said: readonly string[];
  readonly say: string;
}
/** Patterns over a question's words, first row that fits wins. */
export const practices: readonly PracticeRow[] = practicesTable.rows;

export interface RetorqueRow extends Row {
  readonly of: string;
  readonly miles: readonly string[];
  readonly months?: string;
  readonly text: string;
}
export const retorque: readonly RetorqueRow[] = retorqueTable.rows;

export interface ServiceIntervalRow extends Row {
  /** `procedure/step`: any of them, done at every place of the trailer, is the service. */
  readonly steps: readonly string[];
  readonly text: string;
  readonly miles?: string;
  readonly months?: string;
  readonly usual: boolean;
}
export const serviceIntervals: readonly ServiceIntervalRow[] = serviceIntervalTable.rows;

/** Degrees Fahrenheit; `absolute` of one hub, `apart` between hubs of one axle. */
export interface HubHeatRow extends Row {
  readonly kind: string;
  readonly above: string;
  readonly act: string;
}
export const hubHeat: readonly HubHeatRow[] = hubHeatTable.rows;

/** Inches. */
export interface DrumLimitRow extends Row {
  readonly nominal: string;
  readonly max: string;
}
export const drumLimits: readonly DrumLimitRow[] = drumLimitTable.rows;
