// The question that a later one may lean on: "what torque for a half twenty", then "grade five", then "what about oiled".
import type { Intent, MeasureIntent, QuantityIntent, QuestionIntent } from '#intents';
import type { EventBody } from './events.ts';
import type { JobRecord } from './fold.ts';

type Heard = Extract<EventBody, { readonly kind: 'heard' }>;

/** One question with the words and values of another added; what was said last counts. */
export function withMore(
  question: QuestionIntent,
  { of, words, given = [], kind: _kind, topic: _topic, span: _span, ...where }: QuestionIntent,
): QuestionIntent {
  return {
    ...question,
    ...where,
    ...(of === undefined ? {} : { of }),
    words: [question.words, words].filter(Boolean).join(' '),
    given: [...(question.given ?? []), ...given],
  };
}

/** The last question after this was heard: a new one, the one that leans on it, or the one whose lacking facts were told. */
export function questionAfter(
  { asked, lastQuestion }: Pick<JobRecord, 'asked' | 'lastQuestion'>,
  { intents, text }: Heard,
  at: string,
): Pick<JobRecord, 'lastQuestion'> {
  const question = intents.findLast((intent) => intent.kind === 'question');
  if (question && question.topic !== 'more') return { lastQuestion: { question, at } };
  if (question) return lastQuestion ? { lastQuestion: { question: withMore(lastQuestion.question, question), at } } : {};
  if (asked?.about !== 'facts' || !lastQuestion) return {};
  const facts: QuestionIntent = { kind: 'question', topic: 'more', words: text.toLowerCase(), given: intents.filter(isAmount) };
  return { lastQuestion: { question: withMore(lastQuestion.question, facts), at } };
}

const isAmount = (intent: Intent): intent is MeasureIntent | QuantityIntent =>
  intent.kind === 'measure' || intent.kind === 'quantity';
