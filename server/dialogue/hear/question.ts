// Questions: the dialogue's own about the job, the rest through the registry of answers.
import type { QuestionIntent } from '#intents';
import { withMore } from '#log/events';
import { answerers } from '../answers/index.ts';
import { rowAsked } from '../answers/meaning.ts';
import { judgeAsked } from '../answers/service.ts';
import { ask, type Draft, emit, say } from '../draft.ts';
import { stepAt } from '../plan.ts';
import { askedNow } from '../settle.ts';
import { byId, liveValues } from '../values.ts';
import { jobLine } from '../wording/jobs.ts';
import { repairLine } from '../wording/repair.ts';
import { stepLine } from '../wording/steps.ts';
import { sayFieldOf } from '../words.ts';
import { lastAsked } from './last-asked.ts';
import { judgeLast, openAsked, valueAsked } from './read.ts';
import { sayStepAgain } from './steps.ts';

export function question(draft: Draft, intent: QuestionIntent): Draft {
  switch (intent.topic) {
    case 'value':
      return asIfMeasured(draft, intent) ?? valueAsked(draft, intent);
    case 'judged':
      return judgeLast(draft);
    case 'open':
      return openAsked(draft);
    case 'nextStep':
      return sayStepAgain(draft);
    case 'meaning':
      return meant(draft, intent);
    case 'more':
      return more(draft, intent);
    case 'why':
      return why(draft, intent);
    default:
      return answer(draft, intent);
  }
}

/** "What's the end play" of a job that has one asks for it; in other words, or where none is measured, for what that is. */
function meant(draft: Draft, intent: QuestionIntent): Draft {
  const field = intent.told ? undefined : rowAsked(intent)?.field;
  const measured = field && liveValues(draft.job).some((value) => value.field === field);
  return measured ? valueAsked(draft, { ...intent, of: field }) : answer(draft, intent);
}

/** The question before, asked again with what is new in it. */
function more(draft: Draft, intent: QuestionIntent): Draft {
  const last = lastAsked(draft);
  return last ? question(draft, withMore(last, intent)) : say(draft, repairLine('moreOfWhat', {}, draft.know.shop));
}

/** A value told in the question is judged as if it had been measured. */
function asIfMeasured(draft: Draft, intent: QuestionIntent): Draft | undefined {
  const told = judgeAsked(intent, draft.job, draft.know, draft.now);
  return told && say(draft, { code: told.code, tone: 'answer', speak: told.speak, show: told.show });
}

/** Why: of the verdict just given, else of the step on the screen. */
function why(draft: Draft, intent: QuestionIntent): Draft {
  const step = stepAt(draft.job)?.step;
  const aboutFit = draft.wasAsked?.about === 'verdict' || /verdict|fit/i.test(draft.job.lastReply?.code ?? '');
  if (aboutFit || !step) return answer(draft, intent);
  return say(draft, stepLine('why', { why: step.why, source: step.source }, draft.know.shop));
}

/** Answers through the registry; an answer that asks back keeps the question for what is told next. */
export function answer(draft: Draft, intent: QuestionIntent): Draft {
  const { job, know, now } = draft;
  const answerer = answerers[intent.topic];
  if (!answerer) return say(draft, jobLine('notHere', { topic: intent.topic }, know.shop));
  const { code, speak, show, rests, caution, events = [], sources, asks, missing } = answerer(intent, job, know, now);
  if (asks && !askedNow(draft)) {
    const facts = { about: 'facts' as const, valueIds: [], fields: missing, given: JSON.stringify(intent) };
    return ask(draft, facts, { code, tone: 'ask', speak, show });
  }
  // A question that is open already comes first: an answer to ours would be taken for one to it.
  if (asks) return say(draft, jobLine('thatFirst', {}, know.shop));
  const unsure = rests.map((id) => byId(job, id)).filter((value) => value?.status === 'heard');
  const names = [...new Set(unsure.map((value) => (value ? sayFieldOf(value.field, know.shop) : '')))];
  const from = sources.length > 0 ? `\n(${sources.join('; ')})` : '';
  const told = say(
    emit(
      draft,
      ...events.map((body) =>
        body.kind === 'verdictGiven' ? { ...body, unconfirmed: unsure.map((value) => value?.id ?? '') } : body,
      ),
    ),
    {
      code,
      tone: caution ? 'caution' : 'answer',
      speak: [speak, caution].filter(Boolean).join(' '),
      show: [show + from, caution].filter(Boolean).join('\n! '),
    },
    ...(names.length > 0 ? [jobLine('unsure', { names }, know.shop)] : []),
  );
  const judged = events.some((body) => body.kind === 'verdictGiven' && body.verdict !== 'cannotSayYet');
  return judged ? ask(told, { about: 'verdict', valueIds: [] }, jobLine('askVerdict', {}, know.shop)) : told;
}
