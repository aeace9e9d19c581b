// Does it fit, does it carry, is it lawful, what goes with it. Lengths in inches, weights in pounds, exact unless a name ends in its unit.

/** Which bearing: by stamped characters ("?" = worn away, one wrong character tolerated) or by measured sizes in inches. */
export {
  asStamped,
  type BearingMatch,
  type BearingPart,
  type BearingSize,
  identifyByNumber,
  identifyBySize,
  numbersOf,
} from './bearings/identify.ts';
/** Cone with cup, sets of a spindle, same-size pairs, seals by journal and bore. Sources in data/fitment. */
export { conesFor, cupsFor, interchange, type Pairing, pairing, sealsFor, setsFor } from './bearings/pairs.ts';
/** 49 CFR 393.42(b) and 393.48(d); state and local rules may be stricter. */
export { type BrakeLaw, type BrakeQuestion, brakeLawFor, brakesRequired, surgeBrakesAllowed } from './brake-rule.ts';
/** Half measurements of a beam and camber by a plumb line. */
export { camberDegrees, fromHalves, type Halves, toeIn } from './geometry/beam.ts';
/** Bolt pattern from one hole-to-hole measurement; in floating point, for the sine. */
export {
  chordOf,
  circleOf,
  type HoleMeasure,
  identifyPattern,
  type PatternAnswer,
  type PatternMatch,
} from './geometry/bolt-circle.ts';
/** Room of the tyres at a hub face, and the hub faces that would work. */
export { type Clearances, clearancesAt, type HubFaceRange, hubFaceRange } from './geometry/clearance.ts';
/** What halves, camber and toe say of the axle that is there. */
export { type Camber, type Straight, type Straightness, straightness } from './geometry/straight.ts';
/** Pounds on one axle, as a span where not all weights are known. */
export { type AxleLoad, axleLoad, grossOf } from './load.ts';
/** Axles that work would make fit, and the work. */
export { type Making, making, nearest } from './nearest.ts';
export { numberOf } from './number.ts';
/** Parts for the job, with why, how many and what each rests on. */
export { type BillQuestion, billOfParts, type PartId, type PartLine, type PartWhy } from './parts/bill.ts';
export { fillVolume, ouncesOf, packVolume } from './parts/grease.ts';
export { type UBoltSize, type UBoltStack, uBoltFor } from './parts/u-bolt.ts';
/** "5x9/2", "5x114.3 mm" -> studs and circle in inches. */
export { type Pattern, parsePattern } from './pattern.ts';
/** A rack of any size, best first. */
export { type Ranking, rank } from './rank.ts';
/** Readings laid out by field; what cannot be used is named. */
export { readTrailer } from './readings.ts';
/** How the trailer will sit with another drop or with the springs swapped. */
export { type Ride, type RideQuestion, rideOf } from './ride.ts';
export { rulesOf, tableRules } from './rules.ts';
/** Which measurement to take again before ordering. */
export { sensitivity, type Touchy } from './sensitivity.ts';
export type { Span } from './span.ts';
/** Axle and tongue load by moments about the coupler, exact. */
export { axleForShare, type Balance, balance, centreOf, fromTongue, movedForward, tandemShare } from './statics.ts';
/** Rows of a stock list: one text record -> an axle or a named fault, and back. */
export { isFault, type RowFault, readStockRow, type StockFault, stockColumns, writeStockRow } from './stock-row.ts';
export type * from './types.ts';
export { parseTyre, type TyreSize, type TyreUse } from './tyres/designation.ts';
/** Loads by index or load range; the 1.10 division and the sum rule of 49 CFR 571.120 S5.1.2. */
export { loadOfIndex, loadsOf, speedOf, type TyreLoad, tyreLoad, tyreOn, tyresAgainstRating } from './tyres/load.ts';
/** Sizes of a tyre in inches, and what another would change. */
export { axleRpm, compareTyres, type TyreChange, type TyreFigures, turnsPerMile, tyreFigures } from './tyres/size.ts';
/** The verdict on one axle, check by check. */
export { judge, type Needs, needsOf, verdictOf } from './verdict.ts';
/** The weakest part of the running gear against the load. */
export { type Carrying, type CarryingPart, carrying, type Link, type TongueCode, type TongueShare } from './weakest.ts';
