// What can be said as the value of each field: numbers in its plausible band and step, tokens that exist, choices.
import { type Field, type FieldId, fieldOf, type UnitId } from '#data';
import { type Holds, holds } from '../fields.ts';
import { anyOf, lazy, maybe, means, oneOf, type Phrase, phrase, seq, word } from '../phrase.ts';
import { boltPattern, brakeSize, thread, tyre } from '../say/token.ts';
import { choiceWords } from '../words/choices.ts';
import { decimals, digitNames, feet, longCount, parts, spokenCharacters, tape, thousandths, wholes, words } from './numbers.ts';

/** A value, with the unit where it is said. Sampling gives its value in the field's usual unit. */
export function spokenValue(id: FieldId): Phrase {
  const known = built.get(id);
  if (known) return known;
  const made = lazy(() => make(fieldOf(id)));
  built.set(id, made);
  return made;
}

const built = new Map<FieldId, Phrase>();

function make(field: Field): Phrase {
  const kind = holds(field.id);
  if (kind === 'choice') return choicesOf(field.id);
  if (kind !== 'number') return tokens[kind](field.id);
  return numberOf(field);
}

/** The unit's words after a number; said or left out. */
const unitSaid: Readonly<Partial<Record<UnitId, string>>> = {
  in: '(inches|inch)',
  lb: '(pounds|pound)',
  'lbf.ft': 'foot (pounds|pound)',
  psi: '(psi|pounds)',
  degF: 'degrees',
  V: 'volts',
  A: 'amps',
  ohm: 'ohms',
  mi: 'miles',
  mm: '(millimeters|millimetres)',
  deg: 'degrees',
};

const unitPhrase = (unit: UnitId | undefined): Phrase => {
  const said = unit && unitSaid[unit];
  return said ? maybe(phrase(said)) : seq();
};

function numberOf(field: Field): Phrase {
  const [low, high, size] = [ratio(field.min ?? '0'), ratio(field.max ?? '100'), 1 / ratio(field.step ?? '1')];
  const number = shapes(field, low, high, size);
  const below = () => seq(means(oneOf(word('minus'), word('negative')), { negative: true }), shapes(field, 0, -low, size));
  const signed = low < 0 ? oneOf(number, below()) : number;
  const inFeet = field.unit === 'in' && high >= 60 && size > 1 && size < 100 ? [feet(low, high, size)] : [];
  return oneOf(seq(signed, unitPhrase(field.unit)), ...inFeet);
}

const ratio = (text: string) =>
  text
    .split('/')
    .map(Number)
    .reduce((top, bottom) => top / bottom);

/** By what the tape or gauge resolves: `size` parts to one. */
function shapes(field: Field, low: number, high: number, size: number): Phrase {
  if (field.id === 'odometer') return longCount();
  if (size === 1000 && high <= 0.5) return thousandths(Math.min(high, 0.2));
  if (size === 1000) return oneOf(decimals(low, high, 3), tape(low, high, 16));
  if (size === 100) return oneOf(decimals(low, high, 2), tape(low, high, 16));
  if (size === 10) return oneOf(wholes(0, high), decimals(low, high, 1));
  if (size > 1) return tape(Math.max(0, low), high, size);
  return wholes(Math.max(0, low), high, 1 / size);
}

function choicesOf(id: FieldId): Phrase {
  const rows = choiceWords.filter(({ field }) => field === id);
  return oneOf(...rows.map(({ choice, said }) => means(anyOf(said.slice(0, 3)), { characters: choice })));
}

/** Patterns, brakes, threads and tyres in use on trailers (common practice, no source); anything else is typed. */
const patterns = ['4x4', '5x9/2', '5x19/4', '5x5', '5x11/2', '6x11/2', '8x13/2', '8x275'];
const brakes = ['7x5/4', '10x3/2', '10x9/4', '12x2', '49/4x27/8', '49/4x4', '49/4x5'];
const threads = ['7/16-20', '1/2-20', '9/16-18', '5/8-18', '1/2-13', '9/16-12', '5/8-11', '3/4-16'];
const widths = [145, 165, 175, 185, 195, 205, 215, 225, 235, 245, 255, 265, 275, 285];
const prefixes: readonly (readonly [string, string])[] = [
  ['L', 'l'],
  ['LM', 'l m'],
  ['JL', 'j l'],
  ['JLM', 'j l m'],
  ['JM', 'j m'],
  ['HM', 'h m'],
  ['M', 'm'],
];

const exactly = (rows: readonly string[], say: (value: string) => string): Phrase =>
  oneOf(...rows.map((value) => means(words(say(value).toLowerCase()), { characters: value })));

const tokens: Readonly<Record<Exclude<Holds, 'number' | 'choice'>, (id: FieldId) => Phrase>> = {
  boltPattern: () =>
    exactly(patterns, (value) => boltPattern(value, isMetric(value) ? 'mm' : 'in', true).replace(' millimetres', '')),
  brakeSize: () => exactly(brakes, (value) => brakeSize(value, 'in', true)),
  thread: () => exactly(threads, (value) => thread(value, true)),
  tyre: () => exactly(['ST', 'LT', ''].flatMap(tyresOf), (value) => tyre(value, true)),
  bearing: (id) => (id === 'seal' ? digitsOf(4, 6) : oneOf(seq(spokenCharacters(prefixes), digitsOf(5, 6)), digitsOf(4, 5))),
  serial: () => characterRun(4, 10),
  vin: () => characterRun(17, 17),
};

const isMetric = (value: string) => Number(value.split('x')[1]) > 95;
const tyresOf = (prefix: string) =>
  widths.flatMap((width) =>
    ['75', '80', '85'].flatMap((ratio) => ['13', '14', '15', '16'].map((rim) => `${prefix}${width}/${ratio}R${rim}`)),
  );

const digit = spokenCharacters(digitNames);

function digitsOf(least: number, most: number): Phrase {
  return run(digit, least, most);
}

function run(one: Phrase, least: number, most: number): Phrase {
  let again: Phrase = seq();
  for (let count = most; count > 0; count -= 1) again = count > least ? maybe(seq(one, again)) : seq(one, again);
  return again;
}

const alphabet =
  'alpha bravo charlie delta echo foxtrot golf hotel juliett kilo lima mike november papa romeo sierra tango uniform victor whiskey xray yankee zulu';
const letterOrDigit = spokenCharacters([
  ...alphabet.split(' ').map((said) => [said.charAt(0).toUpperCase(), said] as const),
  ...digitNames,
]);

const characterRun = (least: number, most: number) => run(letterOrDigit, least, most);

/** Any ordinary length, for "no, make that ..." when nothing says of what. */
export const anyLength = lazy(() => oneOf(tape(0, 120, 16), parts(32, true)));
