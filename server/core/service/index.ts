// Service: procedures, torque, bearings, grease, alignment, brakes, intervals, sums. Codes and exact facts; the words are elsewhere.
export { judgeSpacing, type Spacing, type SpacingReadings } from './axle-spacing.ts';
export { type DamageNamed, type DamageUnknown, nameDamage } from './bearing-damage.ts';
export { type BreakawayCharge, breakawayCharge, breakawayRule } from './breakaway.ts';
export { type DrumVerdict, judgeDrum, judgeLining, liningLimit } from './drums.ts';
export { type EndPlayVerdict, judgeEndPlay, type LockChoice, lockChoices, usualEndPlay } from './end-play.ts';
export { type BadWrench, type WrenchSetting, wrenchSetting } from './extension.ts';
export {
  type Bolt,
  type BoltFault,
  type BoltTorque,
  boltStretch,
  boltTorque,
  clampFrom,
  gradeOf,
  proofLoad,
  threadOf,
  threadSized,
} from './fastener.ts';
export {
  cavityVolume,
  type GreaseMix,
  gradeByPenetration,
  gramsToFill,
  type HubHollow,
  mayMix,
  strokeRange,
  strokesFor,
  thickenersIn,
} from './grease.ts';
export { type HubHeat, type HubReading, judgeHubHeat } from './hub-heat.ts';
export { type DueService, nextServices, type PastJob } from './intervals.ts';
export { drumOf, makersRange, studCountOf, uBoltsOf, wheelDiameterOf, wheelNutsOf } from './joints.ts';
export { brakesOf, gravityOf, type HalvesVerdict, type Judgement, judgeReading, type TorqueVerdict } from './judge.ts';
export {
  type BrakeCurrent,
  brakeCurrent,
  type CurrentVerdict,
  judgeCurrent,
  judgeOhms,
  type MagnetOhms,
  magnetRows,
} from './magnets.ts';
export { addMonths } from './months.ts';
export { lockPositions, type Rotation, threadsPerInch, travelOf, turnsFor, turnsOf } from './nut-travel.ts';
export * from './procedures/index.ts';
export { commonRange, type Range, type Standing, standingOf } from './ranges.ts';
export {
  type AxleName,
  amountIn,
  isNumber,
  makersValue,
  measured,
  type Place,
  placeOf,
  type Reading,
  type SideName,
} from './reading.ts';
export { type RetorqueReminder, retorqueReminders } from './retorque.ts';
export { type NoOrder, type TighteningOrder, tighteningOrder, uBoltLegs } from './sequence.ts';
export {
  type Diagonals,
  type ImpossibleDiagonals,
  judgeSquareness,
  type Squareness,
  type SquaringMove,
  thrustAngle,
  usualLimit,
} from './squareness.ts';
export { type TorqueStage, thirds } from './stages.ts';
export { type Operand, type SumAsked, type SumResult, workOut } from './sums.ts';
export { degreesOver, judgeToe, type Toe, type ToeReadings } from './toe.ts';
export { type UBoltTorque, uBoltTorque } from './u-bolts.ts';
export { againstLimit, expanded, type LimitStanding, readingUncertainty } from './uncertainty.ts';
export { type Staging, type WheelNutTorque, wheelNutTorque } from './wheel-nuts.ts';
export { gaugeFor, throughWire, type UnknownGauge, type WireDrop, wireDrop } from './wire.ts';
