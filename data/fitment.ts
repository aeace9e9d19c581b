import stockTable from './demo/stock.json' with { type: 'json' };
import bearingTable from './fitment/bearings.json' with { type: 'json' };
import patternTable from './fitment/bolt-patterns.json' with { type: 'json' };
import hubSetTable from './fitment/hub-sets.json' with { type: 'json' };
import letterTable from './fitment/letter-tyres.json' with { type: 'json' };
import loadIndexTable from './fitment/load-index.json' with { type: 'json' };
import ruleTable from './fitment/rules.json' with { type: 'json' };
import sealTable from './fitment/seals.json' with { type: 'json' };
import speedTable from './fitment/speed-symbols.json' with { type: 'json' };
import tyreLoadTable from './fitment/tyre-loads.json' with { type: 'json' };
import tyreSizeTable from './fitment/tyre-sizes.json' with { type: 'json' };
import type { UnitId } from './index.ts';
import type { StockAxle } from './types.ts';

/** The invented rack of the demo's invented shop. */
export const demoStock = stockTable.rows as readonly StockAxle[];

export type FitRuleId =
  | 'springCentreTolerance'
  | 'springCentreWork'
  | 'hubFaceTolerance'
  | 'beamTolerance'
  | 'dropTolerance'
  | 'tyreToSpring'
  | 'tyreToFrame'
  | 'tyreToFender'
  | 'bumpRoom'
  | 'halvesApart'
  | 'halvesSum'
  | 'camberIn'
  | 'toeAllowed'
  | 'rimLips'
  | 'pilotSlack'
  | 'circleTolerance'
  | 'springSeat'
  | 'uBoltNut'
  | 'threadShowing'
  | 'legalWidth'
  | 'brakeExemptGross'
  | 'brakeExemptShare'
  | 'tongueLeast'
  | 'tongueMost'
  | 'tongueUpper';

/** A tolerance or a limit of the fit verdict: exact `value` in `unit`. */
export interface FitRule {
  readonly id: FitRuleId;
  readonly value: string;
  readonly unit: UnitId;
  readonly about: string;
  readonly source: string;
}

export const fitRules = ruleTable.rows as readonly FitRule[];

interface Sourced {
  readonly id: string;
  readonly source: string;
}

/** Most that a tyre of an index carries, kg. */
export interface LoadIndexRow extends Sourced {
  readonly index: number;
  readonly kg: string;
}

export interface SpeedSymbolRow extends Sourced {
  readonly kmh: string;
}

/** Overall diameter, in, of a size (`id`) that does not say it. */
export interface TyreSizeRow extends Sourced {
  readonly overall: string;
}

export interface LetterTyreRow extends Sourced {
  readonly metric: string;
}

/** What a size and load range carry, lb, at its pressure, psi. */
export interface TyreLoadRow extends Sourced {
  readonly size: string;
  readonly loadRange: string;
  readonly load: string;
  readonly pressure: string;
}

export interface BoltPatternRow extends Sourced {
  readonly studs: number;
  readonly circle: string;
  readonly unit: UnitId;
}

/** A cone and a cup that run together; inches, and the bore and outside as printed in mm. */
export interface BearingRow extends Sourced {
  readonly cone: string;
  readonly cup: string;
  readonly bore: string;
  readonly od: string;
  readonly coneWidth: string;
  readonly cupWidth: string;
  readonly width: string;
  readonly boreMm: string;
  readonly odMm: string;
}

/** By the journal it runs on and the bore it is pressed into, in. */
export interface SealRow extends Sourced {
  readonly inside: string;
  readonly outside: string;
}

/** Often found together on an axle of this capacity, lb; `inner` and `outer` are rows of the bearings. */
export interface HubSetRow extends Sourced {
  readonly capacity: string;
  readonly spindle: string;
  readonly inner: string;
  readonly outer: string;
  readonly seal?: string;
}

export const loadIndices: readonly LoadIndexRow[] = loadIndexTable.rows;
export const speedSymbols: readonly SpeedSymbolRow[] = speedTable.rows;
export const tyreSizes: readonly TyreSizeRow[] = tyreSizeTable.rows;
export const letterTyres: readonly LetterTyreRow[] = letterTable.rows;
export const tyreLoads: readonly TyreLoadRow[] = tyreLoadTable.rows;
export const boltPatterns = patternTable.rows as readonly BoltPatternRow[];
export const bearings: readonly BearingRow[] = bearingTable.rows;
export const seals: readonly SealRow[] = sealTable.rows;
export const hubSets = hubSetTable.rows as readonly HubSetRow[];
