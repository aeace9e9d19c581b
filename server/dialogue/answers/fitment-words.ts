// Codes of the fitment core -> words. A code without words does not compile.
import {
  type CheckId,
  type FitResult,
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

export const isResult = (text: string): text is FitResult => text in resultWords;

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

const by = ({ margin }: Row, voice: Voice) =>
  margin?.value.equals(0) ? 'nothing' : margin ? voice.amount(magnitude(margin)) : 'some';
const wanted = ({ field, needed }: Row, voice: Voice) =>
  needed?.same === undefined ? 'another' : voice.value(field, needed.same);
const lists = (row: Row, voice: Voice) => row.missing.map((field) => voice.field(field)).join(', ');
const unmeasured = (row: Row, voice: Voice) => lists(row, voice) || voice.field(row.field);

/** One short sentence for each way a check can come out, numbers first. The name of the check stands before it. */
export const rowWords: Readonly<Record<RowCode, (row: Row, voice: Voice) => string>> = {
  inside: (row, voice) => `${measured(row, voice)}, ${inside(row, voice)}`,
  tooSmall: (row, voice) => `${measured(row, voice)}, ${beyond(row, voice, 'too little')}`,
  tooBig: (row, voice) => `${measured(row, voice)}, ${beyond(row, voice, 'too much')}`,
  workSmall: (row, voice) => `${measured(row, voice)}, ${beyond(row, voice, 'under')}`,
  workBig: (row, voice) => `${measured(row, voice)}, ${beyond(row, voice, 'over')}`,
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
  lawWantsBrakes: () => 'over 3,000 pounds gross the federal rule wants brakes on every wheel; state rules may be stricter',
  lawMayExempt: () =>
    "no brakes only while the axle load is at most 40 percent of the towing vehicle's axle weights; state rules may be stricter",
};

export const remedyWords: Readonly<Record<RemedyId, string>> = {
  moveSeats: 'the seats moved by a qualified welder, as the axle maker allows',
  otherAxle: 'another axle',
  newSeats: 'seats, tie plates and U-bolts to suit the beam',
  slingSwap: 'ride height, coupler and room above the tyre looked at; the springs may go on the other side of the beam',
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
  tongueBeyondReason: 'more of the weight than any coupling takes; weigh it again',
  weightAboveRating: 'more than the trailer is rated for',
};

/** "spring centre: 58 in, 1/8 in to spare". */
export const rowLine = (row: Row, voice: Voice): string =>
  `${voice.text(checkNames[row.check])}: ${voice.text(rowWords[row.code](row, voice))}`;
