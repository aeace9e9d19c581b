import { clause, listed, type Named, sayCount, sayName, showName, withoutStop } from '../words.ts';
import { speaker, type Wording } from './line.ts';

type Slots = readonly Omit<Named, 'value'>[];

export interface StepFacts {
  readonly step: {
    readonly say: string;
    readonly show: string;
    readonly where: string;
    readonly place: string;
    readonly cautions: readonly string[];
  };
  readonly valuesMissing: { readonly slots: Slots };
  readonly notSaidDone: { readonly say: string };
  readonly leftOpen: { readonly say: string };
  readonly skipWhy: { readonly say: string };
  readonly askSkip: { readonly say: string; readonly reason: string };
  readonly skipped: { readonly say: string };
  readonly keptStep: Record<string, never>;
  readonly allDone: { readonly open: number };
  readonly atStart: Record<string, never>;
  readonly noSuchStep: { readonly said: string; readonly titles: readonly string[] };
  readonly openBefore: { readonly count: number };
  readonly why: { readonly why: string; readonly source: string };
  readonly alsoDone: { readonly left: string };
  readonly otherStep: { readonly say: string; readonly where: string };
  readonly doneBefore: { readonly say: string };
  readonly noStepSo: Record<string, never>;
  readonly openAgain: { readonly say: string };
  readonly notYet: Record<string, never>;
  readonly marked: { readonly say: string };
}

/** The first clause is enough to name a step. */
const nameOf = (say: string) => clause(say).charAt(0).toLowerCase() + clause(say).slice(1);

const words: Wording<StepFacts> = {
  step: ({ say, show, where, place, cautions }) => ({
    tone: cautions.length > 0 ? 'caution' : 'step',
    speak: [where && `${where}:`, say, ...cautions].filter(Boolean).join(' '),
    show: [`${place}${where ? `, ${where}` : ''}`, show, ...cautions.map((text) => `! ${text}`)].join('\n'),
  }),
  valuesMissing: ({ slots }, shop) => ({
    tone: 'refused',
    speak: `not done without ${listed(slots.map((slot) => sayName(slot, shop)))}. Call it, or skip with a reason.`,
    show: `Still wanted: ${listed(slots.map((slot) => showName(slot, shop)))}`,
  }),
  notSaidDone: ({ say }) => ({ tone: 'refused', speak: `${nameOf(say)}: say done when it is, or skip with a reason.` }),
  leftOpen: ({ say }) => ({ tone: 'taken', speak: `left open: ${nameOf(say)}.` }),
  skipWhy: ({ say }) => ({ tone: 'ask', speak: `skip ${nameOf(say)}. Why?` }),
  askSkip: ({ say, reason }) => ({ tone: 'ask', speak: `skip ${nameOf(say)}, because ${reason}. Correct?` }),
  skipped: ({ say }) => ({ tone: 'taken', speak: `skipped: ${nameOf(say)}.` }),
  keptStep: () => ({ tone: 'taken', speak: 'not skipped.' }),
  allDone: ({ open }) => ({
    tone: 'step',
    speak:
      open > 0
        ? 'end of the list, with some still open. Say what is still open, or close the job.'
        : 'all steps done. Say close the job.',
  }),
  atStart: () => ({ tone: 'step', speak: 'this is the first step.' }),
  noSuchStep: ({ said, titles }) => ({
    tone: 'refused',
    speak: `no step called ${said} here. Name a part of the work, like ${listed(titles.slice(-3), 'or')}.`,
    show: `No step called "${said}". There is: ${titles.join(', ')}.`,
  }),
  openBefore: ({ count }) => ({
    tone: 'step',
    speak: `${sayCount(count)} ${count === 1 ? 'step' : 'steps'} before it ${count === 1 ? 'stays' : 'stay'} open.`,
    show: `${count} before it still open.`,
  }),
  why: ({ why, source }) => ({ tone: 'answer', speak: why, show: `${why}\n(${source})` }),
  alsoDone: ({ left }) => ({ tone: 'ask', speak: `and ${left}. That too?` }),
  otherStep: ({ say, where }) => ({
    tone: 'ask',
    speak: `that is another step${where && `, ${where}`}: ${withoutStop(say)}. Is all of it done?`,
  }),
  doneBefore: ({ say }) => ({ tone: 'answer', speak: `already marked done: ${nameOf(say)}.` }),
  noStepSo: () => ({ tone: 'refused', speak: 'nothing marked: no step here is that. Say done for the one on the screen.' }),
  openAgain: ({ say }) => ({ tone: 'taken', speak: `open again: ${nameOf(say)}.` }),
  notYet: () => ({ tone: 'taken', speak: 'not marked. Say done when it is.' }),
  marked: ({ say }) => ({ tone: 'taken', speak: `marked done: ${nameOf(say)}.` }),
};

export const stepLine = speaker(words);
