// What can be said as the value of each field: numbers in its plausible band and step, tokens that exist, choices.
import { type Field, type FieldId, fieldOf, type UnitId } from '#data';
import { type Holds, holds } from '../fields.ts';
import { anyOf, lazy, maybe, means, oneOf, type Phrase, phrase, seldom, seq, word } from '../phrase.ts';
import { boltPattern, brakeSize, thread, tyre } from '../say/token.ts';
import { choiceWords } from '../words/choices.ts';
import { cardinal } from '../words/numbers.ts';
import {
  decimals,
  digitNames,
  feet,
  longCount,
  parts,
  shared,
  spokenAs,
  spokenCharacters,
  tape,
  thousands,
  thousandths,
  wholes,
} from './numbers.ts';

/** `strict`: with its unit; `own`: in no unit but the field's. */
type Narrowed = 'strict' | 'own';

/** A value, with the unit where it is said. Sampling gives its value in the unit said, or the field's usual one. */
export function spokenValue(id: FieldId, narrowed?: Narrowed): Phrase {
  return shared(`value ${id} ${narrowed}`, () => make(fieldOf(id), narrowed));
}

/** Fields with equal answers are read off alike: in the same unit, by the same parts. */
export const readAs = (id: FieldId): string => {
  const { unit, step, max } = fieldOf(id);
  return `${unit} ${step} ${inThousandths(1 / ratio(step ?? '1'), ratio(max ?? '100'))}`;
};

/** A number as any of these fields has it, which are read off alike. */
export function spokenFor(ids: readonly FieldId[]): Phrase {
  const rows = ids.map(fieldOf);
  const [first] = rows;
  if (!first) throw new TypeError('spokenFor() needs a field');
  const min = String(Math.min(...rows.map((row) => ratio(row.min ?? '0'))));
  const max = String(Math.max(...rows.map((row) => ratio(row.max ?? '100'))));
  return lazy(() => numberOf({ ...first, min, max }, 'own'));
}

function make(field: Field, narrowed: Narrowed | undefined): Phrase {
  const kind = holds(field.id);
  if (kind === 'choice') return choicesOf(field.id);
  if (kind !== 'number') return tokens[kind](field.id);
  return numberOf(field, narrowed);
}

/** The unit's words after a number; said or left out. */
const unitSaid: Readonly<Partial<Record<UnitId, string>>> = {
  in: '(inches|inch)',
  lb: 'pounds',
  'lbf.ft': 'foot (pounds|pound)',
  psi: '(psi|pounds)',
  degF: 'degrees [fahrenheit]',
  V: 'volts',
  A: 'amps',
  ohm: 'ohms',
  mi: 'miles',
  mm: '(millimeters|millimetres)',
  deg: 'degrees',
};

/** The same in a unit that is not the field's own; `seldom` in an inch shop. */
const inUnit = (unit: UnitId, of: Phrase, said: string): Phrase => means(seq(of, phrase(said)), { set: { unit } });
const foreign: Readonly<Partial<Record<UnitId, (low: number, high: number) => Phrase>>> = {
  in: (low, high) => inUnit('mm', wholes(Math.max(1, low * 25.4), high * 25.4), '(millimetres|millimetre)'),
  'lbf.ft': (low, high) => inUnit('N.m', wholes(low * 1.36, high * 1.35), '(newton metres|newton metre)'),
  psi: () => oneOf(inUnit('kPa', wholes(70, 990, 10), 'kilopascals'), inUnit('bar', decimals(1, 9, 1), 'bar')),
  lb: (low, high) => inUnit('kg', wholes(low / 2.2, high / 2.21, 10), '(kilos|kilograms)'),
};
const rare = { foreign: 2.5, feet: 2, decimal: 1.5, offStep: 1.5, otherForm: 1 };

function numberOf(field: Field, narrowed: Narrowed | undefined): Phrase {
  const [low, high, size] = [ratio(field.min ?? '0'), ratio(field.max ?? '100'), 1 / ratio(field.step ?? '1')];
  const number = shapes(field, low, high, size);
  const below = () => seq(means(oneOf(word('minus'), word('negative')), { negative: true }), shapes(field, 0, -low, size));
  const signed = low < 0 ? oneOf(number, below()) : number;
  const onTape = field.unit === 'in' && size > 1 && size < 100;
  const inFeet = onTape && high >= 60 ? [seldom(feet(low, high, size), rare.feet)] : [];
  const inDecimals = onTape && high >= 20 ? [seldom(decimals(low, high, 3), rare.decimal)] : [];
  const fromOneInch = onTape && low <= 1 && high >= 1 ? [seldom(anInchAnd(size), rare.otherForm)] : [];
  const said = phrase((!inThousandths(size, high) && field.unit && unitSaid[field.unit]) || '');
  const other = field.unit && narrowed !== 'own' && (field.unit !== 'in' || onTape) ? foreign[field.unit] : undefined;
  return oneOf(
    seq(oneOf(signed, ...inDecimals), narrowed === 'strict' ? said : maybe(said)),
    ...inFeet,
    ...fromOneInch,
    ...(other
      ? [
          seldom(
            lazy(() => other(low, high)),
            rare.foreign,
          ),
        ]
      : []),
  );
}

export const ratio = (text: string) =>
  text
    .split('/')
    .map(Number)
    .reduce((top, bottom) => top / bottom);

const inThousandths = (size: number, high: number): boolean => size === 1000 && high <= 0.5;

/** By what the tape or gauge resolves: `size` parts to one. */
function shapes(field: Field, low: number, high: number, size: number): Phrase {
  if (field.id === 'odometer') return longCount();
  if (inThousandths(size, high)) return thousandths(Math.min(high, 0.2));
  if (size === 1000) return oneOf(decimals(low, high, 3), tape(low, high, 16));
  if (size === 100) return oneOf(decimals(low, high, 2), tape(low, high, 16));
  if (size === 10) return oneOf(wholes(0, high), decimals(low, high, 1));
  if (size > 1) return tape(Math.max(0, low), high, size);
  const step = 1 / size;
  const inSteps = wholes(Math.max(0, low), high, step);
  return step > 1 && high <= 1000 ? oneOf(inSteps, seldom(wholes(Math.max(0, low), high, step / 5), rare.offStep)) : inSteps;
}

/** "An inch and three quarters". */
const anInchAnd = (size: number): Phrase =>
  seq(means(phrase('[an] inch'), { add: '1' }), word('and'), parts(Math.min(size, 16), false));

/** Of an axle's rating: "three point five K". */
export const spokenInThousands: Phrase = lazy(() => seq(thousands(1, 12), word('k')));

function choicesOf(id: FieldId): Phrase {
  const rows = choiceWords.filter(({ field }) => field === id);
  return oneOf(...rows.map(({ choice, said }) => means(anyOf(said.slice(0, 3)), { characters: choice })));
}

/** Patterns, brakes, threads and tyres in use on trailers (common practice, no source); anything else is typed. */
const patterns = [
  '4x4',
  '5x9/2',
  '5x19/4',
  '5x5',
  '5x11/2',
  '6x11/2',
  '8x13/2',
  '5x100',
  '5x1143/10',
  '5x120',
  '6x1397/10',
  '8x275',
];
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
  spokenAs(
    rows.map((value) => [value, [say(value).toLowerCase()]] as const),
    (characters) => ({ characters }),
  );

const tokens: Readonly<Record<Exclude<Holds, 'number' | 'choice'>, (id: FieldId) => Phrase>> = {
  boltPattern: () =>
    oneOf(
      exactly(patterns, patternSaid),
      seldom(exactly(patterns.filter(isMetric), metricSaid), rare.otherForm),
      seldom(oneOf(...circlesSaid.map(([value, said]) => means(phrase(said), { characters: value }))), rare.otherForm),
    ),
  brakeSize: () => exactly(brakes, (value) => brakeSize(value, 'in', true)),
  thread: () => exactly(threads, (value) => thread(value, true)),
  tyre: () => exactly(['ST', 'LT', ''].flatMap(tyresOf), (value) => tyre(value, true)),
  bearing: (id) => (id === 'seal' ? digitsOf(4, 6) : oneOf(letteredBearing, digitsOf(4, 5))),
  serial: () => characterRun(4, 10),
  vin: () => characterRun(17, 17),
};

const patternSaid = (value: string) => boltPattern(value, isMetric(value) ? 'mm' : 'in', true).replace(' millimetres', '');
/** The circle as its figures stand written. */
const circlesSaid: readonly (readonly [string, string])[] = [
  ['5x9/2', 'five on four point five'],
  ['5x19/4', 'five on four [point] (seventy five|seven five)'],
  ['5x11/2', 'five on five point five'],
  ['6x11/2', 'six on five point five'],
  ['8x13/2', 'eight on six point five'],
  ['5x1143/10', 'five (on|by) one fourteen point three'],
  ['6x1397/10', 'six (on|by) one thirty nine point seven'],
];
const metricSaid = (value: string) => patternSaid(value).replace(' on ', ' by ');
const isMetric = (value: string) => Number(value.split('x')[1]) > 95;
const tyresOf = (prefix: string) =>
  widths.flatMap((width) =>
    ['75', '80', '85'].flatMap((ratio) =>
      ['13', '14', '15', '16'].flatMap((rim) => makes(prefix).map((make) => `${prefix}${width}/${ratio}${make}${rim}`)),
    ),
  );

/** Without the R where no letters stand before. */
const makes = (prefix: string): readonly string[] => (prefix === '' ? ['R', '-'] : ['R']);

const digit = spokenCharacters(digitNames);
/** "Forty-nine", but not "forty", which may have its nine after it. */
const pair = lazy(() =>
  spokenCharacters(
    Array.from({ length: 90 }, (_, at) => at + 10)
      .filter((n) => n < 20 || n % 10 > 0)
      .map((n) => [String(n), cardinal(n)] as const),
  ),
);

/** Digit by digit, or some of them in pairs: "sixty-eight one forty-nine". */
function digitsOf(least: number, most: number): Phrase {
  const from: Phrase[] = [seq()];
  for (let left = 1; left <= most; left += 1) {
    const one = seq(digit, from[left - 1] ?? seq());
    const two = left > 1 ? [seldom(seq(pair, from[left - 2] ?? seq()), 1)] : [];
    const more = oneOf(one, ...two);
    from.push(most - left >= least ? maybe(more) : more);
  }
  return from[most] ?? seq();
}

export const letteredBearing: Phrase = lazy(() => seq(spokenCharacters(prefixes), digitsOf(5, 6)));

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

/** A number that says enough of itself to be reckoned with, whatever it is of. */
export const looseAmount: Phrase = lazy(() => {
  const of = (unit: UnitId, value: Phrase, said = unitSaid[unit] ?? ''): Phrase =>
    means(seq(value, phrase(said)), { set: { unit } });
  return oneOf(
    seq(tape(1, 120, 16), maybe(phrase(unitSaid.in ?? ''))),
    seq(parts(16, true), phrase(unitSaid.in ?? '')),
    seldom(feet(24, 120, 16), rare.feet),
    decimals(0, 20, 3),
    thousandths(0.1),
    of('lbf.ft', wholes(5, 500)),
    of('psi', wholes(5, 120), 'psi'),
    seldom(of('bar', oneOf(decimals(1, 9, 1), tape(1, 9, 2)), 'bar'), rare.foreign),
    seldom(of('N.m', wholes(10, 600), 'newton metres'), rare.foreign),
    of('lb', wholes(100, 20_000, 50)),
    of('V', oneOf(wholes(1, 20), decimals(0, 20, 1))),
    of('A', oneOf(wholes(1, 40), decimals(0, 40, 1))),
  );
});

/** Any ordinary length, for "no, make that ..." when nothing says of what. */
export const anyLength = lazy(() => oneOf(tape(0, 120, 16), parts(32, true)));
