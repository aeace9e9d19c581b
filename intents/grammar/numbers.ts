// Numbers as phrases: every way a shop says them within a field's band, with the value each word adds. No fraction without "and" after
// a whole: "eighteen three quarters" is what "eight and three quarters" is misheard as.
import Fraction from 'fraction.js';
import { lazy, type Meaning, maybe, means, oneOf, type Phrase, seq, word } from '../phrase.ts';
import { spokenFraction } from '../words/fractions.ts';
import { cardinal, digitByDigit } from '../words/numbers.ts';

const split = (text: string) => text.replaceAll('-', ' ').split(' ').filter(Boolean);
export const words = (text: string): Phrase => seq(...split(text).map(word));

interface Branch {
  readonly next: Map<string, Branch>;
  value?: string;
}

/** Spoken forms that share their first words share their branches, so that walking stays cheap. */
export function spokenAs(
  rows: Iterable<readonly [value: string, said: readonly string[]]>,
  meaning: (value: string) => Meaning = (add) => ({ add }),
): Phrase {
  const root: Branch = { next: new Map() };
  for (const [value, said] of rows) {
    for (const text of said) {
      let branch = root;
      for (const each of split(text)) {
        const next: Branch = branch.next.get(each) ?? { next: new Map() };
        branch.next.set(each, next);
        branch = next;
      }
      branch.value ??= value;
    }
  }
  return branches(root, meaning);
}

function branches(branch: Branch, meaning: (value: string) => Meaning): Phrase {
  const ways = [...branch.next].map(([each, next]) => seq(word(each), ...(isLeaf(next) ? [] : [branches(next, meaning)])));
  const leaves = [...branch.next].map(([, next]) => (isLeaf(next) ? next.value : undefined));
  const meant = ways.map((way, at) => (leaves[at] === undefined ? way : means(way, meaning(leaves[at]))));
  return branch.value === undefined ? oneOf(...meant) : oneOf(means(seq(), meaning(branch.value)), ...meant);
}

const isLeaf = (branch: Branch) => branch.next.size === 0;

/** How a shop says a whole number: schoolbook, and without "hundred" or "thousand". */
function wholeForms(n: number): string[] {
  if (n < 100) return [cardinal(n)];
  const plain = cardinal(n);
  if (n < 1000)
    return n % 100 === 0
      ? hundred(n, plain)
      : [...hundred(n, plain), `${cardinal(Math.floor(n / 100))} ${tail(n % 100)}`, ...andForms(n)];
  if (n < 10_000 && n % 100 === 0 && n % 1000 !== 0) return [`${cardinal(n / 100)} hundred`, plain];
  if (n < 10_000 && n % 100 >= 10)
    return [plain, ...andForms(n), ...(n % 1000 >= 100 ? [`${cardinal(Math.floor(n / 100))} ${cardinal(n % 100)}`] : [])];
  const rest = n % 1000;
  const clipped =
    rest > 100 && rest % 100 >= 10
      ? [`${cardinal(Math.floor(n / 1000))} thousand ${cardinal(Math.floor(rest / 100))} ${cardinal(rest % 100)}`]
      : [];
  return [plain, ...clipped];
}

const hundred = (n: number, plain: string) => (n < 200 ? [plain, `a${plain.slice(3)}`] : [plain]);
const tail = (rest: number) => (rest < 10 ? `oh ${cardinal(rest)}` : cardinal(rest));
const andForms = (n: number) => hundred(n, cardinal(n - (n % 100))).map((said) => `${said} and ${cardinal(n % 100)}`);

const made = new Map<string, Phrase>();

/** Made once: fields and contexts share the numbers that they have alike. */
export function shared(key: string, make: () => Phrase): Phrase {
  const known = made.get(key) ?? lazy(make);
  made.set(key, known);
  return known;
}

/** Whole numbers from `low` to `high`, every `step`. */
export function wholes(low: number, high: number, step = 1): Phrase {
  return shared(`wholes ${low} ${high} ${step}`, () =>
    spokenAs(range(Math.ceil(low / step) * step, high, step).map((n) => [String(n), wholeForms(n)] as const)),
  );
}

function range(low: number, high: number, step: number): number[] {
  return Array.from({ length: Math.max(0, Math.floor((high - low) / step) + 1) }, (_, at) => low + at * step);
}

/** Parts of one down to `1/size`: "a half", "three eighths", "five thirty-seconds". `alone`: nothing stands before it. */
export const parts = (size: number, alone: boolean): Phrase => shared(`parts ${size} ${alone}`, () => partsDownTo(size, alone));

function partsDownTo(size: number, alone: boolean): Phrase {
  const rows: (readonly [string, readonly string[]])[] = [];
  for (let denominator = 2; denominator <= size; denominator *= 2) {
    for (let numerator = 1; numerator < denominator; numerator += 2) {
      const spoken = spokenFraction(BigInt(numerator), BigInt(denominator)) ?? '';
      rows.push([`${numerator}/${denominator}`, numerator === 1 ? single(spoken, denominator, alone) : [spoken]]);
    }
  }
  return spokenAs(rows);
}

function single(spoken: string, denominator: number, alone: boolean): string[] {
  const name = spoken.slice(4);
  const article = denominator === 8 ? `an ${name}` : `a ${name}`;
  return alone && denominator <= 4 ? [spoken, article, name] : [spoken, article];
}

/** "seventy-two and three eighths", "seven eighths". */
export function tape(low: number, high: number, size: number): Phrase {
  if (high < 1) return parts(size, true);
  const mixed = seq(wholes(Math.max(1, low), high), maybe(seq(word('and'), parts(size, false))));
  return low < 1 ? oneOf(mixed, parts(size, true)) : mixed;
}

/** "six foot two and a half": feet with the inches that follow. */
export function feet(low: number, high: number, size: number): Phrase {
  const count = spokenAs(
    range(Math.max(2, Math.ceil(low / 12)), Math.floor(high / 12) - 1, 1).map((n) => [String(n * 12), [cardinal(n)]] as const),
  );
  const inches = seq(wholes(1, 11), maybe(seq(word('and'), parts(Math.min(size, 16), false))), maybe(word('inches')));
  return seq(count, oneOf(word('foot'), word('feet')), maybe(inches));
}

/** "one point two four nine", "point oh oh five"; `places` digits at most. */
export function decimals(low: number, high: number, places: number): Phrase {
  const digit = (place: number, again: Phrase | undefined): Phrase => {
    const rows = range(0, 9, 1).map(
      (n) => [new Fraction(n, 10 ** place).toFraction(), n === 0 ? ['oh', 'zero'] : [cardinal(n)]] as const,
    );
    return again ? seq(spokenAs(rows), maybe(again)) : spokenAs(rows);
  };
  const tail = range(1, places, 1).reduceRight<Phrase | undefined>((again, place) => digit(place, again), undefined) ?? seq();
  const whole = wholes(Math.max(0, Math.floor(low)), Math.floor(high));
  return seq(low < 1 ? maybe(whole) : whole, word('point'), tail);
}

/** Thousandths on a gauge: "point oh oh five", "five thou", "five thousandths". */
export const thousandths = (high: number): Phrase => shared(`thousandths ${high}`, () => thousandthsUpTo(high));

function thousandthsUpTo(high: number): Phrase {
  const counts = range(0, Math.round(high * 1000), 1);
  const pointed = (n: number) => {
    const digits = digitByDigit(String(n).padStart(3, '0'));
    return [`point ${digits.replaceAll('zero', 'oh')}`, `point ${digits}`];
  };
  const thou = (n: number) =>
    n === 0
      ? ['zero']
      : [`${cardinal(n)} thou`, `${cardinal(n)} thousandths`, ...(n === 1 ? ['a thousandth', 'one thousandth'] : [])];
  return spokenAs(counts.map((n) => [new Fraction(n, 1000).toFraction(), [...pointed(n), ...thou(n)]] as const));
}

/** Of so many thousands, what is said before the "K": "seven", "three point five", "three and a half". */
export function thousands(low: number, high: number): Phrase {
  const of = (n: number): readonly string[] => {
    const [whole, tenth] = [Math.floor(n), Math.round((n % 1) * 10)];
    if (tenth === 0) return [cardinal(whole)];
    const pointed = `${cardinal(whole)} point ${cardinal(tenth)}`;
    return tenth === 5 ? [pointed, `${cardinal(whole)} and a half`] : [pointed];
  };
  return spokenAs(range(low * 10, high * 10, 1).map((tenths) => [String(tenths * 100), of(tenths / 10)] as const));
}

/** Miles on an odometer. */
export function longCount(): Phrase {
  // "Four oh five thousand" is said by nobody.
  const before = (n: number) => [...wholeForms(n)].filter((said) => !/\boh\b/.test(said));
  const thousands = spokenAs(
    range(1, 999, 1).map((n) => [String(n * 1000), before(n).map((said) => `${said} thousand`)] as const),
  );
  return lazy(() => oneOf(seq(thousands, maybe(wholes(1, 999))), wholes(0, 9900, 100), wholes(1, 999)));
}

export const digitNames: readonly (readonly [string, string])[] = [
  ...range(0, 9, 1).map((n) => [String(n), cardinal(n)] as const),
  ['0', 'oh'] as const,
];

export function spokenCharacters(rows: readonly (readonly [string, string])[]): Phrase {
  return oneOf(...rows.map(([character, said]) => means(words(said), { characters: character })));
}
