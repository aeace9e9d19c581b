// A value that is only asked about is judged and never taken; a question about one thing is answered with that one.
import { describe, expect, test } from 'vitest';
import { ask, jobOf, noted } from '../../support/ask.ts';
import { say, sayAll, silent } from '../../support/dialogue.ts';

const opened = say(silent, 'new job hub service');
const job = jobOf([noted('studThread', '1/2-20'), noted('wheelType', 'steel'), noted('wheelDiameter', '15', { unit: 'in' })]);

describe('is it okay', () => {
  test.each([
    ['is a hundred and ten foot pounds okay for the wheel nuts', 'asked.torqueWithin'],
    ['is wheel nut torque forty too low', 'asked.torqueLow'],
    ['is end play of twelve thousandths okay', 'asked.endPlayHigh'],
    ['is a twelve point one inch drum good', 'asked.drumWorn'],
    ['is end play of three thousandths okay', 'asked.endPlayWithin'],
  ])('%s', (said, code) => {
    expect(ask(said, job).code).toBe(code);
  });

  test("against the maker's figure where there is one", () => {
    const maker = jobOf([noted('wheelNutTorque', '100', { unit: 'lbf.ft', origin: 'maker', stage: 'fitted' })]);
    expect(ask('is a hundred and forty foot pounds okay for the wheel nuts', maker).code).toBe('asked.torqueHigh');
  });

  test.each(['is end play of twelve thousandths okay', 'is wheel nut torque forty too low'])('"%s" takes nothing', (said) => {
    expect(say(opened, said).job?.values).toEqual([]);
  });
});

describe('"those"', () => {
  test.each([
    ['u bolts are half inch twenty', /^uBolts\./],
    ['studs are half twenty', /^wheelNuts\./],
  ])('after "%s" are of that', (told, code) => {
    expect(sayAll(opened, [told, 'what torque on those']).job?.lastReply?.code).toMatch(code);
  });
});

describe('only what is asked', () => {
  const tandem = sayAll(opened, [
    'coupler to spindle left 150 1/2 right 150',
    'yes',
    'axle spacing left 33 1/8 right 33',
    'yes',
    'are the axles parallel',
  ]);
  test('parallel is not square', () => {
    const { speak = '' } = tandem.job?.lastReply ?? {};
    expect(speak).toContain('Not parallel');
    expect(speak).not.toContain('Not square');
  });

  test.each([
    ['are the axles parallel', 'axleSpacing'],
    ['how much toe is allowed', 'toeFront'],
    ['is it square', 'couplerDiagonal'],
  ])('%s: how to measure it, and its own limits', (said, field) => {
    expect(ask(said).missing).toEqual([field]);
  });

  test.each([
    ["what's the limit on a ten inch drum", 'ten inch goes to ten point zero nine', 'twelve'],
    ['what should a ten inch magnet read', 'three point two and three point five', 'three point eight'],
    ["what's the resistance of a seven inch magnet", 'three point eight and four', 'three point two'],
  ])('%s', (said, has, hasNot) => {
    const { speak } = ask(said);
    expect(speak).toContain(has);
    expect(speak).not.toContain(hasNot);
  });
});

// I x 2L x R / 1000 with the standard annealed copper table: hyperphysics.phy-astr.gsu.edu Tables/wirega.
test('no gauge named: what each loses over that run', () => {
  const told = ask('what wire gauge do i need for thirty feet at fifteen amps');
  expect(told.code).toBe('brake.gauges');
  for (const line of ['AWG 10: 0.90 V', 'AWG 12: 1.43 V', 'AWG 14: 2.27 V', 'AWG 16: 3.61 V']) expect(told.show).toContain(line);
});

describe('a number beside words that nobody understood', () => {
  const drums = say(opened, 'drum left 12.02');

  test.each(['frobbed thing is 12.09', 'the doodad reads 12.09'])('"%s" overwrites no reading', (said) => {
    const values = say(drums, said).job?.values ?? [];
    expect(values.map(({ field, value }) => [field, value])).toEqual([['drumDiameter', '601/50']]);
  });

  test('the figure cast in a drum is a value of its own', () => {
    const values = say(drums, 'the cast limit on the left drum is 12.09').job?.values ?? [];
    expect(values.map(({ field, value }) => [field, value])).toEqual([
      ['drumDiameter', '601/50'],
      ['drumLimit', '1209/100'],
    ]);
  });
});
