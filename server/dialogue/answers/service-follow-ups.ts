// What a service question still lacks, asked back. `{}` stands for the examples in turn: whoever says one back is understood.
import type { FieldId } from '#data';
import type { Answer } from '../types.ts';
import { answer, same } from './service-ask.ts';

interface FollowUp {
  readonly ask: string;
  readonly examples: readonly string[];
  /** Fields of the job that would answer it: told, they are also written down. */
  readonly fields?: readonly FieldId[];
}

export const followUps = {
  'bolt.threadMissing': { ask: 'Which thread? Say it like {}.', examples: ['half twenty grade five dry'] },
  'bolt.gradeMissing': {
    ask: 'Which grade? Count the head marks and add two: none is two, three is five, six is eight. Say it like {}.',
    examples: ['grade five'],
  },
  'bolt.unknownThread': {
    ask: 'That thread is not in my table. Say it again, like {} or {}.',
    examples: ['half twenty', 'M twelve by one point five'],
  },
  'bolt.unknownGrade': {
    ask: 'That grade is not made in that thread. Inch bolts are grade two, five or eight; metric eight point eight or ten point nine. Say it like {}.',
    examples: ['grade five'],
  },
  'stretch.missing': {
    ask: 'Give me thread, grade and the grip from head to nut: {}.',
    examples: ['half twenty grade eight over four inches'],
  },
  'extension.missing': {
    ask: 'Give me the torque, the wrench length and the extension: {}.',
    examples: ['ninety foot pounds, wrench eighteen inches, extension three inches'],
  },
  'wheelNuts.studUnknown': {
    ask: "Which stud thread? Say it like {}. Or the maker's figure: {}.",
    examples: ['half twenty', 'the maker says ninety foot pounds for the wheel nuts'],
    fields: ['studThread', 'wheelNutTorque'],
  },
  'uBolts.threadUnknown': {
    ask: 'Which thread are the U-bolts? Say it like {}.',
    examples: ['half twenty'],
    fields: ['uBoltThread'],
  },
  'endPlay.threadMissing': {
    ask: 'Which spindle thread? Say it like {}.',
    examples: ['one fourteen'],
    fields: ['spindleThread'],
  },
  'endPlay.sizeMissing': { ask: 'For how many thousandths? Say it like {}.', examples: ['three thousandths'] },
  'brake.wireMissing': {
    ask: 'Which gauge and how many feet? Say it like {}.',
    examples: ['twelve gauge, thirty feet, fifteen amps'],
  },
  'sequence.countMissing': {
    ask: 'How many studs: {}, {}, {}, {} or {}?',
    examples: ['four', 'five', 'six', 'eight', 'ten'],
    fields: ['boltPattern', 'lugCount'],
  },
  'grease.mixMissing': {
    ask: 'Never mix on a guess: clean it out. Or name both, like {}.',
    examples: ['lithium with polyurea'],
  },
  'grease.mixNameless': {
    ask: 'That name or colour tells no thickener: read it off both tubes and name both, like {}. Not known what is in there: clean it all out.',
    examples: ['lithium with calcium sulfonate'],
  },
  'compute.notUnderstood': {
    ask: 'Say the sum like: {}, or {}.',
    examples: ['half of seventy-two and a quarter', 'ninety foot pounds in newton metres'],
  },
} as const satisfies Readonly<Record<string, FollowUp>>;

export type FollowUpCode = keyof typeof followUps;

/** Asks back for what is missing. No number is given, so no caution goes with it. */
export function askBack(code: FollowUpCode): Answer {
  const { ask, examples, fields = [] }: FollowUp = followUps[code];
  const text = examples.reduce((left, example) => left.replace('{}', example), ask);
  return answer(code, same(text), { missing: fields, asks: true });
}
