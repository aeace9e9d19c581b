// Whole utterances: measures, corrections, strikes, commands and questions, from the same tables that the parser reads.
import { type FieldId, glossary, jobKinds, told } from '#data';
import { holds } from '../fields.ts';
import { sequencesOf } from '../lexicon.ts';
import { maybe, means, oneOf, type Phrase, phrase, seldom, seq, word } from '../phrase.ts';
import { actsTold } from '../rules/told.ts';
import type { Expects, Intent } from '../types.ts';
import { commandWords } from '../words/commands.ts';
import { topics } from '../words/questions.ts';
import { unitSpoken } from '../words/units.ts';
import { byNames, measures, namedFields, nameOf, ownNamesOf } from './measures.ts';
import { words } from './numbers.ts';
import { sums } from './sums.ts';
import { anyLength, spokenValue } from './values.ts';

const ownNamed = namedFields.filter((id) => ownNamesOf(id).length > 0);

/** How often each is said beside a measurement, in nats, by judgement. */
const rare = {
  correction: 1,
  strike: 2,
  question: 0.5,
  laterSaying: 0.7,
  goesOn: 1,
  goesOnUnasked: 3,
  told: 3,
  meaning: 3,
  newJob: 2,
  /** A yes or a no, while there is nothing to say it to. */
  unasked: 3,
  /** Anything else, while answers are offered. */
  notOffered: 3,
};

const correctionOpeners = oneOf(
  phrase('(no [make that]|make that|correction|i said|actually|scratch that [make that])'),
  seldom(
    phrase(
      "(make it|i meant|sorry|no wait|wait|no [no] (it's|it is)|oops|wait make that|change that to|that should be|it should be|strike that make it)",
    ),
    1,
  ),
);

function namedAnew(ids: readonly FieldId[]): Phrase {
  const { followed, withTail } = byNames(ids, 'correct');
  return oneOf(followed, withTail);
}

function corrections(waited: readonly FieldId[]): Phrase {
  const numbers = waited.filter((id) => holds(id) === 'number').map((id) => spokenValue(id));
  const value = numbers.length > 0 ? oneOf(...numbers) : anyLength;
  return seldom(
    oneOf(
      means(seq(correctionOpeners, value), { end: 'correct' }),
      seldom(
        means(seq(phrase('(i said|i meant|no)'), anyLength, means(word('not'), { split: 'not' }), anyLength), { end: 'correct' }),
        1,
      ),
      // "No brake" is an idler.
      ...(['no', 'correction'] as const).map((opener) =>
        seq(word(opener), namedAnew(namedFields.filter((id) => opener !== 'no' || !id.startsWith('brake')))),
      ),
      seq(
        phrase('change [the]'),
        oneOf(...namedFields.map((id) => means(seq(nameOf(id), word('to'), spokenValue(id)), { end: 'correct' }))),
      ),
    ),
    rare.correction,
  );
}

const says = (of: Phrase, intent: Intent): Phrase => means(of, { intent });

const strikes: Phrase = oneOf(
  says(phrase('(scratch|strike) that'), { kind: 'strike' }),
  seldom(
    oneOf(
      says(phrase('(delete that|forget that|cancel that|strike the last one|never mind)'), { kind: 'strike' }),
      seq(
        phrase('(scratch|strike|delete|erase|clear) [the]'),
        oneOf(...ownNamed.map((id) => says(nameWords(id), { kind: 'strike', field: id }))),
      ),
    ),
    rare.strike,
  ),
);

function nameWords(id: FieldId): Phrase {
  return oneOf(...ownNamesOf(id).map(words));
}

/** Openers with free text after them are left to typing, but where it has a word of its own before it: "[because <rest>]". */
const withoutRest = (template: string): string => template.replace(/\[\w[^[\]]*<rest>\]/g, '');
const anyField = `(${ownNamed.flatMap((id) => ownNamesOf(id).slice(0, 1)).join('|')})`;
const settling: readonly string[] = ['confirm', 'deny'];

const commands = (yesNo: boolean): Phrase =>
  oneOf(
    ...commandWords.flatMap(({ name, said }) =>
      said
        .map(withoutRest)
        .filter((template) => !template.includes('<rest>'))
        .slice(0, 3)
        .map((template, at) =>
          seldom(
            says(phrase(template.replaceAll('<field>', anyField)), { kind: 'command', name }),
            at * rare.laterSaying + (settling.includes(name) && !yesNo ? rare.unasked : 0),
          ),
        ),
    ),
  );

const newJobs: Phrase = seldom(
  says(
    seq(
      phrase('[start a|open a] new job'),
      oneOf(...jobKinds.flatMap(({ said }) => said.map(words))),
      phrase('[on a (single|tandem|triple) axle trailer]'),
    ),
    { kind: 'command', name: 'openJob' },
  ),
  rare.newJob,
);

/** Longest first: "foot pounds" before "pounds". */
const unitTails = Object.values(unitSpoken)
  .flatMap(({ one, many }) => [many, one].filter(Boolean).map((said) => ` ${said}`))
  .sort((a, b) => b.length - a.length);

/** An answer that is offered; its unit may be left out. */
function answer(said: string): Phrase {
  const tail = unitTails.find((unit) => said.endsWith(unit)) ?? '';
  const plain = (text: string): Phrase => words(text.toLowerCase().replace(/[^\p{L}\p{N}' -]/gu, ' '));
  return seq(plain(said.slice(0, said.length - tail.length)), maybe(plain(tail)));
}

/** Beside a measurement these are seldom, and rightly: they are said once a step. */
const narrations: Phrase = seldom(
  seq(
    maybe(phrase("(i|we|i've|the)")),
    oneOf(
      ...told.flatMap(({ said }) =>
        said.flatMap((template) =>
          sequencesOf(phrase(template)).map((spoken) =>
            says(seq(...spoken.map(word)), { kind: 'command', name: 'told', acts: actsTold(spoken.join(' ')) }),
          ),
        ),
      ),
    ),
  ),
  rare.told,
);

const questions: Phrase = oneOf(
  ...topics.flatMap(({ topic, said }) =>
    said.map((template) => says(phrase(template.replace('<field>', anyField)), { kind: 'question', topic })),
  ),
);

/** What the trade's words mean, each by its first name. */
const meanings: Phrase = oneOf(
  ...glossary.flatMap(({ id, said }) =>
    said.slice(0, 1).map((name) => says(seq(phrase('what is a'), phrase(name)), { kind: 'question', topic: 'meaning', of: id })),
  ),
);

/** Said in the same breath as what the step wants. */
const goesOn: Phrase = oneOf(...(['done', 'next'] as const).map((name) => says(word(name), { kind: 'command', name })));

/** All that can be said; what the dialogue waits for may be said without its name. */
export function sentences(expects?: Expects): Phrase {
  const waited = expects?.fields ?? [];
  const offered = expects?.offered ?? [];
  const all = oneOf(
    seq(measures(waited), maybe(seldom(goesOn, waited.length > 0 ? rare.goesOn : rare.goesOnUnasked))),
    seq(says(word('yes'), { kind: 'command', name: 'confirm' }), goesOn),
    corrections(waited),
    strikes,
    commands(expects?.yesNo ?? false),
    newJobs,
    narrations,
    seldom(questions, rare.question),
    seldom(meanings, rare.meaning),
    sums,
  );
  return offered.length > 0 ? oneOf(...offered.map(answer), seldom(all, rare.notOffered)) : all;
}
