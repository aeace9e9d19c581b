// "What do I need to order?"
import { billOfParts, type PartId, type PartLine, type PartWhy, readTrailer, tableRules } from '#core';
import type { JobRecord } from '#log/events';
import type { Answerer, Know } from '../types.ts';
import { liveValues } from '../values.ts';
import { mannerOf, showNamed } from '../words.ts';
import { readingsOf } from './fitment-job.ts';
import { type Voice, voiceOf } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';

const partNames: Readonly<Record<PartId, string>> = {
  axle: 'axle',
  uBolts: 'U-bolts',
  uBoltNuts: 'U-bolt nuts and washers',
  tiePlates: 'tie plates',
  springBolts: 'spring-eye bolts with lock nuts',
  bushings: 'spring-eye bushings',
  innerBearing: 'inner bearings, cone and cup',
  outerBearing: 'outer bearings, cone and cup',
  seal: 'grease seals',
  dustCap: 'dust caps',
  keeper: 'spindle nut keepers or cotter pins',
  wheelNuts: 'wheel nuts',
  grease: 'wheel-bearing grease to pack both hubs',
};

const whyWords: Readonly<Record<PartWhy, string>> = {
  theJob: 'the job',
  neverReused: 'never used twice',
  newBeam: 'to suit beam and spring',
  wornWithSprings: 'look at the old ones; they wear',
  setWithCone: 'cone and cup as a set',
  everyTime: 'new each time the hub is off',
  otherThread: 'the new studs have another thread',
  packed: 'both bearings packed by hand',
};

export const parts: Answerer = (_question, job, know) => {
  const bill = billOf(job);
  const missing = [...new Set(bill.flatMap((line) => (line.sure ? [] : line.missing)))];
  const known = new Set(liveValues(job).map(({ id }) => id));
  return tell(know, 'parts', (voice) => linesOf(bill, missing, voice), {
    sources: [...new Set(bill.map(({ source }) => source))],
    rests: [...new Set(bill.flatMap(({ rests }) => rests))].filter((id) => known.has(id)),
    missing,
  });
};

function billOf(job: JobRecord): readonly PartLine[] {
  const trailer = readTrailer(readingsOf(job));
  const candidate = job.candidate && { id: job.candidate.stock, title: job.candidate.title, values: job.candidate.values };
  return billOfParts({ trailer, rules: tableRules, axle: job.kind === 'axleReplacement', ...(candidate && { candidate }) });
}

/** A line of the bill of parts as it is printed. `rests`: the measurements behind it, with their values. */
export interface BillRow {
  readonly part: string;
  readonly quantity: string;
  readonly what: string;
  readonly why: string;
  readonly rests: readonly string[];
  /** False where the size is not told, not confirmed, or only what is often found. */
  readonly sure: boolean;
  readonly source: string;
}

/** The bill of a job that takes parts; none where it only looks, or nothing is known yet. */
export function billRows(job: JobRecord, know: Know): readonly BillRow[] {
  const live = liveValues(job);
  if (job.kind === 'inspection' || (live.length === 0 && !job.candidate)) return [];
  const voice = voiceOf(mannerOf(know.shop), false);
  const named = (id: string) => live.filter((value) => value.id === id).map((value) => showNamed(value, know.shop));
  return billOf(job).map((line) => ({
    part: partNames[line.part],
    quantity: line.amount ? `${voice.amount(line.amount)} oz` : String(line.quantity ?? ''),
    what: sizes(line, voice).join('; '),
    why: whyWords[line.why],
    rests: [...line.rests.flatMap(named), ...(line.uBolt ? ofCard(job, know) : [])],
    sure: line.sure && line.unconfirmed.length === 0,
    source: line.source,
  }));
}

/** The beam of the axle chosen, which sets the width of its U-bolts. */
function ofCard({ candidate }: JobRecord, know: Know): string[] {
  const value = candidate?.values.beamDiameter;
  return value === undefined ? [] : [`${showNamed({ field: 'beamDiameter', value, unit: 'in' }, know.shop)} (the axle's card)`];
}

function linesOf(bill: readonly PartLine[], missing: Parameters<typeof wanting>[0], voice: Voice) {
  const first = bill.slice(0, 4).map((line) => short(line, voice));
  return {
    always: [`${voice.text(String(bill.length))} lines: ${first.join('; ')}`, wanting(missing, voice)],
    more: bill.map((line) => long(line, voice)),
  };
}

/** "4 U-bolts", "2 ounces of grease"; what is measured out and not known has no number. */
function short({ part, quantity, amount }: PartLine, voice: Voice): string {
  const count = quantity === undefined ? undefined : voice.text(String(quantity));
  return [amount ? `${voice.amount(amount)} ounces of` : count, partNames[part]].filter(Boolean).join(' ');
}

function long(line: PartLine, voice: Voice): string {
  const { why, unconfirmed } = line;
  const rest = [...sizes(line, voice), whyWords[why], unconfirmed.length > 0 ? 'not confirmed' : ''];
  return `${short(line, voice)}: ${rest.filter(Boolean).join('; ')}`;
}

/** What to order by, or what is not told of it. */
function sizes(line: PartLine, voice: Voice): string[] {
  const { what, sure, uBolt } = line;
  const size =
    uBolt && `${voice.amount(uBolt.insideWidth)} inside, leg ${voice.amount(uBolt.leg)}, order ${voice.amount(uBolt.order)}`;
  // A U-bolt's thread is read; what is not told of it is its size.
  const bolt = line.part === 'uBolts';
  const guess = what !== undefined && !sure && !bolt ? ' (often found; read the part)' : '';
  const ifUsual = line.amount && !sure ? 'if the bearings are those often found' : undefined;
  const unknown =
    (what === undefined || bolt) && !size && line.missing.length > 0
      ? `size not told: ${line.missing.map((field) => voice.field(field)).join(', ')}`
      : undefined;
  return [what && `${what}${guess}`, size, unknown, ifUsual].filter((text) => text !== undefined && text !== '').map(String);
}
