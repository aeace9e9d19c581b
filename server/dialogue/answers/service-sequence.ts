// The order in which nuts are tightened, hole by hole, and what the page draws of it.
import { measured, studCountOf, tighteningOrder, uBoltLegs, uBoltsOf, wheelNutsOf } from '#core';
import type { Answer, SequenceView } from '../types.ts';
import { listed, sentence } from '../words.ts';
import { type Ask, answer, both, join, lines, type Words } from './service-ask.ts';
import { askBack } from './service-follow-ups.ts';

const isUBolts = ({ words, job }: Ask): boolean =>
  /u.?bolt/.test(words) || (!/nut|lug|wheel|stud/.test(words) && job.currentStep?.startsWith('fitAxle/') === true);

export function sequence(ask: Ask): Answer {
  const isOnward = ask.question.of === 'next';
  const view = isOnward || /\bnext\b/.test(ask.words) ? inHand(ask) : undefined;
  if (view) return isOnward ? onward(view, ask) : whereNow(view, ask);
  if (isUBolts(ask)) {
    return answer(
      'sequence.uBolts',
      both((form) =>
        join(`${sentence(uBoltLegs.join(', then '))}; a little each, three rounds.`, stagedShown(ask, 'uBolts', form)),
      ),
      {
        sources: ["spring shops' U-bolt guides (lhrods.com, autoandtrucksprings.com): cross pattern, in steps"],
      },
    );
  }
  const studs = studsOf(ask);
  if (studs === undefined) return askBack('sequence.countMissing');
  const found = tighteningOrder(studs);
  if (found.code === 'noOrder') {
    const known = found.known.map((count) => ask.tell.count(count));
    return answer(
      'sequence.noOrder',
      both(
        (form) =>
          `I have orders for ${listed(
            known.map((words) => words[form]),
            'or',
          )} studs. Count them again.`,
      ),
    );
  }
  const holes = found.order.map((hole) => ask.tell.count(hole));
  return answer(
    'sequence.order',
    {
      speak: `Count clockwise from the top: ${holes.map(({ speak }) => speak).join(', ')}. Same order every stage.`,
      show: lines(
        `${studs} studs, counted clockwise from the top: ${found.order.join(' - ')}`,
        'Same order at every stage.',
        stagedShown(ask, 'wheelNuts', 'show'),
        found.source.startsWith('from memory') ? 'Order: common practice.' : undefined,
      ),
    },
    {
      sources: [found.source],
      used: [measured(ask.readings, { field: 'boltPattern' }), measured(ask.readings, { field: 'lugCount' })],
    },
  );
}

/** The order that the last answer told, else that of the step. */
function inHand(ask: Ask): SequenceView | undefined {
  const isTold = ask.job.lastReply?.code.startsWith('sequence.uBolts');
  return sequenceView(ask, isTold || isUBolts(ask) ? 'uBolts' : 'wheelNuts');
}

/** On to the next of the order; after the last, the next round begins. */
function onward(view: SequenceView, ask: Ask): Answer {
  const { what, order, next } = view;
  const place = (next + 1) % order.length;
  const told = whereNow({ ...view, next: place }, ask);
  return { ...told, events: [{ kind: 'orderReached', what, place }] };
}

function whereNow({ what, order, next }: SequenceView, { tell }: Ask): Answer {
  return answer(
    `sequence.${what}.next`,
    both((form) => {
      const hole = `hole ${tell.count(order[next] ?? 1)[form]}`;
      const where = (what === 'uBolts' ? uBoltLegs[next] : hole) ?? hole;
      return `${sentence(where)}, ${tell.count(next + 1)[form]} of ${tell.count(order.length)[form]}.`;
    }),
  );
}

const spoken: Readonly<Record<string, number>> = { four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, twelve: 12 };

/** Studs named in the question, else those of the job. */
function studsOf({ given, words, readings }: Ask): number | undefined {
  const said = given.find((one) =>
    one.kind === 'measure' ? one.field === 'lugCount' || one.field === 'boltPattern' : true,
  )?.value;
  const fromGiven = said === undefined ? undefined : Number(/^\d+/.exec(said)?.[0]);
  const fromWords = words
    .split(' ')
    .map((word) => spoken[word] ?? (/^\d{1,2}$/.test(word) ? Number(word) : undefined))
    .find((count) => count !== undefined);
  return fromGiven || fromWords || studCountOf(readings);
}

/** What the page draws while nuts are tightened; undefined while the studs are not counted. */
export function sequenceView(ask: Ask, what: SequenceView['what']): SequenceView | undefined {
  const { reached, currentStep } = ask.job;
  const isUnderWay = reached?.what === what && reached.step === currentStep;
  const common = { what, next: isUnderWay ? reached.place : 0, ...staged(ask, what) };
  if (what === 'uBolts') return { ...common, positions: 4, order: [1, 3, 2, 4] };
  const studs = studCountOf(ask.readings);
  const found = studs === undefined ? undefined : tighteningOrder(studs);
  if (found?.code !== 'order') return undefined;
  return { ...common, positions: found.studs, order: found.order };
}

/** The stages beside the order, where the joint's figures are known. */
function stagedShown(ask: Ask, what: SequenceView['what'], form: keyof Words): string | undefined {
  const { stage } = staged(ask, what);
  return form === 'show' && stage ? `${sentence(stage)}.` : undefined;
}

function staged(ask: Ask, what: SequenceView['what']): { readonly stage?: string } {
  const torques = what === 'uBolts' ? uBoltsOf(ask.readings) : wheelNutsOf(ask.readings);
  const stages = !('stages' in torques) ? [] : 'steps' in torques.stages ? torques.stages.steps : torques.stages;
  if (stages.length === 0) return {};
  const told = stages.map(({ low, high }) => ask.tell.range(low, high, 'lbf.ft').show);
  return { stage: `${told.length} stages: ${told.join(', ')}` };
}
