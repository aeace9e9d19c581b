// What an understanding carries beside the values: spans, alternatives, what nobody claimed; and what `expects` settles.
import { describe, expect, it } from 'vitest';
import { mishearings } from '#data';
import { sayValue, showValue, understand } from '#intents';

const first = (text: string, ...rest: Parameters<typeof understand> extends [string, ...infer R] ? R : never) =>
  understand(text, ...rest).intents[0];

describe('understand', () => {
  it('points at the words that were said, in the text as it was given', () => {
    const text = 'Hub phase  seventy-two, left tyre 65 psi';
    const spans = understand(text).intents.map((intent) => text.slice(...(intent.span ?? [0, 0])));
    expect(spans).toEqual(['Hub phase  seventy-two', 'left tyre 65 psi']);
  });

  it.each([
    ['fifteen', '50'],
    ['fifty', '15'],
    ['hub face sixty and a half', '33/2'],
    ['torque one nineteen', '190'],
    ['overhang eighteen three quarters', '35/4'],
  ])('carries what sounds like "%s"', (text, alternative) => {
    expect(first(text)).toMatchObject({ alternatives: expect.arrayContaining([alternative]) });
  });

  it('reads a number as of the name after it, whatever else is waited for', () => {
    const waiting = { fields: ['endPlay' as const], yesNo: false };
    expect(first('eighty one on the hub face', waiting)).toMatchObject({ field: 'hubFace', value: '81' });
    expect(first('eighty one', waiting)).toMatchObject({ value: '81/1000' });
  });

  it('puts the alternative that the field finds plausible first', () => {
    expect(first('hub face nineteen')).toMatchObject({ value: '19', alternatives: ['90'] });
  });

  it.each([
    ['smaller than 100', '100', 'under'],
    ['fewer than a thousand', '1000', 'under'],
    ['larger than twenty', '20', 'over'],
    ['greater than 4,565', '4565', 'over'],
    ['bigger or equal than three thousand nine hundred and sixty five', '3965', 'atLeast'],
    ['five hundred and more', '500', 'atLeast'],
    ['200 or greater', '200', 'atLeast'],
    ['equal to or more than 30', '30', 'atLeast'],
    ['less than or equal to 100', '100', 'atMost'],
    ['lower or equal than three hundred', '300', 'atMost'],
    ['equal to or less than 30', '30', 'atMost'],
    ['no wider than sixty', '60', 'atMost'],
  ])('keeps the bound of "%s" beside the value', (text, value, hedge) => {
    expect(first(text)).toMatchObject({ kind: 'quantity', value, hedge });
  });

  it.each([
    ['2 thousand 500', '2500'],
    ['5 thousand two hundred', '5200'],
    ['35 hundred and 60', '3560'],
    ['point one hundred twenty five', '1/8'],
    ['one point five hundred', '3/2'],
    ['72 - 3/8', '579/8'],
  ])('reads "%s" as one number', (text, value) => {
    expect(understand(text).intents).toMatchObject([{ kind: 'quantity', value }]);
  });

  it('lets other digits after a thousand begin the next number', () => {
    expect(understand('3 thousand 72').intents).toMatchObject([{ value: '3000' }, { value: '72' }]);
  });

  it.each([
    ['end play left six', [{ field: 'endPlay', side: 'left', value: '3/500', alternatives: ['6'] }]],
    ['runout five', [{ field: 'runout', value: '1/200' }]],
    ['inner journal 1375', [{ field: 'innerJournal', value: '11/8' }]],
    ['inner journal one three seven five outer one oh six two', [{ value: '11/8' }, { field: 'outerJournal', value: '531/500' }]],
    ['end play left oh oh three right oh oh four', [{ value: '3/1000' }, { field: 'endPlay', side: 'right', value: '1/250' }]],
    ['twelve six at the battery', [{ field: 'voltage', value: '63/5' }]],
    ['left magnet three one', [{ field: 'magnetResistance', side: 'left', value: '31/10' }]],
    ['hub face seventy two left tyre sixty five', [{ field: 'hubFace' }, { field: 'tyrePressure', value: '65', side: 'left' }]],
    ["outer's an LM one one nine four nine", [{ field: 'outerBearing', value: 'LM11949' }]],
    ['right half forty two', [{ field: 'halfFace', side: 'right', value: '42' }]],
    ['left half inch', [{ kind: 'quantity', side: 'left', value: '1/2', unit: 'in' }]],
    ['axle is 95', [{ kind: 'quantity', value: '95' }]],
    ['axle tag says thirty five hundred', [{ field: 'capacity', value: '3500', origin: 'maker' }]],
    ['got an inch and a half between the tyre and fender', [{ field: 'tyreClearance', value: '3/2' }]],
    [
      'tread depth four left six right',
      [
        { value: '1/8', side: 'left' },
        { value: '3/16', side: 'right' },
      ],
    ],
    [
      'tread left four right five',
      [
        { value: '1/8', side: 'left' },
        { field: 'treadDepth', value: '5/32', side: 'right' },
      ],
    ],
    ['drum ten and thirty thou', [{ field: 'drumDiameter', value: '1003/100' }]],
    ['end play four and six thou', [{ value: '1/250' }, { field: 'endPlay', value: '3/500' }]],
    ["seal's square to the bore", [{ kind: 'unknown' }]],
    ['spins rough', [{ kind: 'note' }]],
    ['six on five and a have', [{ field: 'boltPattern', value: '6x11/2' }]],
    ['capacity seven kay', [{ field: 'capacity', value: '7000' }]],
    ['tyre date code is twenty one eighteen', [{ kind: 'quantity', value: '21' }, { kind: 'quantity' }]],
    ['brake line fitting three eighths', [{ kind: 'quantity', value: '3/8' }]],
    ['spring hanger bolts nine sixteenths', [{ kind: 'quantity', value: '9/16' }]],
    ['axle overhang seven', [{ field: 'overhang', value: '7' }]],
    ['nut three is stripped', [{ kind: 'note' }]],
    ['brakes adjusted ten clicks left', [{ kind: 'quantity', value: '10', unit: '1' }]],
  ])('takes "%s" as a gauge or a tape is called', (text, intents) => {
    expect(understand(text).intents).toMatchObject(intents);
  });

  it.each([
    'should it be ninety',
    'was that ten thou too loose',
    'is the left six thou',
    'can it take thirty five hundred',
    'axle rpm at sixty',
    "what's L68149 measure",
    'is the L44649 the same as the L44643',
    'wheel rpm at sixty five',
    'is that fifty eight or fifty nine',
  ])('measures nothing in "%s"', (text) => {
    expect(understand(text).intents.map(({ kind }) => kind)).not.toEqual(expect.arrayContaining(['measure']));
    expect(understand(text).intents.map(({ kind }) => kind)).not.toEqual(expect.arrayContaining(['quantity']));
  });

  it('takes a weight for the weight that is waited for, not for a VIN that went wrong', () => {
    const expects = { fields: ['vin', 'gvwr'], yesNo: false } as const;
    expect(first('plate says thirty nine hundred', expects)).toMatchObject({ kind: 'quantity', value: '3900', origin: 'maker' });
    expect(first('one two three four', expects)).toMatchObject({ kind: 'problem', about: 'vin' });
    expect(first("it's one h g", expects)).toMatchObject({ kind: 'problem', about: 'vin' });
  });

  it('spells no VIN out of what is said while one is waited for', () => {
    const expects = { fields: ['vin', 'gvwr'], yesNo: false } as const;
    for (const text of ['outer and nut are on', 'front left four thou', "seal's a one seven one nine", 'tightened one flat'])
      expect({ text, intents: understand(text, expects).intents }).not.toMatchObject({ intents: [{ about: 'vin' }] });
    expect(understand('inner is L68149 outer L44649', expects).intents).toMatchObject([
      { field: 'innerBearing', value: 'L68149' },
      { field: 'outerBearing', value: 'L44649' },
    ]);
  });

  it.each([
    ["that's the right side not the left", { side: 'right' }],
    ['sorry that was the rear axle', { axle: 'rear' }],
    ['no I meant the left', { side: 'left' }],
    ['make that both sides', { side: 'both' }],
  ])('moves the value said last by "%s"', (text, where) => {
    expect(understand(text).intents).toMatchObject([{ kind: 'command', name: 'moved', ...where }]);
  });

  it.each(["that's right", 'that is right', 'that was right', 'no make that seventy two', 'I meant fifty'])(
    'moves nothing by "%s"',
    (text) => {
      expect(understand(text).intents).not.toMatchObject([{ name: 'moved' }]);
    },
  );

  it('names the words that no rule claimed', () => {
    expect(understand('hub face wibble seventy two').unclaimed).toEqual(['wibble']);
  });

  it.each([
    ['spring is 26 long', 'springLength'],
    ['spring has a length of 26', 'springLength'],
    ['u bolts 3 wide', 'uBoltWidth'],
    ['tube is three inches wide', 'beamDiameter'],
    ['length is 26', undefined],
    ['ten inch brakes', undefined],
    ['four brakes', undefined],
    ['brakes an eighth', 'liningThickness'],
    ['fender is ninety inches wide', 'fenderWidth'],
    ['trailer length sixteen feet', undefined],
    ['tongue length five feet', undefined],
    ['beam length 72', undefined],
    ['the axle is 95 long', undefined],
  ])('takes the size in "%s" for one of what is named beside it, or for nobody\'s', (text, field) => {
    expect(first(text)).toMatchObject(field ? { kind: 'measure', field } : { kind: 'quantity' });
  });

  it.each([
    ['what is the difference between six and one sixteenth', { op: 'subtract', a: { value: '6' }, b: { value: '1/16' } }],
    ['the sum of two and three quarters', { op: 'add', a: { value: '2' }, b: { value: '3/4' } }],
    ['the difference between two and a half and one', { op: 'subtract', a: { value: '5/2' }, b: { value: '1' } }],
  ])('finds the two amounts in "%s"', (text, sum) => {
    expect(first(text)).toMatchObject({ kind: 'question', topic: 'compute', sum });
  });

  it('marks what the maker says', () => {
    expect(first('the book says ninety foot pounds')).toMatchObject({ kind: 'quantity', value: '90', origin: 'maker' });
  });

  it('leaves a bare number to the dialogue and takes a bare part number for what is asked', () => {
    expect(first('seventy two', { fields: ['hubFace'], yesNo: false })).toMatchObject({ kind: 'quantity', value: '72' });
    const bearing = first('two five five eight oh', { fields: ['innerBearing'], yesNo: false });
    expect(bearing).toMatchObject({ kind: 'measure', value: '25580' });
  });

  it.each([
    ['is red grease ok with lithium complex', 'grease'],
    ['four brakes should draw how many amps', 'brake'],
    ['does the drum need turning', 'brake'],
  ])('hears a question by the order of its words: "%s"', (text, topic) => {
    expect(understand(text).intents).toMatchObject([{ kind: 'question', topic }]);
  });

  it('makes no two of the "to" before what is spelled', () => {
    expect(first('change the serial to kilo oh seven zero')).toMatchObject({ field: 'serial', value: 'K070' });
  });

  it('takes a mil for a thousandth where a gauge reads thousandths, else for a millimetre', () => {
    expect(first('ten mil', { fields: ['endPlay'], yesNo: false })).toMatchObject({ value: '1/100', unit: 'in' });
    expect(first('ten mil')).toMatchObject({ value: '10', unit: 'mm' });
  });

  it.each([
    ['hub face three sevenths', 'hubFace'],
    ['hub face nine eighths', 'hubFace'],
    ['bolt pattern one on five', 'boltPattern'],
    ['vin one juliett nine', 'vin'],
  ])('says in one sentence why "%s" cannot be', (text, about) => {
    expect(first(text)).toMatchObject({ kind: 'problem', about, message: expect.stringMatching(/^[A-Z0-9].*\.$/) });
  });
});

describe('mishearings', () => {
  it.each(mishearings.filter(({ where }) => where === undefined))('hears "$meant" in "$heard"', ({ heard, meant }) => {
    expect(understand(heard).normalised).toBe(meant);
  });

  it('leaves homophones alone where no number can stand', () => {
    for (const text of ['the seal is too far gone', 'wait for me', 'i ate lunch', 'we won', 'look for the seal']) {
      expect(understand(text).intents.filter(({ kind }) => kind === 'quantity' || kind === 'measure')).toEqual([]);
    }
  });

  it('takes a stranger beside one word of a name for the other, when it sounds like it', () => {
    expect(first('hub fayce seventy two')).toMatchObject({ field: 'hubFace', value: '72' });
  });
});

describe('say and show', () => {
  it.each([
    ['hubFace', { value: '579/8' }, 'seventy-two and three eighths inches', '72 3/8 in'],
    ['endPlay', { value: '1/200' }, 'five thousandths', '0.005 in'],
    ['wheelNutTorque', { value: '90' }, 'ninety foot pounds', '90 lb-ft'],
    ['boltPattern', { value: '5x9/2' }, 'five on four and a half', '5 on 4 1/2'],
    ['bearing', { value: 'L44649' }, 'L four four six four nine', 'L44649'],
    ['capacity', { value: '3500' }, 'thirty-five hundred pounds', '3500 lb'],
    ['wheelOffset', { value: '-24' }, 'minus twenty-four millimetres', '-24 mm'],
  ] as const)('%s', (field, said, spoken, shown) => {
    expect(sayValue(field, said)).toBe(spoken);
    expect(showValue(field, said)).toBe(shown);
  });
});
