// What could be said now: examples for help and for repair, likeliest first.
import { fieldOf } from '#data';
import type { Asked, JobRecord } from '#log/events';
import { wanted } from './plan.ts';
import type { Shop } from './types.ts';
import { sayFieldOf, sayOnly, saySide } from './words.ts';

export function hintsFor(job: JobRecord, shop: Shop): readonly string[] {
  if (job.asked) return [...(job.asked.about === 'close' ? closing(job.asked) : answersTo(job.asked.about)), 'read it back'];
  if (job.status === 'paused') return ['resume'];
  if (job.status === 'closed') return ['new job'];
  const slot = wanted(job)[0];
  const example = slot
    ? [
        [slot.side && saySide(slot.side, shop), sayFieldOf(slot.record.field, shop), exampleOf(slot.record.field, shop)]
          .filter(Boolean)
          .join(' '),
      ]
    : [];
  return [...example, 'does it fit', 'what is next', 'done'].slice(0, 4);
}

const closing = ({ choices = ['yes'] }: Asked): readonly string[] => [...choices, 'no'];

function answersTo(about: string): readonly string[] {
  if (about === 'reason') return ['the reason', 'no'];
  if (about === 'alternatives') return ['one of the two, digit by digit'];
  if (about === 'target') return ['which one'];
  if (about === 'facts') return ['what I asked for', 'never mind'];
  return ['yes', 'no, and the right value'];
}

/** Something of the right shape, from the middle of the field's band. */
function exampleOf(field: Parameters<typeof fieldOf>[0], shop: Shop): string {
  const { min, choices, unit } = fieldOf(field);
  if (choices) return sayOnly({ field, value: choices[0] ?? '' }, shop);
  return min === undefined ? 'and the number' : sayOnly({ field, value: min, ...(unit ? { unit } : {}) }, shop);
}
