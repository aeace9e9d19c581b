// "How will it sit?": another drop, the springs on the other side of the beam, and what full bump leaves.
import { numberOf, type Quantity, type Ride, readTrailer, rideOf, tableRules } from '#core';
import type { FieldId } from '#data';
import type { QuestionIntent } from '#intents';
import type { JobRecord } from '#log/events';
import type { Answerer, Know } from '../types.ts';
import { candidateOf, givenValues, readingsOf } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';

export const rideHeight: Answerer = (question, job, know) => {
  const trailer = readTrailer(readingsOf(job));
  const of = (field: FieldId) => numberOf(axleValues(question, job, know)[field] ?? '');
  const ride = rideOf(trailer, tableRules, { drop: of('drop'), beam: of('beamDiameter') });
  const about = aboutIn(question.words ?? '');
  const missing = ride.missing.filter((field) => wantedFor[about].includes(field));
  return tell(know, `rideHeight.${about}`, (voice) => linesOf(ride, about, missing, voice), {
    sources: ['geometry of beam, spring pack and seats', tableRules.bumpRoom.source],
    rests: ride.rests,
    missing,
    caution: 'Look at coupler height, brake lines and welds before it is towed so; the axle maker allows the seats, or does not.',
  });
};

/** The axle asked about: what the question says of it, else the one named or chosen. */
function axleValues(question: QuestionIntent, job: JobRecord, know: Know): Readonly<Partial<Record<FieldId, string>>> {
  return { ...candidateOf(question, job, know)?.values, ...givenValues(question) };
}

type About = 'swap' | 'bump' | 'drop';

function aboutIn(words: string): About {
  if (/flip|slung|sling|spring|swap/.test(words)) return 'swap';
  return /bump|hit|touch|room|frame/.test(words) ? 'bump' : 'drop';
}

const wantedFor: Readonly<Record<About, readonly FieldId[]>> = {
  swap: ['beamDiameter', 'springPack', 'slung'],
  bump: ['bumpClearance'],
  drop: ['drop'],
};

function linesOf(ride: Ride, about: About, missing: readonly FieldId[], voice: Voice) {
  const lines = {
    drop: dropLine(ride.byDrop, voice),
    swap: swapLine(ride, voice),
    bump: bumpLine(ride, voice),
    frame: frameLine(ride, voice),
  };
  const first = about === 'bump' ? [lines.bump, lines.frame] : [lines[about]];
  const rest = Object.values(lines).filter((line) => !first.includes(line));
  return { always: [...first, wanting(missing, voice)], more: rest };
}

const size = ({ value, unit }: Quantity): Quantity => ({ value: value.abs(), unit });

function dropLine(by: Quantity | undefined, voice: Voice): string | undefined {
  if (!by) return 'tell me the old drop and the new axle';
  if (by.value.equals(0)) return 'the same drop: it sits as it did';
  return `it sits ${voice.amount(size(by))} ${by.value.lt(0) ? 'lower' : 'higher'} by the drop`;
}

function swapLine({ bySwap, swap }: Ride, voice: Voice): string | undefined {
  if (!bySwap) return undefined;
  const by = voice.amount(bySwap);
  if (swap === undefined) return `springs moved from under the axle to over it raise it ${by}; the other way lowers it as much`;
  return swap === 'raises' ? `springs moved on top of the axle raise it ${by}` : `springs moved under the axle lower it ${by}`;
}

function bumpLine({ aboveTyre, aboveTyreAtBump }: Ride, voice: Voice): string | undefined {
  if (!aboveTyre || !aboveTyreAtBump) return undefined;
  return `above the tyre ${room(aboveTyre, voice)} at rest, ${room(aboveTyreAtBump, voice)} at full bump`;
}

function frameLine({ toFrame, toFrameAtBump }: Ride, voice: Voice): string | undefined {
  if (!toFrame || !toFrameAtBump) return undefined;
  return `axle to frame ${room(toFrame, voice)} at rest, ${room(toFrameAtBump, voice)} at full bump`;
}

const room = (left: Quantity, voice: Voice) => (left.value.lte(0) ? 'nothing' : voice.amount(left));
