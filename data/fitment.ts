import stockTable from './demo/stock.json' with { type: 'json' };
import ruleTable from './fit-rules.json' with { type: 'json' };
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
  | 'rimLips'
  | 'pilotSlack'
  | 'circleTolerance'
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
