// What a trade word means: short to the ear, more on the screen.
import { glossary } from '#data';
import type { QuestionIntent } from '#intents';
import type { Answer } from '../types.ts';

export const rowAsked = ({ of }: QuestionIntent) => glossary.find(({ id }) => id === of);

export function meaning(question: QuestionIntent): Answer {
  const row = rowAsked(question);
  if (!row) throw new TypeError(`data/glossary.json has no row '${question.of}'`);
  const name = (row.said[0] ?? row.id).replace(/^./, (letter) => letter.toUpperCase());
  return {
    code: `meaning.${row.id}`,
    speak: row.means,
    show: [`${name}: ${row.means}`, row.more].filter(Boolean).join('\n'),
    sources: [row.source],
    rests: [],
    missing: [],
  };
}
