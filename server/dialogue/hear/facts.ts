// A question that asked back: what is told next is added to it, and it is answered anew.
import type { Intent, MeasureIntent, QuantityIntent, QuestionIntent } from '#intents';
import type { Asked } from '#log/events';
import { answerers } from '../answers/index.ts';
import { closeAsk, type Draft } from '../draft.ts';
import { settle } from '../settle.ts';
import { takeHere } from './quantity.ts';
import { answer } from './question.ts';

/** Undefined where nothing told bears on it: the utterance then means what it would by itself. */
export function factsTold(draft: Draft, { given, fields = [] }: Asked): Draft | undefined {
  const { intents, normalised } = draft.heard.understanding;
  if (given === undefined || intents.length === 0 || !intents.every(tellsFacts)) return undefined;
  const question: QuestionIntent = JSON.parse(given);
  const wanted = new Set<string>(fields);
  const facts = intents.flatMap((intent): readonly Intent[] => (intent.kind === 'question' ? (intent.given ?? []) : [intent]));
  const kept = facts.filter((intent): intent is MeasureIntent => intent.kind === 'measure' && wanted.has(intent.field));
  const added = facts.filter(isAmount);
  const whole: QuestionIntent = {
    ...question,
    words: [question.words, normalised].filter(Boolean).join(' '),
    given: [...(question.given ?? []), ...added],
  };
  const taken = kept.reduce((left, intent) => takeHere(left, intent.field, intent), closeAsk(draft, 'yes'));
  const complete = intents.some((intent) => intent.kind === 'question' && !told(draft, intent)?.asks);
  return !complete && goesOn(draft, question, taken, whole) ? answer(settle(taken), whole) : undefined;
}

const isAmount = (intent: Intent): intent is MeasureIntent | QuantityIntent =>
  intent.kind === 'measure' || intent.kind === 'quantity';

const tellsFacts = (intent: Intent): boolean =>
  isAmount(intent) || intent.kind === 'unknown' || intent.kind === 'note' || (intent.kind === 'question' && intent.told === true);

const told = ({ job, know, now }: Draft, asking: QuestionIntent) => answerers[asking.topic]?.(asking, job, know, now);

/** It is answered now, or lacks something else than before. */
function goesOn(before: Draft, question: QuestionIntent, after: Draft, whole: QuestionIntent): boolean {
  const [was, is] = [told(before, question), told(after, whole)];
  return is !== undefined && (!is.asks || is.code !== was?.code || is.missing.length < was.missing.length);
}
