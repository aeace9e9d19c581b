// What could be said now: examples for help and for repair, likeliest first.
import { type FieldId, fieldOf } from '#data';
import type { Asked, JobRecord } from '#log/events';
import { wanted } from './plan.ts';
import type { Shop } from './types.ts';
import { sayFieldOf, sayOnly, saySide } from './words.ts';

export function hintsFor(job: JobRecord, shop: Shop): readonly string[] {
  if (job.asked) return [...(job.asked.about === 'close' ? closing(job.asked) : answersTo(job.asked.about)), 'read it back'];
  if (job.status === 'paused') return ['resume'];
  if (job.status === 'closed') return ['new job'];
  const examples = wanted(job).flatMap(({ side, record: { field } }) => {
    const value = exampleOf(field, shop);
    return value ? [[side && saySide(side, shop), sayFieldOf(field, shop), value].filter(Boolean).join(' ')] : [];
  });
  return [...examples.slice(0, 1), 'does it fit', 'what is next', 'done'];
}

const closing = ({ choices = ['yes'] }: Asked): readonly string[] => [...choices, 'no'];

function answersTo(about: string): readonly string[] {
  if (about === 'reason') return ['the reason', 'no'];
  if (about === 'alternatives') return ['one of the two, digit by digit'];
  if (about === 'target') return ['which one'];
  if (about === 'told') return ['yes', 'not yet'];
  if (about === 'facts') return ['what I asked for', 'never mind'];
  return ['yes', 'no, and the right value'];
}

/** What is stamped on parts, one of each kind; a VIN or a serial number is nobody's example. */
const stamped: Readonly<Partial<Record<FieldId, string>>> = {
  boltPattern: '5x9/2',
  brakeSize: '10x9/4',
  tyreSize: 'ST205/75R15',
  studThread: '1/2-20',
  uBoltThread: '1/2-20',
  spindleThread: '1-14',
  innerBearing: 'L68149',
  outerBearing: 'L44649',
  innerCup: 'L68111',
  outerCup: 'L44610',
  bearing: 'L44649',
  cup: 'L44610',
  seal: '171255',
};

/** Something of the right shape: a choice, a number from the end of the field's band, or what is stamped on a part. */
function exampleOf(field: FieldId, shop: Shop): string | undefined {
  const { min, choices, unit } = fieldOf(field);
  const value = choices?.[0] ?? stamped[field] ?? min;
  return value === undefined ? undefined : sayOnly({ field, value, ...(unit ? { unit } : {}) }, shop);
}
