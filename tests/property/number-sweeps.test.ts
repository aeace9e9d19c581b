// Every fraction, decimal, length and number of the ranges a shop uses, in each way it is said. All exact.
import Fraction from 'fraction.js';
import { expect, it } from 'vitest';
import { understand } from '#intents';
import { decimalReadings, mixedReadings, schoolbook, shopReadings, twoDigits } from '../support/said-numbers.ts';

interface Case {
  readonly text: string;
  readonly value: string;
}

/** The cases whose text does not give exactly this one value. */
function wrong(cases: Iterable<Case>): { seen: number; wrong: string[] } {
  const found: string[] = [];
  let seen = 0;
  for (const { text, value } of cases) {
    seen += 1;
    const { intents } = understand(text);
    const [first] = intents;
    const got = first && 'value' in first ? first.value : undefined;
    if (intents.length !== 1 || got !== value) found.push(`${text}: ${JSON.stringify(got)} instead of ${value}`);
  }
  return { seen, wrong: found.slice(0, 20) };
}

function* fractions(): Generator<Case> {
  for (let whole = 0; whole <= 120; whole += 1) {
    for (let bottom = 2; bottom <= 64; bottom *= 2) {
      for (let top = 1; top < bottom; top += 2) {
        const value = new Fraction(top, bottom).add(whole).toFraction();
        for (const text of mixedReadings(whole, top, bottom)) yield { text: `hub face ${text}`, value };
      }
    }
  }
}

function* decimals(): Generator<Case> {
  for (let n = 1; n <= 9999; n += 1) {
    const value = new Fraction(n, 1000).toFraction();
    for (const text of decimalReadings(n)) yield { text, value };
  }
}

function* feetAndInches(): Generator<Case> {
  for (let feet = 1; feet <= 20; feet += 1) {
    for (let quarters = 1; quarters < 48; quarters += 1) {
      const [inches, top] = [Math.floor(quarters / 4), quarters % 4];
      const value = new Fraction(quarters, 4).add(feet * 12).toFraction();
      const part = ['', 'and a quarter', 'and a half', 'and three quarters'][top] ?? '';
      const typed = [inches || '', ['', '1/4', '1/2', '3/4'][top]].filter(Boolean).join(' ');
      const said = inches === 0 ? part.replace('and ', '') : `${twoDigits(inches)} ${part}`.trim();
      yield { text: `${twoDigits(feet)} foot ${said}`, value };
      yield { text: `${twoDigits(feet)} feet ${said} inches`, value };
      yield { text: `${feet}' ${typed}"`, value };
      yield { text: `${feet}ft ${typed}in`, value };
    }
  }
}

function* numbers(): Generator<Case> {
  for (let n = 10; n <= 99_999; n += n < 10_000 ? 1 : 7) {
    for (const text of shopReadings(n)) yield { text: `odometer ${text}`, value: String(n) };
  }
}

it('reads every half to sixty-fourth up to 120 in each spoken and typed way', () => {
  const { seen, wrong: found } = wrong(fractions());
  expect(found).toEqual([]);
  expect(seen).toBeGreaterThan(50_000);
});

it('reads every thousandth up to 9.999', () => {
  const { seen, wrong: found } = wrong(decimals());
  expect(found).toEqual([]);
  expect(seen).toBeGreaterThan(29_000);
});

it('reads feet, inches and quarters up to twenty feet', () => {
  const { seen, wrong: found } = wrong(feetAndInches());
  expect(found).toEqual([]);
  expect(seen).toBeGreaterThan(3_500);
});

it('reads numbers of two to five digits in their shop readings', () => {
  const { seen, wrong: found } = wrong(numbers());
  expect(found).toEqual([]);
  expect(seen).toBeGreaterThan(60_000);
});

it('reads six-digit numbers schoolbook', () => {
  const cases = Array.from({ length: 2000 }, (_, at) => 100_000 + at * 449).map((n) => ({
    text: `odometer ${schoolbook(n)}`,
    value: String(n),
  }));
  expect(wrong(cases).wrong).toEqual([]);
});
