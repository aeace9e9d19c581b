// Codes of the fitment core -> words. A code without words does not compile.
import {
  type CheckId,
  type FitResult,
  Fraction,
  numberOf,
  type ProblemCode,
  type Quantity,
  type RemedyId,
  type Row,
  type RowCode,
} from '#core';
import type { Voice } from './fitment-say.ts';

export const resultWords: Readonly<Record<FitResult, string>> = {
  fits: 'Fits',
  fitsWithWork: 'Fits with work',
  doesNotFit: 'Does not fit',
  cannotSayYet: 'Cannot say yet',
};

const isResult = (text: string): text is FitResult => text in resultWords;

/** A kept verdict in words; one that is in words already stays as it is. */
export const verdictWords = (verdict: string): string => (isResult(verdict) ? resultWords[verdict] : verdict);

export const checkNames: Readonly<Record<CheckId, string>> = {
  springCentre: 'spring centre',
  hubFace: 'hub face',
  tyreToSpring: 'tyre to spring',
  tyreToFrame: 'tyre to frame',
  tyreToFender: 'tyre to fender',
  tyreClearance: 'tyre clearance as measured',
  overallWidth: 'width over the tyres',
  beam: 'beam',
  beamShape: 'beam shape',
  seatWidth: 'spring seat width',
  drop: 'drop',
  bumpRoom: 'room above the tyre',
  boltPattern: 'bolt pattern',
  pilotBore: 'pilot bore',
  studThread: 'stud thread',
  brakes: 'brakes',
  brakeLaw: 'brake rule',
  brakeFlange: 'brake flange',
  brakeSize: 'brake size',
  capacity: 'capacity',
  tyreRating: 'tyres against the axle',
  tandemCapacity: 'capacity beside the other axle',
  tandemDrop: 'drop beside the other axle',
  springLength: 'spring length',
  springType: 'spring type',
  halves: 'halves of the hub face',
  camber: 'camber of the old axle',
  toe: 'toe of the old axle',
  frameRoom: 'axle to frame at full bump',
};

const magnitude = ({ value, unit }: Quantity): Quantity => ({ value: value.abs(), unit });

/** "72 3/8 in", or "its value" where the axle's card is silent. */
const measured = ({ field, measured: value }: Row, voice: Voice) =>
  value === undefined ? 'not known' : voice.value(field, value);
/** How far from the value it should meet, "1/8 in more"; empty where it is that value. */
function off({ needed, measured: text = '' }: Row, voice: Voice): string | undefined {
  const value = numberOf(text);
  if (!needed?.at || !value) return undefined;
  const difference = value.sub(needed.at.value);
  if (difference.equals(0)) return '';
  return `${voice.amount(magnitude({ value: difference, unit: needed.at.unit }))} ${difference.lt(0) ? 'less' : 'more'}`;
}

/** Inside a window about one value: the same, or how far off; inside a limit: what is to spare. */
function inside(row: Row, voice: Voice): string {
  const away = off(row, voice);
  if (away !== undefined) return away === '' ? 'the same' : `${away}, near enough`;
  return row.margin ? `${by(row, voice)} to spare` : 'inside';
}

const beyond = (row: Row, voice: Voice, words: string) => off(row, voice) ?? `${by(row, voice)} ${words}`;

/** Less drop lifts the trailer by as much, more lowers it. */
const sits = ({ check }: Row, way: string) => (check === 'drop' ? `: it sits that much ${way}` : '');

const by = ({ margin }: Row, voice: Voice) =>
  margin?.value.equals(0) ? 'nothing' : margin ? voice.amount(magnitude(margin)) : 'some';
const wanted = ({ field, needed }: Row, voice: Voice) =>
  needed?.same === undefined ? 'another' : voice.value(field, needed.same);
const lists = (row: Row, voice: Voice) => row.missing.map((field) => voice.field(field)).join(', ');
const unmeasured = (row: Row, voice: Voice) => lists(row, voice) || voice.field(row.field);

const found = ({ found: amount }: Row, voice: Voice) => (amount ? voice.amount(magnitude(amount)) : 'some');
const allowed = ({ needed }: Row, voice: Voice) => (needed?.high ? voice.amount(needed.high) : 'what is allowed');

export const statesDiffer = 'state and local rules may be stricter';
const percent = ({ found }: Row, voice: Voice) =>
  `${voice.amount({ value: found?.value.round(1) ?? new Fraction(0), unit: '1' })} percent`;

/** One short sentence for each way a check can come out, numbers first. The name of the check stands before it. */
export const rowWords: Readonly<Record<RowCode, (row: Row, voice: Voice) => string>> = {
  inside: (row, voice) => `${measured(row, voice)}, ${inside(row, voice)}`,
  tooSmall: (row, voice) => `${measured(row, voice)}, ${beyond(row, voice, 'too little')}`,
  tooBig: (row, voice) => `${measured(row, voice)}, ${beyond(row, voice, 'too much')}`,
  workSmall: (row, voice) => `${measured(row, voice)}, ${beyond(row, voice, 'under')}${sits(row, 'higher')}`,
  workBig: (row, voice) => `${measured(row, voice)}, ${beyond(row, voice, 'over')}${sits(row, 'lower')}`,
  tooCoarse: (row, voice) => `${measured(row, voice)}; the limit is not known closely enough. Tell me ${unmeasured(row, voice)}`,
  same: (row, voice) => `${measured(row, voice)}, the same`,
  different: (row, voice) => `${measured(row, voice)}, the trailer has ${wanted(row, voice)}`,
  trailerUnknown: (row, voice) => `not told: ${unmeasured(row, voice)}`,
  candidateUnknown: () => "not on this axle's card",
  unreadable: (row) => `the card says '${row.measured ?? ''}', which is no such value`,
  clearanceDecides: (row, voice) => `${measured(row, voice)}, not as the old one; the tyre's room decides`,
  clearanceUnknown: (row, voice) =>
    `${measured(row, voice)}, ${beyond(row, voice, 'off')} than the old one; tell me tyre size, wheel offset, spring width and fender width`,
  likeOld: (row, voice) => `${measured(row, voice)}, no less than the old axle; the load is not known`,
  belowOld: (row, voice) => `${measured(row, voice)}, enough for the load but less than the old axle`,
  braked: (row, voice) => `${measured(row, voice)}`,
  brakesLost: (row, voice) => `${measured(row, voice)} in place of ${wanted(row, voice)}: the brakes would be lost`,
  brakesAdded: (row, voice) => `${measured(row, voice)} in place of ${wanted(row, voice)}`,
  otherBrakes: (row, voice) => `${measured(row, voice)}, the trailer works ${wanted(row, voice)}`,
  lawWantsBrakes: () => `over 3,000 pounds gross the federal rule wants brakes on every wheel; ${statesDiffer}`,
  lawOverShare: (row, voice) =>
    `${percent(row, voice)} of the towing vehicle's axle weights, over the 40 percent of the federal rule: it wants brakes; ${statesDiffer}`,
  lawMayExempt: (row, voice) =>
    `no brakes only while the axle load is at most 40 percent of the towing vehicle's axle weights: tell me ${unmeasured(row, voice)}; ${statesDiffer}`,
  straight: (row, voice) => `${found(row, voice)}, straight within ${allowed(row, voice)}`,
  shifted: (row, voice) =>
    `the old beam stands ${found(row, voice)} to the ${row.found?.value.lt(0) ? 'right' : 'left'}: shifted on its springs, or bent`,
  leansIn: (row, voice) => `${found(row, voice)} in at the top, unloaded: the old beam or spindle is bent`,
  toed: (row, voice) => `${found(row, voice)} of toe, ${allowed(row, voice)} allowed: the old axle is bent`,
  lawExempts: (row, voice) =>
    `${percent(row, voice)} of the towing vehicle's axle weights, within the 40 percent of the federal rule: it may go without; ${statesDiffer}`,
};

export const remedyWords: Readonly<Record<RemedyId, string>> = {
  moveSeats: 'the seats moved by a qualified welder, as the axle maker allows',
  otherAxle: 'another axle',
  newSeats: 'seats, tie plates and U-bolts to suit the beam',
  slingSwap: 'a look at ride height, coupler and room above the tyre, or the springs on the other side of the beam',
  changeHubs: 'hubs with the right pattern on the same bearings, or other wheels',
  centringRing: 'wheels centred by their nuts, or a centring ring',
  otherNuts: 'wheel nuts for the new studs',
  brakedAxle: 'a braked axle',
  wireBrakes: 'wiring, breakaway and a controller for the brakes',
  convertBrakes: "brakes to suit the towing vehicle's actuator",
  askTheState: "a look at your state's rule before it goes on the road",
  newBackingPlates: 'brake assemblies to suit the flange',
  relabel: 'a lower axle rating goes on the label; the final stage maker or alterer decides that',
  strongerTyres: 'stronger tyres, or a lower rating on the label',
  matchPair: 'change both axles, or find the like',
  otherSprings: 'springs to suit the hangers',
  measureMore: 'what is missing measured',
  oldAxleBent: "hub face and spring centre taken from the springs' and wheels' places, not from a bent axle",
  readCard: "the axle maker's card or label",
};

export const problemWords: Readonly<Record<ProblemCode, string>> = {
  notANumber: 'not a number',
  wrongUnit: 'not in a unit of that kind',
  notPositive: 'must be more than nothing',
  outOfBand: 'far outside what is usual; measure it again or confirm it',
  notAChoice: 'none of the known kinds',
  unknownPattern: 'no bolt pattern; say the studs and the circle, five on four and a half',
  unknownTyre: 'no tyre size that can be read; say it as two oh five, seventy-five, fifteen',
  unknownBearing: 'no bearing on file; read the number again',
  hubFaceNotAboveSpringCentre: 'hub face must be wider than spring centre; measure both again',
  halvesDoNotAddUp: 'the two halves do not add up to the hub face; measure all three again',
  tongueBeyondReason: 'more of the weight than any coupling takes; weigh it again',
  weightAboveRating: 'more than the trailer is rated for',
};

/** "spring centre: 58 in, 1/8 in to spare". */
export const rowLine = (row: Row, voice: Voice): string =>
  `${voice.text(checkNames[row.check])}: ${voice.text(rowWords[row.code](row, voice))}`;
