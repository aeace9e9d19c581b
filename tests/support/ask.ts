// A question through the parser to its answerer, on a job made of values.
import type { FieldId } from '#data';
import { understand } from '#intents';
import { emptyJob, type JobRecord, type ValueRecord } from '#log/events';
import { answerers } from '../../server/dialogue/answers/index.ts';
import type { Know } from '../../server/dialogue/types.ts';

const now = '2026-11-25T10:00:00Z';

export const bay: Know = {
  shop: { name: 'Bay', lengthUnit: 'in', spelling: 'british', sides: { left: 'left', right: 'right' } },
  stock: [],
  jobs: [],
  readNote: () => ({ seriousness: 'info' }),
};

/** A confirmed value as found; its id is its field. */
export const noted = (field: FieldId, value: string, more: Partial<ValueRecord> = {}): ValueRecord => ({
  id: field,
  field,
  value,
  stage: 'found',
  raw: value,
  heardBy: 'typed',
  status: 'confirmed',
  at: now,
  who: 'bay',
  turn: 't',
  notes: [],
  ...more,
});

/** A job by field; where a value has a unit or is only heard, hand in the records. */
export function jobOf(
  values: Partial<Record<FieldId, string>> | readonly ValueRecord[] = {},
  more: Partial<JobRecord> = {},
): JobRecord {
  const records = Array.isArray(values)
    ? (values as readonly ValueRecord[])
    : Object.entries(values as Record<FieldId, string>).map(([field, value]) => noted(field as FieldId, value));
  return { ...emptyJob('j'), values: records, ...more };
}

export function ask(text: string, job: JobRecord = jobOf(), know: Know = bay) {
  const intent = understand(text).intents.find((one) => one.kind === 'question');
  if (intent?.kind !== 'question') throw new TypeError(`not read as a question: ${text}`);
  const answerer = answerers[intent.topic];
  if (!answerer) throw new TypeError(`nobody answers ${intent.topic}`);
  return answerer(intent, job, know, now);
}
