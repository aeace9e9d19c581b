export { numberOf } from './number.ts';
export { type Ranking, rank } from './rank.ts';
export { readTrailer } from './readings.ts';
export { rulesOf, tableRules } from './rules.ts';
export type * from './types.ts';
export { parseTyre, type TyreSize, type TyreUse } from './tyres/designation.ts';
export { judge, type Needs, needsOf, verdictOf } from './verdict.ts';
