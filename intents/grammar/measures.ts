// Measurements as they are called out: where, name, hedge, value, and where again; of both sides in one breath. What is said seldom costs.
import { type FieldId, fieldOf, fields } from '#data';
import { holds } from '../fields.ts';
import { lazy, maybe, means, oneOf, type Phrase, phrase, seldom, seq, word } from '../phrase.ts';
import type { Hedge } from '../types.ts';
import { sizeNames } from '../words/where.ts';
import { wholes, words } from './numbers.ts';
import { letteredBearing, looseAmount, ratio, readAs, spokenFor, spokenInThousands, spokenValue } from './values.ts';

/** Nats, by judgement and the check on speech kept apart (tests/bench/voice.ts): how seldom each is said beside the plainest way. */
const rare = {
  place: 0.5,
  stage: 1.5,
  link: 0.7,
  hedge: 2,
  later: 1.5,
  otherName: 0.7,
  token: 1,
  loose: 2.5,
  shared: 1.5,
  notWaited: 1,
  /** More, while something is waited for that it is not. */
  unfit: 3,
};

const on = (side: 'left' | 'right'): Phrase => means(word(side), { set: { side } });
const bothSides: Phrase = means(phrase('(both sides|both)'), { set: { side: 'both' } });
const axleOf = (axle: 'front' | 'rear', said: string): Phrase => means(words(said), { set: { axle } });

const stages: Phrase = oneOf(
  means(phrase('(new axle|new)'), { set: { stage: 'fitted' } }),
  means(phrase('(old axle|old)'), { set: { stage: 'found' } }),
);

const places: Phrase = maybe(
  seldom(
    oneOf(
      on('left'),
      on('right'),
      bothSides,
      ...(['front', 'rear'] as const).flatMap((axle) => [
        axleOf(axle, `${axle} axle`),
        axleOf(axle, axle),
        ...(['left', 'right'] as const).flatMap((side) => [
          means(words(`${side} ${axle}`), { set: { side, axle } }),
          means(words(`${axle} ${side}`), { set: { side, axle } }),
          means(words(`${axle} axle ${side}`), { set: { side, axle } }),
        ]),
      ]),
    ),
    rare.place,
  ),
);

const inFull = seldom(oneOf(axleOf('front', 'front axle'), axleOf('rear', 'rear axle')), rare.place);
const axlesInFull: Phrase = maybe(inFull);
const axles: Phrase = maybe(oneOf(inFull, seldom(oneOf(axleOf('front', 'front'), axleOf('rear', 'rear'), stages), rare.stage)));

const sidesAfter: Phrase = seldom(
  oneOf(
    ...(['left', 'right'] as const).map((side) => means(phrase(`([on the] ${side}|${side} side)`), { set: { side } })),
    means(phrase('(both sides|each side|on both sides)'), { set: { side: 'both' } }),
    ...(['front', 'rear'] as const).flatMap((axle) =>
      (['left', 'right'] as const).map((side) => means(phrase(`on the ${side} ${axle}`), { set: { side, axle } })),
    ),
  ),
  rare.later,
);

const axlesAfter: Phrase = seldom(
  oneOf(...(['front', 'rear'] as const).map((axle) => axleOf(axle, `on the ${axle} axle`))),
  rare.later,
);

/** The commonest of words/hedges.ts; the parser takes more. */
const hedged = (...rows: readonly (readonly [Hedge | 'none', string])[]): Phrase =>
  maybe(
    seldom(
      oneOf(...rows.map(([hedge, said]) => (hedge === 'none' ? phrase(said) : means(phrase(said), { set: { hedge } })))),
      rare.hedge,
    ),
  );
const before = hedged(
  ['about', '(about|around|roughly|right around|close to)'],
  ['under', '(just under|just shy of|a hair under|a little under|nearly|almost)'],
  ['over', '(just over|a hair over|a little over|a strong)'],
  ['atLeast', 'at least'],
  ['none', '(exactly|right at)'],
);
const after = hedged(
  ['over', '(strong|heavy|and change)'],
  ['under', '(light|shy)'],
  ['about', '(or so|give or take)'],
  ['none', '(even|flat|on the nose)'],
);

/** Names that no other field shares; and a name that begins another field's name does not stand for a number without its unit. */
const names = fields.flatMap(({ said }) => said);
const shared = new Set(names.filter((name, at) => names.indexOf(name) !== at));
const beginningsOf = (name: string): string[] => [...name.matchAll(/ /g)].map(({ index }) => name.slice(0, index));
const begunBy = new Map<string, FieldId[]>();
for (const { id, said } of fields)
  for (const beginning of said.flatMap(beginningsOf)) begunBy.set(beginning, [...(begunBy.get(beginning) ?? []), id]);
const begins = new Set(
  fields.flatMap(({ id, said }) => said.filter((name) => begunBy.get(name)?.some((longer) => longer !== id))),
);
const ambiguous = /^(half|axle|front|rear|left|right|back|volts|amps|miles|degree)\b/;
const most = 5;
const namesOf = (id: FieldId) =>
  fieldOf(id)
    .said.filter((name, at) => (at === 0 && !name.startsWith('half')) || !(shared.has(name) || ambiguous.test(name)))
    .slice(0, most);
export const ownNamesOf = (id: FieldId) => namesOf(id).filter((name) => !shared.has(name));

const links: Phrase = maybe(
  oneOf(
    word('is'),
    seldom(word('at'), rare.link),
    seldom(phrase('(are|reads|measures|measured|was|is at|came out at)'), 2 * rare.link),
  ),
);
const tight: Phrase = maybe(oneOf(links, seldom(phrase('torqued to'), rare.link)));
const linksTo = (unit: string | undefined): Phrase => (unit === 'lbf.ft' ? tight : links);
/** "Wheel nuts left ninety". */
const sideBetween: Phrase = oneOf(on('left'), on('right'));

const named = (id: FieldId, said: string): Phrase => means(words(said), { set: { field: id } });
/** What is made with each of a field's names; the later ones are said less. */
const byName = (id: FieldId, made: (name: string) => Phrase, of = namesOf(id)): Phrase =>
  oneOf(...of.map((name, at) => (at === 0 ? made(name) : seldom(made(name), at < 4 ? rare.otherName : 2 * rare.otherName))));
export const nameOf = (id: FieldId): Phrase => byName(id, (name) => named(id, name));

/** "Right one" is the one on the right. */
const saysOne = (id: FieldId): boolean => {
  const { min, max } = fieldOf(id);
  return ratio(min ?? '0') <= 1 && ratio(max ?? '1') >= 1;
};

const valueAfter = (id: FieldId, name: string): Phrase =>
  spokenValue(id, holds(id) === 'number' && fieldOf(id).unit !== 'in' && begins.has(name) ? 'strict' : undefined);

/** Name, link and value. */
const plainly = (id: FieldId): Phrase => {
  const hedged = (value: Phrase): Phrase => (holds(id) === 'number' ? seq(before, value, after) : value);
  return byName(id, (name) => seq(named(id, name), linksTo(fieldOf(id).unit), hedged(valueAfter(id, name))));
};

/** Name, side and value; "right around ninety" is a hedge. */
const withSideBetween = (id: FieldId): Phrase =>
  seldom(
    byName(id, (name) => seq(named(id, name), sideBetween, valueAfter(id, name))),
    rare.later,
  );

const isSided = (id: FieldId): boolean => fieldOf(id).perSide;
/** "Rear toe front": the front of the tyres on the rear axle is said in full. */
const whereOf = (id: FieldId): Phrase => (isSided(id) ? places : /Front|Rear/.test(id) ? axlesInFull : axles);

/** Measurements by name, of all these fields together, so that what they have in common is walked once. Others may come after one
 * that is `followed`: nothing behind its value says where. */
export function byNames(
  ids: readonly FieldId[],
  end: 'measure' | 'correct',
  weigh = (_: FieldId, of: Phrase): Phrase => of,
): { readonly followed: Phrase; readonly withTail: Phrase } {
  const groups = [places, axles, axlesInFull]
    .map((where) => ({ where, of: ids.filter((id) => whereOf(id) === where) }))
    .filter(({ of }) => of.length > 0)
    .map(({ where, of }) => ({ where, said: oneOf(...of.map((id) => weigh(id, plainly(id)))) }));
  const between = ids.filter((id) => isSided(id) && !saysOne(id)).map((id) => weigh(id, withSideBetween(id)));
  const ended = (of: Phrase): Phrase => means(of, { end });
  return {
    followed: oneOf(...groups.map(({ where, said }) => ended(seq(where, said))), ...between.map(ended)),
    withTail: oneOf(...groups.map(({ where, said }) => ended(seq(said, where === places ? sidesAfter : axlesAfter)))),
  };
}

export const measureOf = (id: FieldId): Phrase => byNames([id], 'measure').followed;

/** "On the axle" is a place by itself; and what is over something is divided by it. */
const inPlace = (name: string): Phrase => (/^axle\b/.test(name) ? seq() : phrase('(on|at) the'));

/** What is read off a tape, rule or gauge alike is listened for alike: one band for all of them. */
const onTape = fields.filter(({ id, unit }) => holds(id) === 'number' && unit === 'in' && !/^half /.test(namesOf(id)[0] ?? ''));
const alike = [...new Set(onTape.map(({ id }) => readAs(id)))].map((how) => {
  const ids = onTape.map(({ id }) => id).filter((id) => readAs(id) === how);
  return { ids, value: spokenFor(ids) };
});

/** "Seventy-two and three eighths on the hub face". */
function backwards(weigh: (id: FieldId, of: Phrase) => Phrase): Phrase {
  const nameAfter = (id: FieldId): Phrase =>
    byName(
      id,
      (name) => seq(maybe(inPlace(name)), named(id, name)),
      namesOf(id).filter((name) => !/^over\b/.test(name)),
    );
  return oneOf(
    ...alike.map(({ ids, value }) =>
      means(seq(before, value, oneOf(...ids.map((id) => weigh(id, nameAfter(id))))), { end: 'measure' }),
    ),
  );
}

/** One thing on both sides: "end play left two thou, right three", "left end play ...". */
function onBothSides(id: FieldId): Phrase {
  const [said = id] = namesOf(id);
  const value = spokenValue(id, 'own');
  const right = seq(on('right'), value);
  const sideFirst = seq(on('left'), named(id, said), value);
  const left = names.includes(`${said} left`) ? sideFirst : oneOf(seq(named(id, said), on('left'), value), sideFirst);
  return seq(means(left, { end: 'measure' }), means(seq(named(id, ''), right), { end: 'measure' }));
}

const numbers = fields.filter(({ id }) => holds(id) === 'number').map(({ id }) => id);
const choices = fields.filter(({ id }) => holds(id) === 'choice').map(({ id }) => id);
export const namedFields = fields.filter(({ id }) => holds(id) !== 'choice').map(({ id }) => id);

const itself = (id: FieldId): Phrase => means(means(spokenValue(id), { set: { field: id } }), { end: 'measure' });
const poundAxle: Phrase = means(
  means(oneOf(seq(wholes(1000, 12_000, 50), phrase('[pound] axle')), seq(spokenInThousands, phrase('[axle]'))), {
    set: { field: 'capacity' },
  }),
  { end: 'measure' },
);
const itIsA: Phrase = maybe(seldom(phrase("(it's|it is) [(a|an)]"), rare.stage));
/** Its letters tell what it is. */
const bearingItself: Phrase = means(means(letteredBearing, { set: { field: 'bearing' } }), { end: 'measure' });
const loadRange: Phrase = phrase('load range (b|c|d|e|f|g)');
/** "Five on five bolt pattern", "twelve by two brakes", "S T two oh five seventy five R fifteen load range C". */
const withItsName = (id: FieldId): Phrase => {
  const tails = [...fieldOf(id).said.slice(0, most).map(words), ...(id === 'tyreSize' ? [loadRange] : [])];
  return means(means(seq(spokenValue(id), maybe(seldom(oneOf(...tails), rare.later))), { set: { field: id } }), {
    end: 'measure',
  });
};
/** What is seen to be a brake, a thread or a tyre by its form. */
const tokens: readonly FieldId[] = ['boltPattern', 'brakeSize', 'studThread', 'tyreSize'];

const quantity = (...parts: readonly Phrase[]): Phrase => means(seq(...parts), { end: 'quantity' });

/** What is waited for may be said without its name; of both sides in one breath. */
function bare(id: FieldId): Phrase {
  if (holds(id) !== 'number') return itself(id);
  const value = spokenValue(id);
  const hedgedValue = seq(maybe(seldom(phrase("(it's|it is)"), rare.stage)), before, value, after);
  if (!fieldOf(id).perSide) return quantity(hedgedValue);
  return oneOf(
    quantity(places, hedgedValue),
    quantity(value, seldom(bothSides, 1)),
    seq(quantity(on('left'), value), quantity(on('right'), value)),
    seldom(seq(quantity(value, on('left')), quantity(value, on('right'))), 1),
  );
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

/** A value that nothing waits for, without a name: the dialogue asks of what. */
const loose: Phrase = oneOf(
  quantity(places, before, looseAmount, after),
  seldom(seq(quantity(on('left'), looseAmount), quantity(on('right'), looseAmount)), 1),
);

/** A name of several fields; the value tells which, so that the sample leaves it open. */
const byValue: Phrase = (() => {
  const rows = [...shared]
    .filter((name) => !sizeNames.has(name) && !ambiguous.test(name))
    .map((name) => ({ name, meant: numbers.filter((id) => fieldOf(id).said.includes(name) && fieldOf(id).said[0] !== name) }))
    .filter(({ meant }) => meant.length > 0);
  const [sided, others] = [rows.filter(({ meant }) => meant.every(isSided)), rows.filter(({ meant }) => !meant.every(isSided))];
  const plain = ({ name, meant }: (typeof rows)[number]): Phrase =>
    seq(words(name), oneOf(...meant.map((id) => seq(linksTo(fieldOf(id).unit), spokenValue(id)))));
  const between = ({ name, meant }: (typeof rows)[number]): Phrase =>
    seq(words(name), sideBetween, oneOf(...meant.map((id) => spokenValue(id))));
  return means(
    oneOf(
      seq(places, oneOf(...sided.map(plain))),
      seldom(oneOf(...sided.filter(({ meant }) => !meant.some(saysOne)).map(between)), rare.later),
      seq(axles, oneOf(...others.map(plain))),
    ),
    { end: 'measure' },
  );
})();

/** All that measures, ready for what may be said in the same breath. */
export function measures(waited: readonly FieldId[]): Phrase {
  const weigh = (id: FieldId, of: Phrase): Phrase =>
    waited.length > 0 && !waited.includes(id) ? seldom(of, rare.notWaited) : of;
  const { followed, withTail } = byNames(namedFields, 'measure', weigh);
  const more: Phrase = lazy(() => oneOf(seq(followed, maybe(seldom(more, 1))), withTail));
  // Of hundreds two may be run together.
  const sided = numbers.filter((id) => isSided(id) && !saysOne(id) && ratio(fieldOf(id).max ?? '1') <= 500);
  return oneOf(
    more,
    seq(itIsA, poundAxle, maybe(seq(itself('boltPattern'), maybe(more)))),
    seq(itself('boltPattern'), maybe(more)),
    ...choices.map((id) => weigh(id, itself(id))),
    ...tokens.map((id) => seldom(seq(itIsA, weigh(id, withItsName(id))), rare.token)),
    seldom(seq(itIsA, bearingItself), rare.token),
    seldom(byValue, rare.shared),
    ...sided.map((id) => seldom(weigh(id, onBothSides(id)), 1)),
    seldom(backwards(weigh), rare.loose),
    ...waited.map(bare),
    ...pairs(waited),
    seldom(loose, rare.loose + (waited.length > 0 ? rare.unfit : 0)),
  );
}
