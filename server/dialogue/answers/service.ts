// The service topics and who answers them; what the dialogue and the page ask besides.
import { nameDamage, retorqueReminders } from '#core';
import type { FieldId } from '#data';
import type { QuestionIntent, Topic } from '#intents';
import type { EventBody, JobRecord, ValueRecord } from '#log/events';
import type { AlignmentView, Answer, Answerer, Know, SequenceView } from '../types.ts';
import { alignment, alignmentView } from './service-alignment.ts';
import { type Ask, answer, askOf, lines, same } from './service-ask.ts';
import { brake } from './service-brake.ts';
import { compute } from './service-compute.ts';
import { due } from './service-due.ts';
import { endPlay } from './service-end-play.ts';
import { grease } from './service-grease.ts';
import { hubHeat } from './service-hub-heat.ts';
import { type Judged, judged } from './service-judged.ts';
import { practice } from './service-practice.ts';
import { sequence, sequenceView } from './service-sequence.ts';
import { seat, torque, torqueFieldOf } from './service-torque.ts';

const asked =
  (reply: (ask: Ask) => Answer): Answerer =>
  (question, job, know, now) =>
    (judging.test(question.words ?? '') ? judgeAsked(question, job, know, now) : undefined) ??
    reply(askOf(question, job, know, now));

/** Asks for a verdict on what is named: "is a hundred and ten okay for the wheel nuts". */
const judging =
  /\b(okay|ok|alright|all right|good|fine|enough|too (much|low|high|tight|loose|little|big|far)|safe|allowed|within|in range)\b/;

export const serviceAnswers: Partial<Record<Topic, Answerer>> = {
  torque: asked(torque),
  sequence: asked(sequence),
  endPlay: asked((ask) => (/\b(adjust|set|preload)\b/.test(ask.words) && ask.given.length === 0 ? seat(ask) : endPlay(ask))),
  grease: asked(grease),
  hubHeat: asked(hubHeat),
  alignment: asked(alignment),
  brake: asked((ask) => (/adjust|star wheel/.test(ask.words) ? practice(ask.question) : undefined) ?? brake(ask)),
  compute: asked(compute),
  due: asked(due),
  practice: (question) => practice(question) ?? nothingOnIt,
};

const nothingOnIt = answer(
  'practice.unknown',
  same("I have nothing on that. The maker's instructions say; ask me for a torque, a size or the next step."),
);

/** A crack in a hanger is no bearing damage. */
export const bearingWords = /\b(bearing|cone|cup|race|roller|cage)s?\b/i;

/** "Can I reuse it": of what was found last. */
const ofLast = /\bre.?us.*\b(it|that|this|them|those|these)\b/;

/** Questions that another topic's words catch though they are about service: asked first, undefined where they are not. */
export const serviceFirst: Partial<Record<Topic, (...asked: Parameters<Answerer>) => Answer | undefined>> = {
  bearing: ({ words }) => damageAnswer(words ?? ''),
  practice: (question, { notes }) => {
    const { words = '' } = question;
    if (bearingWords.test(words)) return damageAnswer(words);
    return ofLast.test(words) && !practice(question) ? damageAnswer(notes.at(-1)?.text ?? '') : undefined;
  },
  fits: (question, job, know, now) => {
    const words = question.words ?? '';
    if (/volt|gauge/.test(words)) return brake(askOf(question, job, know, now));
    return /\bgrease\b.*\bcompatible\b|\b(grease|pump|fill)\b.*\bfittings?\b|\bfittings?\b.*\b(grease|pump|fill)\b/.test(words)
      ? grease(askOf(question, job, know, now))
      : undefined;
  },
};

const plain: QuestionIntent = { kind: 'question', topic: 'value' };

/** The verdict on a value just taken: `bad` is asked about, `doubtful` is said, `good` needs no word. */
export function judgeValue(value: ValueRecord, job: JobRecord, know: Know, now: string): Judged | undefined {
  return judged(value, askOf(plain, job, know, now));
}

/** "Is a hundred and ten okay for the wheel nuts": the verdict on a value that is only asked about; nothing is taken. */
export function judgeAsked(question: QuestionIntent, job: JobRecord, know: Know, now: string): Answer | undefined {
  const ask = askOf(question, job, know, now);
  for (const { kind: _kind, also: _also, span: _span, ...said } of ask.given.filter((one) => one.kind === 'measure')) {
    const value: ValueRecord = {
      id: 'asked',
      raw: ask.words,
      heardBy: 'typed',
      status: 'confirmed',
      at: now,
      who: '',
      turn: '',
      notes: [],
      ...said,
      stage: 'fitted',
    };
    const told = judged(value, {
      ...ask,
      readings: [
        ...ask.readings.filter(({ field, side }) => field !== said.field || side !== said.side),
        ...ask.readings.filter(({ field, origin }) => field === said.field && origin === 'maker'),
        value,
      ],
    });
    if (told) return answer(`asked.${told.code}`, told);
  }
  return undefined;
}

/** The field that a torque question asks for. */
export const torqueAsked = (...asked: Parameters<Answerer>): FieldId | undefined => torqueFieldOf(askOf(...asked));

/** The order to draw while a step tightens something. */
export function sequenceToDraw(what: SequenceView['what'], job: JobRecord, know: Know, now: string): SequenceView | undefined {
  return sequenceView(askOf(plain, job, know, now), what);
}

/** The axle to draw while a step measures its squareness. */
export function alignmentToDraw(job: JobRecord, know: Know, now: string): AlignmentView | undefined {
  return alignmentView(askOf(plain, job, know, now));
}

/** Reminders to set when a step with this torque is done: check it again by miles and by date. */
export function remindersAfter(field: FieldId, turn: string, now: string, odometer?: string): readonly EventBody[] {
  return retorqueReminders(field, now, odometer).map(({ id, text, dueAt, dueMiles }) => ({
    kind: 'reminderSet',
    id: `${turn}.${id}`,
    text,
    ...(dueAt === undefined ? {} : { dueAt }),
    ...(dueMiles === undefined ? {} : { dueMiles }),
  }));
}

/** Bearing damage in a note or question, named and answered with reuse or replace; undefined where no damage is named. */
export function damageAnswer(text: string): Answer | undefined {
  const named = nameDamage(text);
  if (named.code === 'damageUnknown') return undefined;
  const verdicts = { no: 'Replace cone and cup', look: 'Look closer', yes: 'May go back' } as const;
  const told = named.found.map((row) => ({ row, head: verdicts[row.reuse as keyof typeof verdicts] }));
  const [worst] = told;
  if (!worst) return undefined;
  return answer(
    `damage.${worst.row.id}`,
    {
      speak: `${worst.head}: ${worst.row.term}. ${worst.row.why}`,
      show: lines(...told.map(({ row, head }) => `${head}: ${row.term}${row.iso ? ` (ISO 15243 ${row.iso})` : ''}. ${row.why}`)),
    },
    { sources: named.found.map(({ source }) => source) },
  );
}
