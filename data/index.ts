// The trade tables, typed. Static imports: the same rows reach server, page and tests, with no I/O here.
import fieldTable from './fields.json' with { type: 'json' };
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
  | 'axleCount';

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

export type {
  Caution,
  Condition,
  JobKind,
  JobKindId,
  Procedure,
  ProcedureStep,
  RecordedValue,
  StockAxle,
} from './types.ts';
