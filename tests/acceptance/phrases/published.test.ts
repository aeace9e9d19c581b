// Bare quantities as published suites of general number readers have them: a handful of each, the kinds that readers miss.
// Feet and ounces come out in our inches and pounds.
import { describe, expect, it } from 'vitest';
import { understand } from '#intents';

type Case = readonly [text: string, value: string, unit?: string, to?: string];

const suites: Readonly<Record<string, readonly Case[]>> = {
  'microsoft/Recognizers-Text, Specs/Number/English/NumberModel.json': [
    ['one hundred and three and two thirds', '311/3'],
    ['a hundred thousand trillionths', '1/10000000'],
    ['twenty-three fifths', '23/5'],
    ['one hundred and thirty fifths', '26'],
    ['one hundred thirty-fifths', '20/7'],
    ['fifty - two', '52'],
    ['two hundred point zero three', '20003/100'],
    ['- 1 4/5', '-9/5'],
    ['2.5^-1', '2/5'],
    ['1.2b', '1200000000'],
    ['1 over one hundred and twenty one', '1/121'],
    ['12 hundred and fifty', '1250'],
  ],
  'microsoft/Recognizers-Text, Specs/Number/English/NumberRangeModel.json': [
    ['20~100', '20', '1', '100'],
    ['20 through 100', '20', '1', '100'],
    ['from one thousand to one thousand and five hundred', '1000', '1', '1500'],
  ],
  'microsoft/Recognizers-Text, Specs/NumberWithUnit/English/TemperatureModel.json': [
    ['40 deg celsius', '40', 'degC'],
    ['34.5 celcius', '69/2', 'degC'],
    ['-5 degree fahrenheit', '-5', 'degF'],
  ],
  'facebook/duckling, Duckling/Numeral/EN/Corpus.hs': [
    ['three thousand millions', '3000000000'],
    ['30 lakh', '3000000'],
    ['.0012G', '1200000'],
    ['one twenty two', '122'],
    ['two point two million', '2200000'],
    ['12 lkhs', '1200000'],
    ['three hundred krores', '3000000000'],
  ],
  'facebook/duckling, Duckling/Distance, Quantity and Temperature, EN/Corpus.hs': [
    ["5''", '5', 'in'],
    ['7 feet, 10 inches', '94', 'in'],
    ['2 yards, 7 feet, 10 in', '166', 'in'],
    ['10 kms, 8 meters, 6 cm', '1000806', 'cm'],
    ['between 0.002 kg and about 0.007 kg', '1/500', 'kg', '7/1000'],
    ['between 2.0 g and about 7.0 g', '1/500', 'kg', '7/1000'],
    ['2 - ~7 grams', '1/500', 'kg', '7/1000'],
    ['from 30 celsius and 40 celsius', '30', 'degC', '40'],
    ['2 degrees below zero', '-2', 'deg'],
    ['from 30 degrees to 40 degrees', '30', 'deg', '40'],
  ],
  'NVIDIA/NeMo-text-processing, en/data_inverse_text_normalization': [
    ['ten quadrillion ten trillion ten million one hundred thousand ten', '10010000010100010'],
    [
      'one quadrillion two hundred sixty four trillion three hundred one billion nine hundred thirty eight million one hundred four',
      '1264301938000104',
    ],
    ['one hundred sixty four point five eight thousand', '164580'],
    ['point one two o five', '241/2000'],
    ['one milli volt', '1/1000', 'V'],
    ['two hundred forty five miles per hour', '245', 'mph'],
  ],
  'finnfiddle/words-to-numbers, src/__tests__/index.js': [
    ['twenty-thousand, five-hundred and sixty-nine', '20569'],
    ['won huntred', '100'],
    ['fifty sixty three thousand', '5063000'],
    ['a thousand, one hundred eleven', '1111'],
    ['five quintillion', '5000000000000000000'],
  ],
  'jduff/numerizer, test/test_numerizer_en.rb': [
    ['twentyone', '21'],
    ['twentyone-thousand-four-hundred-and-seventy-three', '21473'],
    ['thousand and hundred', '1100'],
    ['two nineteen', '219'],
  ],
  'spencermountain/compromise, tests/three/numbers': [
    ['two hundred and twelve and one twentieth', '4241/20'],
    ['3/8ths', '3/8'],
    ['3 out of four', '3/4'],
    ['three thirty secondths of an inch', '3/32', 'in'],
    ['thirty five fifths of an inch', '7', 'in'],
    ['2 million five hundred thousand and fifty nine', '2500059'],
    ['9 hundred and 2', '902'],
    ['9 hundred and twenty', '920'],
    ['hundred and seventy two thousand', '172000'],
  ],
  'allo-media/text2num, tests/test_text_to_num_en.py': [
    ['one point two hundred thirty-six', '309/250'],
    ['point fifteen', '3/20'],
  ],
  'scrapinghub/number-parser, tests/test_number_parsing.py': [['one hundred and forty two / eleven', '142/11']],
  'jakeboone02/numeric-quantity, src/numericQuantityTests.ts': [
    ['01 01/02', '3/2'],
    ['1⅟2', '3/2'],
    ['2 ⅕', '11/5'],
  ],
};

describe.each(Object.entries(suites))('%s', (_source, cases) => {
  it.each(cases.map(([text, ...wanted]) => ({ text, wanted })))('reads $text', ({ text, wanted: [value, unit = '1', to] }) => {
    const { intents, unclaimed } = understand(text);
    const rest = unclaimed.filter((word) => !/^(ths|s)$/.test(word));
    expect({ intents, rest }).toMatchObject({ intents: [{ kind: 'quantity', value, unit, ...(to ? { to } : {}) }], rest: [] });
  });
});

it('makes no number of a pointing "one"', () => {
  // allo-media/text2num, tests/test_text_to_num_en.py, test_one_as_noun_or_article.
  for (const text of ['another one bites the dust', 'this is the one']) {
    const { intents } = understand(text);
    expect({ text, intents: intents.filter((intent) => 'value' in intent) }).toEqual({ text, intents: [] });
  }
});
