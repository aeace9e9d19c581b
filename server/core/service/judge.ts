// A value that a step asked for, judged against what the job's other values say it should be.
import { type FieldId, fieldOf } from '#data';
import { fromHalves } from '../fitment/geometry/beam.ts';
import { tableRules } from '../fitment/rules.ts';
import { Fraction, type Quantity } from '../quantity/index.ts';
import { judgeSpacing, type Spacing } from './axle-spacing.ts';
import { type DrumVerdict, judgeDrum, judgeLining } from './drums.ts';
import { type EndPlayVerdict, judgeEndPlay } from './end-play.ts';
import { type HubHeat, judgeHubHeat } from './hub-heat.ts';
import { drumOf, limitsOf, makersRange, uBoltsOf, wheelDiameterOf, wheelNutsOf } from './joints.ts';
import { brakeCurrent, type CurrentVerdict, judgeCurrent, judgeOhms, type MagnetOhms } from './magnets.ts';
import { axlesInWork } from './procedures/plan.ts';
import { type Range, type Standing, standingOf } from './ranges.ts';
import { amountIn, isNumber, measured, placeOf, type Reading } from './reading.ts';
import { type ImpossibleDiagonals, judgeSquareness, type Squareness } from './squareness.ts';
import { judgeToe, type Toe } from './toe.ts';

/** A measured torque held against the ranges for its joint. */
export interface TorqueVerdict {
  readonly code: 'torqueWithin' | 'torqueLow' | 'torqueHigh' | 'torqueDepends' | 'torqueUnjudged';
  readonly torque: Quantity;
  readonly field: FieldId;
  readonly ranges: readonly Range[];
  readonly byMaker: boolean;
}

/** Halves of a hub face, inches: how far the beam stands to the left of the middle, negative to the right. */
export interface HalvesVerdict {
  readonly code: 'halvesAlike' | 'halvesApart';
  readonly toLeft: Fraction;
}

/** What can be said of a value: the verdict of its own question. */
export type Judgement =
  | { readonly about: 'torque'; readonly verdict: TorqueVerdict }
  | { readonly about: 'endPlay'; readonly verdict: EndPlayVerdict }
  | { readonly about: 'square'; readonly verdict: Squareness | ImpossibleDiagonals }
  | { readonly about: 'spacing'; readonly verdict: Spacing }
  | { readonly about: 'halves'; readonly verdict: HalvesVerdict }
  | { readonly about: 'toe'; readonly verdict: Toe }
  | { readonly about: 'heat'; readonly verdict: HubHeat }
  | { readonly about: 'ohms'; readonly verdict: MagnetOhms }
  | { readonly about: 'current'; readonly verdict: CurrentVerdict }
  | { readonly about: 'drum'; readonly verdict: DrumVerdict }
  | { readonly about: 'lining'; readonly verdict: { readonly code: 'liningGood' | 'liningWorn'; readonly inches: Fraction } }
  | { readonly about: 'tread'; readonly verdict: { readonly code: 'treadGood' | 'treadWorn'; readonly inches: Fraction } };

type Judge = (value: Reading, readings: readonly Reading[]) => Judgement | undefined;

const judges: Readonly<Partial<Record<FieldId, Judge>>> = {
  wheelNutTorque: (value, readings) => torque(value, wheelNutsOf(readings), readings),
  uBoltTorque: (value, readings) => torque(value, uBoltsOf(readings), readings),
  endPlay: (value, readings) => ({
    about: 'endPlay',
    verdict: judgeEndPlay(amountIn(value, 'in').value, endPlayOfMaker(readings)),
  }),
  couplerDiagonal: (value, readings) => square(value, readings),
  axleSpacing: (value, readings) => spacing(value, readings),
  halfFace: (value, readings) => halves(value, readings),
  toeFront: (value, readings) => toe(value, readings),
  toeRear: (value, readings) => toe(value, readings),
  hubTemperature: (_value, readings) => heat(readings),
  ambientTemperature: (_value, readings) => heat(readings),
  magnetResistance: (value, readings) => ({ about: 'ohms', verdict: judgeOhms(amountIn(value, 'ohm').value, drumOf(readings)) }),
  magnetCurrent: (value, readings) => current(value, readings),
  drumDiameter: (value, readings) => drum(value, readings),
  drumLimit: (value, readings) => {
    const worn = measured(readings, { field: 'drumDiameter', ...placeOf(value) });
    return worn && drum(worn, readings);
  },
  liningThickness: (value) => ({ about: 'lining', verdict: judgeLining(amountIn(value, 'in').value) }),
  treadDepth: (value) => ({ about: 'tread', verdict: judgeTread(amountIn(value, 'in').value) }),
};

/** The verdict on one value of the job, or undefined where nothing can be said (no rule, or its other half is not measured yet). */
export function judgeReading(value: Reading, readings: readonly Reading[]): Judgement | undefined {
  const judge = judges[value.field];
  if (!judge || !isNumber(value.value) || value.origin === 'maker') return undefined;
  const judgements = endsOf(value).flatMap((end) => judge(end, readings) ?? []);
  return judgements.toSorted((one, other) => rank(other) - rank(one))[0];
}

/** Both ends of a range, and "just over five" as a little over five: the worst that it can be is what is judged. */
function endsOf(value: Reading): readonly Reading[] {
  const upper = value.to === undefined ? [] : [{ ...value, value: value.to }];
  return [nudged(value), ...upper];
}

function nudged(value: Reading): Reading {
  const { unit, step } = fieldOf(value.field);
  const way = value.hedge === 'over' ? 1 : value.hedge === 'under' ? -1 : 0;
  if (way === 0 || unit === undefined || step === undefined) return value;
  const amount = amountIn(value, unit).value.add(new Fraction(step).mul(way).div(2));
  return { ...value, value: amount.toFraction(), unit };
}

const rank = (judgement: Judgement): number => ['good', 'doubtful', 'bad'].indexOf(gravityOf(judgement));

const good: ReadonlySet<string> = new Set([
  ...[
    'torqueWithin',
    'torqueUnjudged',
    'endPlayWithin',
    'square',
    'parallel',
    'toeWithin',
    'halvesAlike',
    'hubsAlike',
    'hubAlone',
  ],
  ...['magnetGood', 'currentGood', 'drumWithin', 'drumLimitUnknown', 'liningGood', 'treadGood'],
]);
const doubtful: ReadonlySet<string> = new Set([
  'torqueDepends',
  'squareUnsure',
  'parallelUnsure',
  'toeUnsure',
  'halvesApart',
  'magnetDepends',
]);

/** `good` needs no word, `doubtful` is said, `bad` is out of limits and asked about before a step is done with it. */
export function gravityOf({ verdict: { code } }: Judgement): 'good' | 'doubtful' | 'bad' {
  if (good.has(code)) return 'good';
  return doubtful.has(code) ? 'doubtful' : 'bad';
}

/** Against the figure cast in that very drum where it was called out, else the listed limit. */
function drum(value: Reading, readings: readonly Reading[]): Judgement {
  const cast = measured(readings, { field: 'drumLimit', ...placeOf(value) });
  return { about: 'drum', verdict: judgeDrum(amountIn(value, 'in').value, cast && amountIn(cast, 'in').value) };
}

/** A torque against the documents for its joint, or the maker's figure with what a wrench may be off. */
function torque(
  value: Reading,
  joint: { readonly code: string; readonly ranges: readonly Range[] },
  readings: readonly Reading[],
): Judgement {
  const byMaker = joint.code === 'maker';
  const ours = byMaker ? limitsOf(value.field, readings) : undefined;
  const ranges = ours ? [ours] : joint.ranges;
  const amount = amountIn(value, fieldOf(value.field).unit ?? 'lbf.ft');
  const standing = standingOf(amount, ranges);
  return {
    about: 'torque',
    verdict: { code: standing ? torqueCodes[standing] : 'torqueUnjudged', torque: amount, field: value.field, ranges, byMaker },
  };
}

const torqueCodes: Readonly<Record<Standing, TorqueVerdict['code']>> = {
  within: 'torqueWithin',
  low: 'torqueLow',
  high: 'torqueHigh',
  depends: 'torqueDepends',
};

function endPlayOfMaker(readings: readonly Reading[]): { readonly low: Fraction; readonly high: Fraction } | undefined {
  const maker = makersRange(readings, 'endPlay');
  return maker && { low: maker.low.value, high: maker.high.value };
}

/** Left and right of one field at the value's own stage and axle, inches. */
function bothSides(
  value: Reading,
  readings: readonly Reading[],
): { readonly left: Fraction; readonly right: Fraction } | undefined {
  const at = (side: 'left' | 'right') =>
    measured(readings, { field: value.field, stage: value.stage, ...placeOf({ ...value, side }) });
  const [left, right] = [at('left'), at('right')];
  if (!left || !right || !isNumber(left.value) || !isNumber(right.value)) return undefined;
  return { left: amountIn(left, 'in').value, right: amountIn(right, 'in').value };
}

function square(value: Reading, readings: readonly Reading[]): Judgement | undefined {
  const sides = bothSides(value, readings);
  return sides && { about: 'square', verdict: judgeSquareness({ ...sides, ...spreads(readings) }) };
}

/** By the second of the two, whichever that is. An old beam may well be bent: it is said, and holds nothing up. */
function halves(value: Reading, readings: readonly Reading[]): Judgement | undefined {
  const sides = bothSides(value, readings);
  if (!sides) return undefined;
  const inch = (size: Fraction): Quantity => ({ value: size, unit: 'in' });
  const { toLeft, straight } = fromHalves(inch(sides.left), inch(sides.right), inch(tableRules.halvesApart.value));
  return { about: 'halves', verdict: { code: straight ? 'halvesAlike' : 'halvesApart', toLeft: toLeft.value } };
}

function spacing(value: Reading, readings: readonly Reading[]): Judgement | undefined {
  const sides = bothSides(value, readings);
  const { spread } = spreads(readings);
  return sides && { about: 'spacing', verdict: judgeSpacing({ ...sides, ...(spread ? { spread } : {}) }) };
}

/** The spindle ends are about as far apart as the hub faces; the springs as their centres. */
function spreads(readings: readonly Reading[]): { spread?: Fraction; at?: Fraction } {
  const inches = (field: FieldId) => {
    const reading = measured(readings, { field });
    return reading && isNumber(reading.value) ? amountIn(reading, 'in').value : undefined;
  };
  const [spread, at] = [inches('hubFace'), inches('springCentre')];
  return { ...(spread ? { spread } : {}), ...(at ? { at } : {}) };
}

function toe(value: Reading, readings: readonly Reading[]): Judgement | undefined {
  const { axle } = placeOf(value);
  const where = { stage: value.stage, ...(axle && { axle }) };
  const [front, rear] = [measured(readings, { field: 'toeFront', ...where }), measured(readings, { field: 'toeRear', ...where })];
  if (!front || !rear || !isNumber(front.value) || !isNumber(rear.value)) return undefined;
  const rim = wheelDiameterOf(readings);
  const diameter = rim !== undefined && isNumber(rim) ? { diameter: new Fraction(rim) } : {};
  return {
    about: 'toe',
    verdict: judgeToe({ front: amountIn(front, 'in').value, rear: amountIn(rear, 'in').value, ...diameter }),
  };
}

/** Hubs of every axle in work are compared: they ran the same road. */
function heat(readings: readonly Reading[]): Judgement | undefined {
  const hubs = axlesInWork(readings).flatMap((axle) =>
    (['left', 'right'] as const).flatMap((side) => {
      const reading = measured(readings, { field: 'hubTemperature', side, ...(axle && { axle }) });
      const hub = axle === undefined ? side : `${axle} ${side}`;
      return reading && isNumber(reading.value) ? [{ hub, temperature: amountIn(reading, 'degF').value }] : [];
    }),
  );
  const air = measured(readings, { field: 'ambientTemperature' });
  const verdict = judgeHubHeat(hubs, air && isNumber(air.value) ? amountIn(air, 'degF').value : undefined);
  return verdict && { about: 'heat', verdict };
}

/** One magnet where a side was said, else all of the trailer; a full battery is reckoned at twelve and a half volts where none was measured (common practice, no source). */
function current(value: Reading, readings: readonly Reading[]): Judgement {
  const read = measured(readings, { field: 'voltage' });
  const volts = read && isNumber(read.value) ? amountIn(read, 'V').value : new Fraction('12.5');
  const brakes = value.side === 'left' || value.side === 'right' ? 1 : brakesOf(readings);
  return { about: 'current', verdict: judgeCurrent(amountIn(value, 'A').value, brakeCurrent(brakes, volts, drumOf(readings))) };
}

/** Every axle of the trailer is taken as braked. */
export function brakesOf(readings: readonly Reading[]): number {
  return { tandem: 4, triple: 6 }[measured(readings, { field: 'axleCount' })?.value ?? ''] ?? 2;
}

/** Two thirty-seconds is the least a trailer tyre may have (49 CFR 393.75(c)). */
const treadLimit = new Fraction(1, 16);

function judgeTread(inches: Fraction): { readonly code: 'treadGood' | 'treadWorn'; readonly inches: Fraction } {
  return { code: inches.compare(treadLimit) < 0 ? 'treadWorn' : 'treadGood', inches };
}
