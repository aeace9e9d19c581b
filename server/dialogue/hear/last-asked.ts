// The question that what is said now may lean on.
import { policy } from '#data';
import type { QuestionIntent } from '#intents';
import type { Draft } from '../draft.ts';

/** Unless it was asked too long ago to be meant. */
export function lastAsked({ job: { lastQuestion }, now }: Draft): QuestionIntent | undefined {
  const isOld = lastQuestion && Date.parse(now) - Date.parse(lastQuestion.at) > policy.factsSeconds * 1000;
  return isOld ? undefined : lastQuestion?.question;
}
