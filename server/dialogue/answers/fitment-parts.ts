// "What do I need to order?"
import { billOfParts, type PartId, type PartLine, type PartWhy, readTrailer, tableRules } from '#core';
import type { Answerer } from '../types.ts';
import { liveValues } from '../values.ts';
import { readingsOf } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
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
  const trailer = readTrailer(readingsOf(job));
  const candidate = job.candidate && { id: job.candidate.stock, title: job.candidate.title, values: job.candidate.values };
  const bill = billOfParts({ trailer, rules: tableRules, axle: job.kind === 'axleReplacement', ...(candidate && { candidate }) });
  const missing = [...new Set(bill.flatMap((line) => (line.sure ? [] : line.missing)))];
  const known = new Set(liveValues(job).map(({ id }) => id));
  return tell(know, 'parts', (voice) => linesOf(bill, missing, voice), {
    sources: [...new Set(bill.map(({ source }) => source))],
    rests: [...new Set(bill.flatMap(({ rests }) => rests))].filter((id) => known.has(id)),
    missing,
  });
};

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
  const { what, sure, uBolt, why, unconfirmed } = line;
  const size =
    uBolt && `${voice.amount(uBolt.insideWidth)} inside, leg ${voice.amount(uBolt.leg)}, order ${voice.amount(uBolt.order)}`;
  const guess = what !== undefined && !sure ? ' (often found; read the part)' : '';
  const ifUsual = line.amount && !sure ? 'if the bearings are those often found' : undefined;
  const unknown =
    what === undefined && !size && line.missing.length > 0
      ? `size not told: ${line.missing.map((field) => voice.field(field)).join(', ')}`
      : undefined;
  const rest = [
    what && `${what}${guess}`,
    size,
    unknown,
    ifUsual,
    whyWords[why],
    unconfirmed.length > 0 ? 'not confirmed' : undefined,
  ];
  return `${short(line, voice)}: ${rest.filter(Boolean).join('; ')}`;
}
