// "Is it wider than the old one": the axle told of, or the one already measured, beside what was found.
import { Fraction, isNumber } from '#core';
import { type FieldId, fieldOf } from '#data';
import type { JobRecord } from '#log/events';
import type { Answerer } from '../types.ts';
import { liveValues } from '../values.ts';
import { inUsual } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';

/** What the word compares, first row that fits; each with the words for more and for less. */
const compared: readonly {
  readonly words: RegExp;
  readonly fields: readonly FieldId[];
  readonly more: string;
  readonly less: string;
}[] = [
  { words: /strong|heav/, fields: ['capacity'], more: 'more', less: 'less' },
  { words: /./, fields: ['hubFace', 'springCentre'], more: 'wider', less: 'narrower' },
];

export const compare: Answerer = ({ words = '', of }, job, know) => {
  const row = compared.find((one) => one.words.test(words)) ?? { fields: [], more: 'more', less: 'less' };
  const fields = row.fields.some((field) => field === of) || of === undefined ? row.fields : [of as FieldId];
  const both = fields.flatMap((field) => {
    const [old, fresh] = [measuredOf(job, field, 'found'), measuredOf(job, field, 'fitted') ?? job.candidate?.values[field]];
    return old !== undefined && fresh !== undefined && isNumber(old) && isNumber(fresh) ? [{ field, old, fresh }] : [];
  });
  const missing = fields.filter((field) => measuredOf(job, field, 'found') === undefined);
  if (both.length === 0) return tell(know, 'compareUnknown', (voice) => ({ always: [lacking(missing, voice)] }), { missing });
  return tell(
    know,
    'compare',
    (voice) => ({
      always: both.map(({ field, old, fresh }) => {
        const unit = fieldOf(field).unit ?? '1';
        const by = new Fraction(fresh).sub(old);
        const much = voice.amount({ value: by.abs(), unit });
        const apart = by.equals(0) ? 'the same' : `${much} ${by.s > 0n ? row.more : row.less}`;
        return `${voice.field(field)}: ${apart}, ${voice.value(field, fresh, unit)} against ${voice.value(field, old, unit)}`;
      }),
    }),
    {
      rests: restsOn(
        job,
        both.map(({ field }) => field),
      ),
    },
  );
};

const lacking = (missing: readonly FieldId[], voice: Voice): string =>
  wanting(missing, voice) ?? 'which axle? Ask what fits, or measure the new one';

function measuredOf(job: JobRecord, field: FieldId, stage: 'found' | 'fitted'): string | undefined {
  const value = liveValues(job).findLast((one) => one.field === field && one.stage === stage && one.origin === undefined);
  return value && inUsual(value);
}

const restsOn = (job: JobRecord, fields: readonly FieldId[]): readonly string[] =>
  liveValues(job)
    .filter(({ field, origin }) => fields.includes(field) && origin === undefined)
    .map(({ id }) => id);
