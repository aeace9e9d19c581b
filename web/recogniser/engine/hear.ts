// Sound of one press -> what was said, how sure, and what else it may have been. The same code in the page's worker and in Node.
import type { Expects } from '#intents';
import type { Automaton } from '#intents/grammar';
import { fault } from '../faults.ts';
import { aboveNoise, normalised, padded, spokenSeconds } from '../sound/level.ts';
import { resampler } from '../sound/resample.ts';
import type { Answer, Hearing, Kind } from '../types.ts';
import { fitOf, judge } from './doubt.ts';
import { type Lexicon, lexicon, type Spellings } from './lexicon.ts';
import type { Model, Stepped } from './model.ts';
import type { Referee } from './referee.ts';
import { refereed } from './refereed.ts';
import { type Candidate, inTurn, search } from './search.ts';
import { beside, hasTwins, underrated } from './twins.ts';

/** What a text says, as far as doubt needs it. */
export interface Reading {
  /** Equal keys mean the same. */
  readonly key: string;
  readonly kind: Kind;
  readonly answers?: Answer | undefined;
  /** The same thing is measured twice: the model likes to say its sentence again, and nobody does. */
  readonly repeats?: boolean;
}

/** What the engine is told about the language. */
export interface Language {
  grammar(expects: Expects): Automaton;
  read(text: string, expects: Expects): Reading;
}

export interface Heard {
  readonly hearing: Hearing;
  readonly candidates: readonly Candidate[];
  readonly fit: number;
  readonly lead: number;
  /** Texts that mean something else and come close, likeliest first; also where all was refused. */
  readonly alternatives: readonly string[];
}

export interface Engine {
  /** Makes ready for what may be said now; while it is being said there is time for that. */
  prepare(expects: Expects): void;
  /** `samples` at 16 kHz. `goOn` is asked now and then; false gives up. */
  hear(samples: Float32Array, expects: Expects, goOn?: () => Promise<boolean>): Promise<Heard>;
}

const again = fault('notUnderstood');
/** The first tokens decide which sentence it is: more is kept there. */
const usual = { discount: 0.6, reward: 0.2, beam: 8, margin: 8, spread: 10, opening: { steps: 5, beam: 24, spread: 20 } };
/** In a quiet room little has to be kept: half of the time, and what is not sure is heard again. */
const quick = { ...usual, beam: 6, margin: 7, spread: 9, opening: { steps: 3, beam: 16, spread: 14 } };
/** Noise is hardest on the first words. */
const patient = { ...usual, beam: 10, margin: 9, spread: 11, opening: { steps: 5, beam: 48, spread: 24 } };
/** The model hears words at the edges better when silence stands around them; with twice as much it hears worse. */
const padSeconds = 0.15;
/** Quick talkers reach five word tokens a second. */
const tokensASecond = 5;
/** Played a little slower and a little faster the model mishears other words: where it is not sure of what it heard, it hears the
 * sound at these speeds as well, and the mean counts. */
const speeds = [0.93, 1.07];
/** Speech that stands this far above the noise, in decibels, the model mostly hears rightly at once. */
const clearDb = 20;
/** There is next to no noise. */
const quietDb = 30;

/** `referee`: decides between what the search finds close; without one the search's order stands. */
export function engine(model: Model, spellings: Spellings, language: Language, referee?: Referee): Engine {
  /** As long as their automata: which of those are kept is the language's to say. */
  const lexicons = new WeakMap<Automaton, Lexicon>();
  const silence = lazily(async () => model.begin(await model.encode(new Float32Array(8000))));

  function lexiconFor(expects: Expects): Lexicon {
    const automaton = language.grammar(expects);
    const known = lexicons.get(automaton) ?? lexicon(automaton, spellings);
    lexicons.set(automaton, known);
    return known;
  }

  return {
    prepare: (expects) => void lexiconFor(expects),
    async hear(samples, expects, goOn) {
      const sound = padded(normalised(samples), padSeconds);
      const seconds = samples.length / 16_000;
      const length = { expected: tokensASecond * spokenSeconds(samples), maxTokens: 6 + Math.ceil(seconds * 6.5) };
      const understand = once((text: string): Reading => language.read(text, expects));
      const likelihood = once((text: string) => referee?.likelihood(sound, text));
      // Digits come twice in a row; a name with its value does not.
      const mayRepeat = (text: string): boolean => understand(text).kind !== 'measure';
      const limits = { ...length, mayRepeat, ...(goOn && { goOn }) };
      const taken: Stepped[] = [];
      const begun = async (played: Float32Array): Promise<Stepped> => {
        const one = await model.begin(await model.encode(played));
        taken.push(one);
        return one;
      };
      const decided = (list: readonly Candidate[]): Heard => weigh(refereed(rated(list), understand, likelihood), understand);

      async function heardAs(heard: readonly Stepped[], how: typeof usual): Promise<Heard> {
        const options = { ...how, ...limits };
        const from = { heard, silent: await silence() };
        const found = await search(model, from, lexiconFor(expects), options);
        const first = decided(found);
        const text = first.candidates[0]?.text;
        if (!isTaken(first) || !text || !hasTwins(text)) return first;
        const twins = lexicon(beside(language.grammar(expects), text), spellings);
        return decided(merged(found, await search(model, from, twins, options)));
      }

      try {
        const own = await begun(sound);
        const above = aboveNoise(samples);
        const [first, later] = above >= quietDb ? [quick, usual] : [usual, patient];
        if (above >= clearDb) {
          const atOnce = await heardAs([own], first);
          if (isTaken(atOnce)) return atOnce;
        }
        if (goOn && !(await goOn())) return weigh([], understand);
        const others = await inTurn(speeds, (speed) => begun(resampler(16_000 * speed).push(sound)));
        return await heardAs([own, ...others], later);
      } finally {
        for (const one of taken) one.free();
      }
    },
  };
}

const isTaken = ({ hearing }: Heard): boolean => hearing.ok && hearing.band === 'take';

/** Each question is answered once. */
function once<T>(answer: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    if (!known.has(text)) known.set(text, answer(text));
    return known.get(text) as T;
  };
}

/** Made once; after a failure, again. */
function lazily<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | undefined;
  return () => {
    made ??= make().catch((cause: unknown) => {
      made = undefined;
      throw cause;
    });
    return made;
  };
}

/** Best first. */
const rated = (list: readonly Candidate[]): Candidate[] =>
  list.map((each) => ({ ...each, score: each.score + underrated(each.text) })).sort((a, b) => b.score - a.score);

/** Each text once, with its better score; best first. */
function merged(...lists: readonly (readonly Candidate[])[]): Candidate[] {
  const sorted = lists.flat().sort((a, b) => b.score - a.score);
  return [...new Map(sorted.toReversed().map((candidate) => [candidate.text, candidate])).values()].reverse();
}

/** Picks the best candidate, its band, and the rivals that mean something else. Each text is read once. */
export function weigh(found: readonly Candidate[], read: (text: string) => Reading): Heard {
  const known = found
    .map((candidate) => ({ ...candidate, ...read(candidate.text), candidate }))
    .filter(({ repeats }) => !repeats);
  const candidates = known.map(({ candidate }) => candidate);
  const [best] = known;
  if (!best) return { hearing: again, candidates, fit: Number.NEGATIVE_INFINITY, lead: 0, alternatives: [] };
  const rivals = known.filter(({ key }) => key !== best.key);
  const lead = Math.min(20, ...rivals.map(({ score }) => best.score - score));
  const fit = fitOf(best);
  const { band, confidence } = judge(best.kind, fit, lead);
  const close = rivals.filter(({ score }) => best.score - score < 4);
  const alternatives = [...new Map(close.map(({ key, text }) => [key, text])).values()].slice(0, 3);
  const { text, kind, answers } = best;
  const hearing: Hearing = band === 'refuse' ? again : { ok: true, text, confidence, alternatives, band, kind, answers };
  return { hearing, candidates, fit, lead, alternatives };
}
