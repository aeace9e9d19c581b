// May I: what is and is not done with used parts, guns and oil.
import { practices } from '#data';
import type { QuestionIntent } from '#intents';
import type { Answer } from '../types.ts';
import { answer, same } from './service-ask.ts';

const rows = practices.map((row) => ({ ...row, fits: row.said.map((pattern) => new RegExp(pattern)) }));

/** Undefined where no row speaks of it. */
export function practice({ words = '' }: QuestionIntent): Answer | undefined {
  const row = rows.find(({ fits }) => fits.some((pattern) => pattern.test(words)));
  return row && answer(`practice.${row.id}`, same(row.say), { sources: [row.source] });
}
