// The trade tables, typed. Static imports: the same rows reach server, page and tests, with no I/O here.
import cautionTable from './cautions.json' with { type: 'json' };
import fieldTable from './fields.json' with { type: 'json' };
import glossaryTable from './glossary.json' with { type: 'json' };
import jobTable from './jobs.json' with { type: 'json' };
import mishearingTable from './mishearings.json' with { type: 'json' };
import policyTable from './policy.json' with { type: 'json' };
import alignment from './procedures/alignment.json' with { type: 'json' };
import brakeCheck from './procedures/brake-check.json' with { type: 'json' };
import fitAxle from './procedures/fit-axle.json' with { type: 'json' };
import handover from './procedures/handover.json' with { type: 'json' };
import hubBearing from './procedures/hub-bearing.json' with { type: 'json' };
import hubOff from './procedures/hub-off.json' with { type: 'json' };
import inspectMeasure from './procedures/inspect-measure.json' with { type: 'json' };
import makeSafe from './procedures/make-safe.json' with { type: 'json' };
import remove from './procedures/remove.json' with { type: 'json' };
import roadCheck from './procedures/road-check.json' with { type: 'json' };
import scheduledService from './procedures/scheduled-service.json' with { type: 'json' };
import wheelsOn from './procedures/wheels-on.json' with { type: 'json' };
import toldTable from './told.json' with { type: 'json' };
import type { Caution, JobKind, Policy, Procedure, Told } from './types.ts';
import unitTable from './units.json' with { type: 'json' };

export type FieldId =
  | 'hubFace'
  | 'springCentre'
  | 'beamDiameter'
  | 'drop'
  | 'overhang'
  | 'boltPattern'
  | 'pilotBore'
  | 'studThread'
  | 'capacity'
  | 'gvwr'
  | 'grossWeight'
  | 'tongueWeight'
  | 'springWidth'
  | 'springLength'
  | 'springLeaves'
  | 'springPack'
  | 'uBoltThread'
  | 'uBoltWidth'
  | 'uBoltLength'
  | 'uBoltDiameter'
  | 'innerBearing'
  | 'outerBearing'
  | 'innerCup'
  | 'outerCup'
  | 'bearing'
  | 'cup'
  | 'seal'
  | 'innerJournal'
  | 'outerJournal'
  | 'sealJournal'
  | 'journal'
  | 'spindleThread'
  | 'brakeFlange'
  | 'brakeSize'
  | 'drumDiameter'
  | 'drumLimit'
  | 'liningThickness'
  | 'runout'
  | 'tyreSize'
  | 'tyrePressure'
  | 'treadDepth'
  | 'wheelOffset'
  | 'backspacing'
  | 'wheelDiameter'
  | 'wheelWidth'
  | 'frameWidth'
  | 'fenderWidth'
  | 'tyreClearance'
  | 'bumpClearance'
  | 'axleToFrame'
  | 'frontArm'
  | 'rearArm'
  | 'overallWidth'
  | 'couplerDiagonal'
  | 'toeFront'
  | 'toeRear'
  | 'axleSpacing'
  | 'startAngle'
  | 'endPlay'
  | 'seatTorque'
  | 'wheelNutTorque'
  | 'uBoltTorque'
  | 'springBoltTorque'
  | 'lugCount'
  | 'tiePlateThickness'
  | 'axleLoad'
  | 'loadCentre'
  | 'axleDistance'
  | 'springCapacity'
  | 'hubCapacity'
  | 'wheelCapacity'
  | 'studSpacing'
  | 'studSkip'
  | 'studAcross'
  | 'halfFace'
  | 'camberTop'
  | 'camberBottom'
  | 'cupBore'
  | 'sealBore'
  | 'towWeight'
  | 'towRating'
  | 'loadRange'
  | 'loadIndex'
  | 'voltage'
  | 'magnetCurrent'
  | 'magnetResistance'
  | 'hubTemperature'
  | 'ambientTemperature'
  | 'odometer'
  | 'serial'
  | 'vin'
  | 'springType'
  | 'slung'
  | 'brakeType'
  | 'beamShape'
  | 'spindleLube'
  | 'nutLock'
  | 'wheelType'
  | 'axleCount'
  | 'axleInWork';

/** Units as written in a record. `1` is a bare count or a value whose unit was not said. */
export type UnitId =
  | 'in'
  | 'mm'
  | 'cm'
  | 'm'
  | 'ft'
  | 'lb'
  | 'kg'
  | 'lbf.ft'
  | 'lbf.in'
  | 'N.m'
  | 'psi'
  | 'kPa'
  | 'bar'
  | 'degF'
  | 'degC'
  | 'V'
  | 'A'
  | 'ohm'
  | 'mi'
  | 'km'
  | 'mph'
  | 'kmh'
  | 'deg'
  | 'mo'
  | '1';

/** One kind of value that a job can hold. Numbers are exact fractions written as strings, in `unit`. */
export interface Field {
  readonly id: FieldId;
  readonly label: string;
  readonly unit?: UnitId;
  readonly min?: string;
  readonly max?: string;
  /** What the tape or gauge resolves. */
  readonly step?: string;
  readonly choices?: readonly string[];
  readonly perSide: boolean;
  /** `asked`: waits for a yes before it counts. `plain`: read back, counts when nobody objects. */
  readonly risk: 'asked' | 'plain';
  /** Spoken names; the first is the one we speak. */
  readonly said: readonly string[];
  readonly source: string;
}

export const fields = fieldTable.rows as readonly Field[];
const byId = new Map(fields.map((field) => [field.id, field]));

/** The row of a field. @throws TypeError for an id that no row has. */
export function fieldOf(id: FieldId): Field {
  const field = byId.get(id);
  if (!field) throw new TypeError(`data/fields.json has no row '${id}'`);
  return field;
}

/** Size of a unit in the base of its dimension: base = value * factor + offset, exact. */
export interface UnitRow {
  readonly id: UnitId;
  readonly dimension: string;
  readonly factor: string;
  readonly offset?: string;
  readonly source: string;
}

export const units = unitTable.rows as readonly UnitRow[];

/** What is written for what was said. `where` limits a row to places where a number, or a field's name, can stand. */
export interface Mishearing {
  readonly heard: string;
  readonly meant: string;
  readonly where?: 'digit' | 'denominator' | 'part' | 'number' | 'joint' | 'field';
  /** Why the one becomes the other. */
  readonly reason: string;
  readonly source: string;
}

export const mishearings = mishearingTable.rows as readonly Mishearing[];

/** A trade word: how it is spoken, what it means, and the field it also names. */
export interface GlossaryRow {
  readonly id: string;
  readonly said: readonly string[];
  readonly means: string;
  readonly more?: string;
  readonly field?: FieldId;
  readonly source: string;
}

export * from './fitment.ts';
export * from './service.ts';
export type {
  Caution,
  Condition,
  JobKind,
  JobKindId,
  Policy,
  Procedure,
  ProcedureStep,
  RecordedValue,
  StockAxle,
  Told,
} from './types.ts';

/** Kinds of job, each an ordered list of procedure ids. */
export const jobKinds = jobTable.rows as readonly JobKind[];

/** The procedures that come with the tool; a shop's own are laid over them by id (`withShopProcedures` of #core). */
export const procedures = [
  makeSafe,
  inspectMeasure,
  remove,
  fitAxle,
  hubOff,
  hubBearing,
  brakeCheck,
  wheelsOn,
  alignment,
  roadCheck,
  scheduledService,
  handover,
] as readonly Procedure[];

/** Trade words, told short. */
export const glossary = glossaryTable.rows as readonly GlossaryRow[];

/** How steps are told as done. */
export const told = toldTable.rows as readonly Told[];

/** Cautions that steps and answers name by id. */
export const cautions = cautionTable.rows as readonly Caution[];
const cautionById = new Map(cautions.map((caution) => [caution.id, caution]));

/** The caution of an id. @throws TypeError for an id that no row has. */
export function cautionOf(id: string): Caution {
  const caution = cautionById.get(id);
  if (!caution) throw new TypeError(`data/cautions.json has no row '${id}'`);
  return caution;
}

/** What is read back, what is asked about, and when. */
export const policy = policyTable as Policy;
