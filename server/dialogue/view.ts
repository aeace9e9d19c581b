// The job as the page shows it.
import { oncePer, slotsOf } from '#core';
import { cautionOf, type FieldId } from '#data';
import type { JobRecord, ValueRecord } from '#log/events';
import { verdictWords } from './answers/fitment-words.ts';
import { alignmentToDraw, sequenceToDraw } from './answers/service.ts';
import { expectsOf } from './expects.ts';
import { openPoints } from './open.ts';
import { asSlot, inShop, openStepAfter, type PlannedStep, planOf, stepAt } from './plan.ts';
import type { CardRow, JobView, Know, SequenceView, Shop, StepView } from './types.ts';
import { liveValues, sameSlot, valueIn } from './values.ts';
import { byDigits } from './wording/values.ts';
import { sayOnly, saySide, showFieldOf, showOnly } from './words.ts';

export function view(record: JobRecord, know: Know): JobView {
  const job = inShop(record, know);
  const { shop } = know;
  const step = stepAt(job) ?? openStepAfter(job, undefined);
  return {
    id: job.id,
    version: job.version,
    title: job.title,
    kind: job.kind,
    status: job.status,
    invented: job.invented,
    ...(step ? { step: stepView(job, step, shop) } : {}),
    card: cardOf(job, shop),
    open: openPoints(job, shop),
    ...(job.asked ? { question: job.asked.question } : {}),
    ...choicesOf(job, shop),
    ...(job.lastReply ? { said: job.lastReply.show } : {}),
    ...(job.candidate ? { candidate: { title: job.candidate.title, values: job.candidate.values } } : {}),
    ...(job.verdict ? { verdict: verdictOf(job.verdict, job.candidate?.title) } : {}),
    ...drawn(job, step, know),
  };
}

function verdictOf({ verdict, accepted }: NonNullable<JobRecord['verdict']>, title: string | undefined): string {
  const about = title === undefined ? '' : `: ${title}`;
  return `${verdictWords(verdict)}${about}${accepted ? '' : ' (not taken)'}`;
}

type Drawn = SequenceView['what'] | 'alignment';

/** What there is to draw while the last turn, or else the step on the screen, tightens or squares something. */
function drawn(job: JobRecord, step: PlannedStep | undefined, know: Know): Pick<JobView, 'sequence' | 'alignment'> {
  const what = answeredAbout(job) ?? fieldsAbout(fieldsOfLastTurn(job)) ?? fieldsAbout(step?.step.record ?? []);
  if (what === undefined) return {};
  if (what === 'alignment') {
    const alignment = alignmentToDraw(job, know, job.openedAt);
    return alignment ? { alignment } : {};
  }
  const sequence = sequenceToDraw(what, job, know, job.openedAt);
  return sequence ? { sequence } : {};
}

const answers: readonly (readonly [code: RegExp, Drawn])[] = [
  [/^(sequence\.)?uBolts\b/, 'uBolts'],
  [/^(sequence|wheelNuts)\./, 'wheelNuts'],
  [/^alignment\./, 'alignment'],
];

function answeredAbout({ lastReply }: JobRecord): Drawn | undefined {
  const codes = lastReply ? [lastReply.code, ...(lastReply.also ?? [])] : [];
  return answers.find(([code]) => codes.some((each) => code.test(each)))?.[1];
}

/** Values that the last turn took, or that are being asked about. */
function fieldsOfLastTurn({ values, lastReply, asked }: JobRecord): readonly { readonly field: FieldId }[] {
  return values.filter(({ id, turn }) => turn === lastReply?.turn || asked?.valueIds.includes(id));
}

function fieldsAbout(recorded: readonly { readonly field: FieldId }[]): Drawn | undefined {
  const fields = new Set(recorded.map(({ field }) => field));
  if (fields.has('wheelNutTorque')) return 'wheelNuts';
  if (fields.has('uBoltTorque')) return 'uBolts';
  return fields.has('couplerDiagonal') ? 'alignment' : undefined;
}

function cardOf(job: JobRecord, shop: Shop): readonly CardRow[] {
  const live = liveValues(job);
  const last = live.filter((value, i) => value.status === 'heard' || !live.slice(i + 1).some((later) => sameSlot(later, value)));
  return last.map(rowsOf(shop));
}

/** A value's row stays the same while the value does. */
const rowsOf = oncePer((shop: Shop) =>
  oncePer(
    (value: ValueRecord): CardRow => ({
      id: value.id,
      field: value.field,
      label: showFieldOf(value.field, shop),
      ...(value.side ? { side: saySide(value.side, shop) } : {}),
      ...(value.axle ? { axle: value.axle } : {}),
      stage: value.stage,
      shown: showOnly(value, shop),
      value: value.value,
      ...(value.unit ? { unit: value.unit } : {}),
      status: value.status === 'confirmed' ? 'confirmed' : 'heard',
    }),
  ),
);

function stepView(job: JobRecord, { key, step, title, place }: PlannedStep, shop: Shop): StepView {
  const plan = planOf(job);
  const planned = plan.find((other) => other.key === key);
  const where = [place.axle && `${place.axle} axle`, place.side && saySide(place.side, shop)].filter(Boolean).join(', ');
  return {
    key,
    procedure: title,
    number: plan.findIndex((other) => other.key === key) + 1,
    of: plan.length,
    ...(where ? { where } : {}),
    say: step.say,
    show: step.show,
    why: step.why,
    cautions: step.cautions.map((id) => cautionOf(id).text),
    tools: step.tools,
    parts: step.parts,
    record: planned ? recordOf(job, planned, shop) : [],
    source: step.source,
  };
}

function recordOf(job: JobRecord, planned: PlannedStep, shop: Shop): StepView['record'] {
  return slotsOf(planned, liveValues(job)).map((slot) => ({
    field: slot.record.field,
    label: [showFieldOf(slot.record.field, shop), slot.side && saySide(slot.side, shop)].filter(Boolean).join(', '),
    gate: slot.record.gate,
    have: valueIn(job, asSlot(slot)) !== undefined,
  }));
}

/** Buttons under the question: the choices of it, said as they would be spoken; they are listened for, and digit by digit too. */
function choicesOf(job: JobRecord, shop: Shop): Pick<JobView, 'choices' | 'expects'> {
  const { asked } = job;
  const expects = expectsOf(job);
  const value = job.values.find(({ id }) => id === asked?.valueIds[0]);
  if (!asked?.choices) return { expects };
  if (asked.about !== 'alternatives' || !value)
    return {
      choices: asked.choices.map((choice) => ({ say: choice, show: choice })),
      expects: { ...expects, offered: asked.choices },
    };
  const named = asked.choices.map((choice) => ({
    field: value.field,
    value: choice,
    ...(value.unit ? { unit: value.unit } : {}),
  }));
  const offered = named.flatMap((choice) => [sayOnly(choice, shop), byDigits(choice) ?? []].flat());
  return {
    choices: named.map((choice) => ({ say: sayOnly(choice, shop), show: showOnly(choice, shop) })),
    expects: { ...expects, offered },
  };
}
