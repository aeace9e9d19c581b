// Whole utterances: measures, corrections, strikes, commands and questions, from the same tables that the parser reads.
import { type FieldId, fieldOf, fields } from '#data';
import { holds } from '../fields.ts';
import { many, maybe, means, oneOf, type Phrase, phrase, seq, word } from '../phrase.ts';
import type { Expects, Intent } from '../types.ts';
import { commandWords } from '../words/commands.ts';
import { topics } from '../words/questions.ts';
import { words } from './numbers.ts';
import { anyLength, spokenValue } from './values.ts';

const places: Phrase = maybe(
  oneOf(
    ...(['left', 'right'] as const).map((side) => means(word(side), { set: { side } })),
    means(words('both sides'), { set: { side: 'both' } }),
    ...(['front', 'rear'] as const).map((axle) => means(words(`${axle} axle`), { set: { axle } })),
    ...(['left', 'right'] as const).flatMap((side) =>
      (['front', 'rear'] as const).map((axle) => means(words(`${side} ${axle}`), { set: { side, axle } })),
    ),
  ),
);

const axlesOnly: Phrase = maybe(
  oneOf(
    ...(['front', 'rear'] as const).map((axle) => means(words(`${axle} axle`), { set: { axle } })),
    means(words('new axle'), { set: { stage: 'fitted' } }),
    means(words('old axle'), { set: { stage: 'found' } }),
  ),
);

/** Names that no other field shares; the shop's commonest four. */
const shared = new Set(fields.flatMap(({ said }) => said).filter((name, at, all) => all.indexOf(name) !== at));
const ambiguous = /^(axle|front|rear|left|right|back|volts|amps|miles|degree)\b/;
const namesOf = (id: FieldId) =>
  fieldOf(id)
    .said.filter((name, at) => at === 0 || !(shared.has(name) || ambiguous.test(name)))
    .slice(0, 4);
const ownNamesOf = (id: FieldId) => namesOf(id).filter((name) => !shared.has(name));

const nameOf = (id: FieldId): Phrase => means(oneOf(...namesOf(id).map(words)), { set: { field: id } });

function namedValue(id: FieldId): Phrase {
  const where = fieldOf(id).perSide ? places : axlesOnly;
  return seq(where, nameOf(id), maybe(oneOf(word('is'), word('at'))), spokenValue(id));
}

const measureOf = (id: FieldId): Phrase => means(namedValue(id), { end: 'measure' });

const named = fields.filter(({ id }) => holds(id) !== 'choice').map(({ id }) => id);
const ownNamed = named.filter((id) => ownNamesOf(id).length > 0);
const choices = fields.filter(({ id }) => holds(id) === 'choice').map(({ id }) => id);

/** Values that say by themselves what they are; first in a sentence only, where no number before can run into them. */
const nameless: readonly FieldId[] = ['boltPattern', ...choices];
const itself = (id: FieldId): Phrase => means(means(spokenValue(id), { set: { field: id } }), { end: 'measure' });
const poundAxle: Phrase = means(means(seq(spokenValue('capacity'), word('axle')), { set: { field: 'capacity' } }), {
  end: 'measure',
});

/** What is waited for may be said without its name; of both sides in one breath. */
function bare(id: FieldId): Phrase {
  if (holds(id) !== 'number') return itself(id);
  const of = (...parts: readonly Phrase[]): Phrase => means(seq(...parts), { end: 'quantity' });
  const value = spokenValue(id);
  if (!fieldOf(id).perSide) return of(value);
  const on = (side: 'left' | 'right'): Phrase => means(word(side), { set: { side } });
  const both = means(words('both sides'), { set: { side: 'both' } });
  return oneOf(of(places, value), of(value, both), seq(of(on('left'), value), of(on('right'), value)));
}

/** One that is waited for and says by itself what it is, after another or after a measure: "cotter pin, plain spindle". */
function pairs(waited: readonly FieldId[]): readonly Phrase[] {
  const isChoice = (id: FieldId): boolean => holds(id) === 'choice';
  return waited
    .filter(isChoice)
    .flatMap((last) =>
      waited.filter((id) => id !== last).map((id) => seq(isChoice(id) ? itself(id) : measureOf(id), itself(last))),
    );
}

const correctionOpeners = phrase('(no [make that]|make that|correction|i said|actually|scratch that make that)');

function corrections(waited: readonly FieldId[]): Phrase {
  const numbers = waited.filter((id) => holds(id) === 'number').map(spokenValue);
  const value = numbers.length > 0 ? oneOf(...numbers) : anyLength;
  return oneOf(
    means(seq(correctionOpeners, value), { end: 'correct' }),
    seq(phrase('(no|correction)'), oneOf(...named.map((id) => means(namedValue(id), { end: 'correct' })))),
    ...named.map((id) => means(seq(word('change'), nameOf(id), word('to'), spokenValue(id)), { end: 'correct' })),
  );
}

const says = (of: Phrase, intent: Intent): Phrase => means(of, { intent });

const strikes: Phrase = oneOf(
  says(phrase('(scratch|strike) that'), { kind: 'strike' }),
  ...ownNamed.map((id) => says(seq(phrase('(scratch|strike|delete) the'), nameWords(id)), { kind: 'strike', field: id })),
);

function nameWords(id: FieldId): Phrase {
  return oneOf(...ownNamesOf(id).map(words));
}

/** Openers with free text after them are left to typing; of each command its commonest sayings. */
const commands: Phrase = oneOf(
  ...commandWords.flatMap(({ name, said }) =>
    said
      .slice(0, 3)
      .filter((template) => !template.includes('<'))
      .map((template) => says(phrase(template), { kind: 'command', name })),
  ),
);

const questions: Phrase = oneOf(
  ...topics.flatMap(({ topic, said }) =>
    said.flatMap((template) =>
      template.includes('<field>')
        ? ownNamed.map((id) => says(phrase(template.replace('<field>', ownNamesOf(id)[0] ?? id)), { kind: 'question', topic }))
        : [says(phrase(template), { kind: 'question', topic })],
    ),
  ),
);

/** Said in the same breath as what the step wants. */
const goesOn: Phrase = oneOf(...(['done', 'next'] as const).map((name) => says(word(name), { kind: 'command', name })));

/** All that can be said; what the dialogue waits for may be said without its name. */
export function sentences(expects?: Expects): Phrase {
  const waited = expects?.fields ?? [];
  const measure = oneOf(...named.map(measureOf));
  const more = maybe(many(measure));
  return oneOf(
    seq(
      oneOf(
        seq(poundAxle, maybe(seq(itself('boltPattern'), more))),
        many(measure),
        ...nameless.map((id) => seq(itself(id), more)),
      ),
      maybe(goesOn),
    ),
    ...[...waited.map(bare), ...pairs(waited)].map((answer) => seq(answer, maybe(goesOn))),
    seq(says(word('yes'), { kind: 'command', name: 'confirm' }), goesOn),
    corrections(waited),
    strikes,
    commands,
    questions,
  );
}
