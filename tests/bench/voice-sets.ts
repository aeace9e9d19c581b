// What is said to the recogniser in the bench: sentences drawn from the grammar, a shop's own phrases, and talk that is none of ours.
import { readFileSync } from 'node:fs';
import type { FieldId } from '#data';
import { type Expects, understand } from '#intents';
import { grammar, sample } from '#intents/grammar';
import { say, silent, viewed } from '../support/dialogue.ts';
import { hubServiceLines } from '../support/hub-service.ts';
import { costOf } from '../support/walk.ts';

export interface Utterance {
  readonly text: string;
  /** What the dialogue waits for when the grammar is narrowed. */
  readonly expects: Expects;
}

export const nothing: Expects = { fields: [], yesNo: false };

// biome-ignore format: a list
const measured: readonly FieldId[] = [
  'hubFace', 'springCentre', 'beamDiameter', 'drop', 'boltPattern', 'capacity', 'overhang', 'innerBearing', 'springWidth', 'springLength',
  'endPlay', 'wheelNutTorque', 'uBoltTorque', 'tyreSize', 'treadDepth', 'frameWidth', 'innerJournal', 'studThread', 'tongueWeight',
  'couplerDiagonal', 'hubTemperature', 'liningThickness', 'drumDiameter', 'seal', 'tyrePressure', 'seatTorque',
];
// biome-ignore format: a list
const answered: readonly FieldId[] = [
  'hubFace', 'springCentre', 'endPlay', 'capacity', 'wheelNutTorque', 'hubTemperature', 'tyrePressure', 'treadDepth', 'liningThickness',
  'uBoltTorque', 'couplerDiagonal', 'springLength',
];
/** Said in whole numbers too. */
const plain: readonly FieldId[] = [
  'hubFace',
  'springCentre',
  'capacity',
  'wheelNutTorque',
  'uBoltTorque',
  'hubTemperature',
  'tyrePressure',
];
/** Of eight sentences five measure, one corrects, one commands, one asks. */
const mixture = ['measure', 'measure', 'command', 'measure', 'measure', 'question', 'measure', 'correct'] as const;
const mostWords = 12;

function draw(
  random: () => number,
  used: Set<string>,
  expects: Expects,
  fits: (kind: unknown, field: unknown, intents: number, text: string) => boolean,
): string {
  for (let tries = 0; tries < 1_000_000; tries += 1) {
    const { text, intents } = sample(random, expects);
    const [first] = intents;
    if (used.has(text) || text.split(' ').length > mostWords || !fits(first?.kind, first?.field, intents.length, text)) continue;
    used.add(text);
    return text;
  }
  throw new TypeError('the grammar has too few sentences of the kind wanted');
}

/** Whole sentences: measurements by name, corrections, commands, questions. */
export function named(count: number, random: () => number): Utterance[] {
  const used = new Set<string>();
  return Array.from({ length: count }, (_, index) => {
    const kind = mixture[index % mixture.length];
    const field = measured[(index * 5) % measured.length] ?? 'hubFace';
    const text = draw(
      random,
      used,
      nothing,
      (is, of, intents) => is === kind && (kind !== 'measure' || (of === field && intents === 1)),
    );
    return { text, expects: { fields: kind === 'measure' ? [field] : ['hubFace'], yesNo: false } };
  });
}

/** Values without a name, as answers to a step that waits for them. */
export const bare = (count: number, random: () => number): Utterance[] => answers(count, random, answered, () => true);

/** Bare numbers all of whose words were recorded. */
export const bareOf = (count: number, random: () => number, recorded: (text: string) => boolean): Utterance[] =>
  answers(count, random, plain, recorded);

function answers(
  count: number,
  random: () => number,
  fields: readonly FieldId[],
  wanted: (text: string) => boolean,
): Utterance[] {
  const used = new Set<string>();
  return Array.from({ length: count }, (_, index) => {
    const expects = { fields: [fields[index % fields.length] ?? 'hubFace'], yesNo: false };
    const fits = (is: unknown, _field: unknown, intents: number, text: string) =>
      is === 'quantity' && intents === 1 && wanted(text);
    return { text: draw(random, used, expects, fits), expects };
  });
}

/** The shop's phrases that are made of words alone, as they were meant; and how many of them the grammar lets be said. */
export function phrases(): { readonly utterances: readonly Utterance[]; readonly spoken: number } {
  const lines = readFileSync(new URL('../acceptance/phrases/shop.jsonl', import.meta.url), 'utf8')
    .trim()
    .split('\n');
  const meant = lines.map((line) => understand((JSON.parse(line) as { text: string }).text).normalised);
  const spoken = [
    ...new Set(
      meant.map((text) =>
        text
          .replace(/[,.?-]/g, ' ')
          .replace(/ +/g, ' ')
          .trim(),
      ),
    ),
  ].filter((text) => /^[a-z' ]+$/.test(text));
  return { utterances: spoken.filter(sayable).map((text) => ({ text, expects: nothing })), spoken: spoken.length };
}

const sayable = (text: string): boolean => Number.isFinite(costOf(grammar(nothing), text.split(' ')));

/** The lines of a whole hub service, each with what the dialogue waits for when it is said. */
export function hubService(): Utterance[] {
  let talk = silent;
  return hubServiceLines.map((line) => {
    const expects = talk.job ? viewed(talk.job).expects : nothing;
    talk = say(talk, line);
    return { text: line.replaceAll(',', ''), expects };
  });
}

/** Talk in a shop that is not for the recogniser. */
export const chatter: readonly string[] = [
  'hello',
  'good morning',
  'where did you leave the broom',
  'pass me that rag would you',
  'the coffee machine is broken again',
  'did you see the game last night',
  'I will be back after lunch',
  'hey can you grab me a soda',
  'turn the radio down',
  'my truck needs washing',
  'who parked in front of the door',
  'it is going to rain all week',
  'she called about the invoice',
  'we are out of paper towels',
  'that dog is asleep under the bench',
  'tell him I am on the phone',
  'the delivery came early today',
  'watch your head',
  'somebody left the gate open',
  'ouch that hurt',
  'what time is it',
  'did they pay yet',
  'he bought a boat last summer',
  'the kids have school tomorrow',
  'put it over there by the wall',
  'oh come on',
  'are you kidding me',
  'that is a nice hat',
  'I was going to say something',
  'seventy four years old and still driving',
  'twenty bucks says it breaks',
  'nobody told me about that',
  'let us get some pizza',
  'is there any more tape',
  'could you hold the light',
  'my back is killing me',
  'sounds like a plan to me',
  'they closed the road for an hour',
];
