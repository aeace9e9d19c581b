// Whatever is said, in whatever order: no wrong number gets in silently, and the log alone rebuilds the job.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldOf } from '#data';
import { foldAll, type JobRecord } from '#log/events';
import { say, sayAll, silent, type Talk, viewed } from '../support/dialogue.ts';

const number = fc.constantFrom(
  'fifteen',
  'fifty',
  'sixty',
  'sixteen',
  'seventy two',
  'fifty eight and a half',
  'three thousandths',
  'ninety',
  'thirteen',
);
const field = fc.constantFrom(
  'hub face',
  'spring centre',
  'left end play',
  'right end play',
  'left wheel nut torque',
  'tyre pressure left',
  'capacity',
  'beam',
);
const phrase = fc.oneof(
  { weight: 5, arbitrary: fc.tuple(field, number).map(([name, value]) => `${name} ${value}`) },
  { weight: 2, arbitrary: number },
  { weight: 2, arbitrary: number.map((value) => `no, ${value}`) },
  { weight: 2, arbitrary: fc.tuple(field, number).map(([name, value]) => `change ${name} to ${value}`) },
  {
    weight: 6,
    arbitrary: fc.constantFrom(
      ...[
        'yes',
        'no',
        'undo',
        'strike that',
        'next',
        'done',
        'go back one',
        'skip, no time',
        'mumble',
        'read it all back',
        'what fits',
      ],
      ...[
        'what is still open',
        'close the job',
        'close it anyway',
        'hold on a second',
        'resume',
        'say again',
        'left',
        'note the hanger is cracked',
        'help',
      ],
    ),
  },
);
const talks = fc.array(phrase, { minLength: 1, maxLength: 18 });
const closings = fc.array(fc.constantFrom('close the job', 'yes', 'close it anyway', 'no'), { minLength: 2, maxLength: 6 });
const opened = say(silent, 'new job, hub service on a single axle trailer');
const runs = { numRuns: 80 };

/** The talk after each utterance, the opening first. */
function steps(texts: readonly string[]): Talk[] {
  const all = [opened];
  for (const text of texts) all.push(say(all.at(-1) ?? opened, text));
  return all;
}

const kinds = (talk: Talk, from: Talk) => talk.events.slice(from.events.length).map(({ body }) => body);

const valueIn = (job: JobRecord | null, id: string) => job?.values.find((value) => value.id === id);

describe('any conversation', () => {
  it('confirms a value that waits for a yes only by a yes', () => {
    fc.assert(
      fc.property(talks, (texts) => {
        const all = steps(texts);
        for (const [i, after] of all.entries()) {
          const before = all[i - 1];
          if (!before) continue;
          for (const body of kinds(after, before)) {
            if (body.kind !== 'valueConfirmed') continue;
            const value = valueIn(before.job, body.id);
            const waits = value?.asked || fieldOf(value?.field ?? 'hubFace').risk === 'asked';
            if (waits) expect(body.how).toBe('said');
            if (waits) expect(before.job?.asked?.valueIds ?? [], texts.join(' / ')).toContain(body.id);
          }
        }
      }),
      runs,
    );
  });

  it('closes a job with points of safety open only by its own word, said to the list of them', () => {
    fc.assert(
      fc.property(talks, closings, (talk, end) => {
        const texts = [...talk, ...end];
        const all = steps(texts);
        for (const [i, after] of all.entries()) {
          const before = all[i - 1];
          if (!before?.job || !kinds(after, before).some(({ kind }) => kind === 'closed')) continue;
          expect(before.job.asked?.about).toBe('close');
          const safety = viewed(before.job).open.some((point) => point.safety);
          if (safety) expect(texts[i - 1]).toBe('close it anyway');
        }
      }),
      runs,
    );
  });

  it('counts no confirmed value that has no confirming event', () => {
    fc.assert(
      fc.property(talks, (texts) => {
        const { job, events } = sayAll(opened, texts);
        const confirmed = job?.values.filter(({ status }) => status === 'confirmed') ?? [];
        for (const { id } of confirmed) {
          expect(
            events.some(({ body }) => body.kind === 'valueConfirmed' && body.id === id),
            texts.join(' / '),
          ).toBe(true);
        }
      }),
      runs,
    );
  });

  it('is the same job when its events are played again', () => {
    fc.assert(
      fc.property(talks, (texts) => {
        const { job, events } = sayAll(opened, texts);
        expect(foldAll('1', events)).toEqual(job);
      }),
      runs,
    );
  });

  it('never changes a confirmed value without a new yes', () => {
    fc.assert(
      fc.property(talks, (texts) => {
        const all = steps(texts);
        for (const [i, after] of all.entries()) {
          const before = all[i - 1];
          for (const body of before ? kinds(after, before) : []) {
            if (body.kind !== 'valueCorrected' || valueIn(before?.job ?? null, body.id)?.status !== 'confirmed') continue;
            expect(before?.job?.asked?.valueIds ?? [], texts.join(' / ')).toContain(body.by);
            expect(valueIn(after.job, body.by)?.status).toBe('confirmed');
          }
        }
      }),
      runs,
    );
  });

  it('reads back at most three values at a time and puts no figure into the voice', () => {
    fc.assert(
      fc.property(talks, (texts) => {
        for (const { body } of sayAll(opened, texts).events) {
          if (body.kind !== 'replied') continue;
          expect(body.speak).not.toMatch(/\d/);
          expect((body.readBack ?? []).length, body.speak).toBeLessThanOrEqual(3);
        }
      }),
      runs,
    );
  });

  it('is as it was after an undo', () => {
    fc.assert(
      fc.property(talks, phrase, (texts, last) => {
        const before = sayAll(opened, texts);
        const after = say(before, last);
        const did = after.job?.trail.at(-1)?.turn !== before.job?.trail.at(-1)?.turn && last !== 'undo';
        if (!did) return;
        expect(essence(say(after, 'undo').job), [...texts, last, 'undo'].join(' / ')).toEqual(essence(before.job));
      }),
      runs,
    );
  });
});

/** What counts: values that stand, steps, open notes, where it is. */
function essence(job: JobRecord | null) {
  return {
    values: job?.values
      .filter(({ status }) => status === 'heard' || status === 'confirmed')
      .map(({ id, status }) => [id, status]),
    steps: job?.steps.map(({ step, status }) => [step, status]).sort(),
    step: job?.currentStep,
    status: job?.status,
    notes: job?.notes.filter(({ closed }) => closed === undefined).map(({ id }) => id),
    reminders: job?.reminders.filter(({ done }) => !done).map(({ id }) => id),
  };
}
