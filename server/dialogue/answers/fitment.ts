// The fitment topics and who answers them.
import type { Topic } from '#intents';
import type { Answerer } from '../types.ts';
import { fits, why } from './fitment-fits.ts';
import { whatFits } from './fitment-what-fits.ts';

export const fitmentAnswers: Partial<Record<Topic, Answerer>> = { fits, whatFits, why };
