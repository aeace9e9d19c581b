// What must hold of the language whatever is said: values survive being spoken, garbage does no harm, the grammar and the parser agree.
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { expect, it } from 'vitest';
import { type Field, type FieldId, fields, units } from '#data';
import { sayField, sayValue, showField, showValue, understand } from '#intents';
import { grammar, sample, wordList } from '#intents/grammar';
import { costOf } from '../support/walk.ts';

const numeric = fields.filter((field) => field.unit !== undefined && field.min !== undefined);

/** A value that the field's tape or gauge can show, within its band. */
function plausibleValue(field: Field): fc.Arbitrary<string> {
  const step = new Fraction(field.step ?? 1);
  const first = new Fraction(field.min ?? 0).div(step).ceil();
  const last = new Fraction(field.max ?? 0).div(step).floor();
  return fc.bigInt({ min: first.n * first.s, max: last.n * last.s }).map((count) => new Fraction(count).mul(step).toFraction());
}

const fieldAndValue = fc.constantFrom(...numeric).chain((field) => plausibleValue(field).map((value) => ({ field, value })));

function only(text: string, expects?: { fields: FieldId[]; yesNo: boolean }) {
  const { intents, unclaimed } = understand(text, expects);
  return { kind: intents.map(({ kind }) => kind), intent: intents[0], unclaimed };
}

it('hears the value that it spoke, of every field', () => {
  fc.assert(
    fc.property(fieldAndValue, ({ field, value }) => {
      const text = `${sayField(field.id)} ${sayValue(field.id, { value })}`;
      expect({ text, ...only(text) }).toMatchObject({ kind: ['measure'], intent: { field: field.id, value, unit: field.unit } });
    }),
    { numRuns: 3000 },
  );
});

it('reads the value that it showed, in American spelling and out of it', () => {
  fc.assert(
    fc.property(fieldAndValue, fc.constantFrom('british' as const, 'american' as const), ({ field, value }, spelling) => {
      const text = `${sayField(field.id, { spelling })} ${showValue(field.id, { value }, { spelling })}`;
      expect({ text, ...only(text) }).toMatchObject({ kind: ['measure'], intent: { field: field.id, value } });
    }),
    { numRuns: 3000 },
  );
});

const hedged = fc.record({
  value: fc.integer({ min: 1, max: 4000 }).map((count) => new Fraction(count, 32).toFraction()),
  hedge: fc.constantFrom('under', 'over', 'about', 'atLeast', 'atMost'),
});

it('keeps hedges, ranges and tolerances through speech and show', () => {
  fc.assert(
    fc.property(hedged, fc.constantFrom(sayValue, showValue), ({ value, hedge }, print) => {
      expect(only(print(undefined, { value, unit: 'in', hedge })).intent).toMatchObject({ value, unit: 'in', hedge });
      const to = new Fraction(value).add(1).toFraction();
      expect(only(print(undefined, { value, unit: 'in', to })).intent).toMatchObject({ value, unit: 'in', to });
      expect(only(print(undefined, { value, unit: 'in', plusMinus: '1/16' })).intent).toMatchObject({
        value,
        unit: 'in',
        plusMinus: '1/16',
      });
    }),
    { numRuns: 500 },
  );
});

it('brings every unit through speech and show, in both spellings, with hedge, range and tolerance', () => {
  const value = fc.integer({ min: 1, max: 4000 }).map((count) => new Fraction(count, 16).toFraction());
  const unit = fc.constantFrom(...units.map(({ id }) => id).filter((id) => id !== 'ft'));
  fc.assert(
    fc.property(value, unit, fc.constantFrom('british' as const, 'american' as const), (value, unit, spelling) => {
      const to = new Fraction(value).add(1).toFraction();
      const forms = [{}, { hedge: 'about' as const }, { to }, { plusMinus: '1/16' }];
      for (const print of [sayValue, showValue]) {
        for (const form of forms) {
          const text = print(undefined, { value, unit, ...form }, { spelling });
          expect({ text, ...only(text) }).toMatchObject({ kind: [expect.any(String)], intent: { value, unit, ...form } });
        }
      }
    }),
    { numRuns: 1500 },
  );
});

const digits = (least: number, most: number) => fc.stringMatching(new RegExp(`^[1-9][0-9]{${least - 1},${most - 1}}$`));
const tokens: readonly (readonly [FieldId, fc.Arbitrary<string>])[] = [
  [
    'boltPattern',
    fc
      .tuple(fc.integer({ min: 3, max: 12 }), fc.integer({ min: 28, max: 96 }))
      .map(([n, d]) => `${n}x${new Fraction(d, 8).toFraction()}`),
  ],
  [
    'brakeSize',
    fc
      .tuple(fc.integer({ min: 7, max: 16 }), fc.integer({ min: 4, max: 20 }))
      .map(([d, w]) => `${d}x${new Fraction(w, 4).toFraction()}`),
  ],
  ['innerBearing', fc.tuple(fc.constantFrom('', 'L', 'LM', 'JL', 'JLM', 'HM'), digits(4, 6)).map((parts) => parts.join(''))],
  ['seal', digits(4, 6)],
  ['studThread', fc.constantFrom('1/2-20', '9/16-18', '5/8-18', 'M12x1.5', 'M14x1.5', '7/16-20')],
  [
    'tyreSize',
    fc
      .tuple(
        fc.constantFrom('ST', 'LT', 'P', ''),
        fc.integer({ min: 29, max: 60 }),
        fc.constantFrom(70, 75, 80, 85),
        fc.integer({ min: 12, max: 19 }),
      )
      .map(([p, w, r, d]) => `${p}${w * 5}/${r}R${d}`),
  ],
  ['serial', fc.stringMatching(/^[A-HJ-NPR-Z]{2}[0-9]{5}$/)],
];

it('hears the part numbers, patterns and sizes that it spoke', () => {
  const one = fc.constantFrom(...tokens).chain(([field, value]) => value.map((text) => ({ field, value: text })));
  fc.assert(
    fc.property(one, ({ field, value }) => {
      for (const print of [sayValue, showValue]) {
        const text = `${sayField(field)} ${print(field, { value })}`;
        expect({ text, ...only(text) }).toMatchObject({ kind: ['measure'], intent: { field, value } });
      }
    }),
    { numRuns: 2000 },
  );
});

it('hears every choice that it spoke', () => {
  for (const { id, choices } of fields) {
    for (const value of choices ?? [])
      expect({ id, ...only(sayValue(id, { value })) }).toMatchObject({ intent: { kind: 'measure', field: id, value } });
  }
});

it('gives every field a label', () => {
  for (const { id } of fields) expect(showField(id)).not.toBe('');
});

const numberish =
  /[0-9½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]|zero|oh|\bo\b|nought|naught|aught|ought|nil|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|teen|twenty|thirty|fort|fifty|hundred|thousand|million|billion|trillion|half|quarter|dozen|score|pair|couple|grand|inch|foot|feet|yard|mile|ton|pound/i;

/** Quick by default; AXLEHAND_GARBAGE=100000 is the whole number. */
const garbageRuns = Number(process.env.AXLEHAND_GARBAGE ?? 20_000);

it('takes no measurement out of garbage, and never fails', { timeout: 600_000 }, () => {
  const garbage = fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: 200 }),
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc.lorem({ maxCount: 12 }),
  );
  fc.assert(
    fc.property(garbage, (text) => {
      const { intents } = understand(text);
      const measured = intents.some(
        (intent) => intent.kind === 'quantity' || (intent.kind === 'measure' && intent.unit !== undefined),
      );
      expect(measured && !numberish.test(text)).toBe(false);
    }),
    { numRuns: garbageRuns },
  );
});

const vocabulary = wordList();

it('never fails on its own words in any order, and says which words it did not claim', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...vocabulary), { maxLength: 30 }), (words) => {
      const { text, unclaimed } = understand(words.join(' '));
      for (const word of unclaimed) expect(text).toContain(word);
    }),
    { numRuns: 5000 },
  );
});

/** mulberry32: small, seeded, good enough to draw sentences. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const waits: readonly ({ fields: FieldId[]; yesNo: boolean } | undefined)[] = [
  undefined,
  { fields: ['hubFace'], yesNo: false },
  { fields: ['endPlay'], yesNo: false },
  { fields: ['wheelNutTorque'], yesNo: true },
  { fields: ['springType', 'slung'], yesNo: false },
];

it('parses every sentence of the grammar to the intents that made it', () => {
  const random = seeded(20260101);
  for (const expects of waits) {
    for (let count = 0; count < 1500; count += 1) {
      const { text, intents } = sample(random, expects);
      const got = understand(text, expects).intents;
      expect({ text, got }).toMatchObject({ text, got: intents });
      expect({ text, length: got.length }).toEqual({ text, length: intents.length });
    }
  }
});

it('walks every sentence of the grammar to an accepting state', () => {
  const random = seeded(7);
  for (let count = 0; count < 1000; count += 1) {
    const { text } = sample(random);
    expect({ text, accepted: Number.isFinite(costOf(grammar(), text.split(' '))) }).toEqual({ text, accepted: true });
  }
});
