// Who answers which question. Each core brings its own answerers; a topic has one.
import type { Topic } from '#intents';
import type { Answerer } from '../types.ts';
import { fitmentAnswers } from './fitment.ts';
import { meaning } from './meaning.ts';
import { serviceAnswers, serviceFirst } from './service.ts';

const own: Readonly<Partial<Record<Topic, Answerer>>> = { ...fitmentAnswers, ...serviceAnswers, meaning };

export const answerers: Readonly<Partial<Record<Topic, Answerer>>> = { ...own, ...withServiceFirst() };

/** A topic's answerer behind the service's own look at its words. */
function withServiceFirst(): Partial<Record<Topic, Answerer>> {
  const wrapped = (Object.keys(serviceFirst) as Topic[]).flatMap((topic) => {
    const [first, then] = [serviceFirst[topic], own[topic]];
    if (!first || !then) return [];
    const answerer: Answerer = (...asked) => first(...asked) ?? then(...asked);
    return [[topic, answerer] as const];
  });
  return Object.fromEntries(wrapped);
}
