// What must be ordered for the job: each part, why, how many, and which measurement it rests on.
import { type BearingRow, bearings, type FieldId } from '#data';
import { Fraction, type Quantity } from '../../quantity/index.ts';
import { cupsFor, setsFor } from '../bearings/pairs.ts';
import { basisOf, noBasis } from '../need.ts';
import type { Basis, Candidate, Rules, Trailer } from '../types.ts';
import { ouncesOf, packVolume } from './grease.ts';
import { type UBoltSize, uBoltFor } from './u-bolt.ts';

export type PartId =
  | 'axle'
  | 'uBolts'
  | 'uBoltNuts'
  | 'tiePlates'
  | 'springBolts'
  | 'bushings'
  | 'innerBearing'
  | 'outerBearing'
  | 'seal'
  | 'dustCap'
  | 'keeper'
  | 'wheelNuts'
  | 'grease';

export type PartWhy =
  | 'theJob'
  | 'neverReused'
  | 'newBeam'
  | 'wornWithSprings'
  | 'setWithCone'
  | 'everyTime'
  | 'otherThread'
  | 'packed';

export interface PartLine extends Basis {
  readonly part: PartId;
  readonly why: PartWhy;
  /** Absent for what is measured out; see `amount`. */
  readonly quantity?: number;
  /** A number or a thread to order by, where the job tells it. */
  readonly what?: string;
  /** Whether `what` is measured or only what is often found. */
  readonly sure: boolean;
  readonly uBolt?: UBoltSize;
  /** Ounces by weight. */
  readonly amount?: Quantity;
  readonly source: string;
}

const practice = 'common practice, no source';

export interface BillQuestion {
  readonly trailer: Trailer;
  readonly rules: Rules;
  /** False for a hub and bearing service: springs and axle stay. */
  readonly axle: boolean;
  readonly candidate?: Candidate;
}

/** Parts for one axle. Lines whose size is not known name the fields that would tell it. */
export function billOfParts(question: BillQuestion): readonly PartLine[] {
  return [...(question.axle ? hanging(question) : []), ...hubs(question)];
}

function hanging({ trailer, rules, candidate }: BillQuestion): PartLine[] {
  const beam = candidate?.values.beamDiameter;
  const size = uBoltSize(trailer, rules, beam);
  const thread = trailer.tokens.get('uBoltThread')?.text;
  const bolts = basisOf(trailer, [
    ...(beam ? [] : (['beamDiameter'] as const)),
    'springPack',
    'tiePlateThickness',
    'uBoltThread',
  ]);
  const springs = basisOf(trailer, ['springType', 'springWidth']);
  const threaded = thread ? { what: thread } : {};
  const eyes = trailer.tokens.get('springType')?.text === 'slipper' ? 2 : 4;
  const lines: PartLine[] = [
    {
      part: 'uBolts',
      why: 'neverReused',
      quantity: 4,
      ...threaded,
      ...(size && { uBolt: size }),
      sure: size !== undefined,
      ...bolts,
      source: neverReused,
    },
    {
      part: 'uBoltNuts',
      why: 'neverReused',
      quantity: 8,
      ...threaded,
      sure: thread !== undefined,
      ...basisOf(trailer, ['uBoltThread']),
      source: neverReused,
    },
    { part: 'tiePlates', why: 'newBeam', quantity: 2, sure: size !== undefined, ...bolts, source: practice },
    {
      part: 'springBolts',
      why: 'wornWithSprings',
      quantity: eyes,
      sure: springs.missing.length === 0,
      ...springs,
      source: practice,
    },
    {
      part: 'bushings',
      why: 'wornWithSprings',
      quantity: eyes,
      sure: springs.missing.length === 0,
      ...springs,
      source: practice,
    },
  ];
  const axle: PartLine[] = candidate
    ? [{ part: 'axle', why: 'theJob', quantity: 1, what: candidate.title, sure: true, ...noBasis, source: practice }]
    : [];
  return [...axle, ...lines, ...wheelNuts(trailer, candidate)];
}

const neverReused = "spring shops' guides (lhrods.com, autoandtrucksprings.com): U-bolts are never used again";

function uBoltSize(trailer: Trailer, rules: Rules, given: string | undefined): UBoltSize | undefined {
  const of = (field: FieldId) => trailer.numbers.get(field)?.span.high ?? undefined;
  const beam = given === undefined ? of('beamDiameter') : new Fraction(given);
  const [springPack, plate] = [of('springPack'), of('tiePlateThickness')];
  if (!beam || !springPack || !plate) return undefined;
  const [seat, nut, showing] = [rules.springSeat.value, rules.uBoltNut.value, rules.threadShowing.value];
  return uBoltFor({ beam, seat, springPack, plate, nut, showing });
}

function wheelNuts(trailer: Trailer, candidate: Candidate | undefined): PartLine[] {
  const [old, next] = [trailer.tokens.get('studThread')?.text, candidate?.values.studThread];
  const studs = Number(candidate?.values.boltPattern?.split('x')[0] ?? 0);
  if (!next || !old || next === old || studs === 0) return [];
  const basis = basisOf(trailer, ['studThread']);
  return [
    {
      part: 'wheelNuts',
      why: 'otherThread',
      quantity: studs * 2,
      what: next,
      sure: true,
      ...basis,
      source: practice,
    },
  ];
}

function hubs({ trailer, candidate }: BillQuestion): PartLine[] {
  const set = hubSet(trailer, candidate);
  const [inner, outer] = [pairOf(set.inner), pairOf(set.outer)];
  const volume = inner && outer ? new Fraction(Math.ceil(ouncesOf(packVolume(inner, outer)) * 2)) : undefined;
  return [
    {
      part: 'innerBearing',
      why: 'setWithCone',
      quantity: 2,
      ...named(set.inner),
      sure: set.sure,
      ...basisOf(trailer, ['innerBearing']),
      source: matched,
    },
    {
      part: 'outerBearing',
      why: 'setWithCone',
      quantity: 2,
      ...named(set.outer),
      sure: set.sure,
      ...basisOf(trailer, ['outerBearing']),
      source: matched,
    },
    {
      part: 'seal',
      why: 'everyTime',
      quantity: 2,
      ...named(set.seal),
      sure: false,
      ...basisOf(trailer, ['seal', 'sealJournal']),
      source: practice,
    },
    { part: 'dustCap', why: 'everyTime', quantity: 2, sure: false, ...noBasis, source: practice },
    {
      part: 'keeper',
      why: 'everyTime',
      quantity: 2,
      ...named(trailer.tokens.get('nutLock')?.text),
      sure: false,
      ...noBasis,
      source: 'TM 9-2330-202-13&P: a new cotter pin each time',
    },
    {
      part: 'grease',
      why: 'packed',
      ...(volume && { amount: { value: volume, unit: '1' as const } }),
      sure: set.sure,
      ...noBasis,
      source: practice,
    },
  ];
}

const matched = 'TM 9-6115-464-12: cup and cone go in as a matched set';

interface KnownSet {
  readonly inner?: string;
  readonly outer?: string;
  readonly seal?: string;
  readonly sure: boolean;
}

/** Numbers read on the job or on the candidate's card; failing that, what is often found at this capacity. */
function hubSet(trailer: Trailer, candidate: Candidate | undefined): KnownSet {
  const read = (field: FieldId) => candidate?.values[field] ?? trailer.tokens.get(field)?.text;
  const [inner, outer, seal] = [read('innerBearing'), read('outerBearing'), read('seal')];
  const known = { ...(inner && { inner }), ...(outer && { outer }) };
  const capacity = candidate?.values.capacity ?? trailer.numbers.get('capacity')?.span.low?.toFraction();
  const usual = setsFor({ ...known, ...(capacity === undefined ? {} : { capacity: new Fraction(capacity) }) })[0];
  const [cone, other] = [inner ?? usual?.inner, outer ?? usual?.outer];
  const lip = seal ?? usual?.seal;
  return {
    ...(cone && { inner: cone }),
    ...(other && { outer: other }),
    ...(lip && { seal: lip }),
    sure: inner !== undefined && outer !== undefined,
  };
}

const named = (what: string | undefined): { readonly what?: string } => (what === undefined ? {} : { what });

/** The row of a pair or of a cone alone; a cone with several cups takes its first. */
function pairOf(text: string | undefined): BearingRow | undefined {
  if (text === undefined) return undefined;
  const id = text.includes('/') ? text : `${text}/${cupsFor(text)[0] ?? ''}`;
  return bearings.find((row) => row.id === id);
}
