// Sums asked mid-job, as they are said: chains, shares, the job's own values, manners of telling.
import { expect, test } from 'vitest';
import { understand } from '#intents';
import { ask, jobOf, noted } from '../../support/ask.ts';

test.each([
  ["what's three eighths plus seventy-one and five eighths", 'Seventy-two.'],
  ['half of seventy-two and a quarter', 'Thirty-six and one eighth.'],
  ['three eighths plus a quarter plus seven sixteenths', 'One and one sixteenth.'],
  ['add three eighths, a quarter and a sixteenth', 'Eleven sixteenths.'],
  ['take a sixteenth off fifty-eight', 'Fifty-seven and fifteen sixteenths.'],
  ['five minus eight', 'Minus three.'],
  ['minus three plus five', 'Two.'],
  ['seventy-two inches minus five hundred eight millimetres', 'Fifty-two inches.'],
  ['the average of seventy-two and a quarter and seventy-two and a half', 'Seventy-two and three eighths.'],
  ["what's half the difference between seventy-two and a half and seventy-two and one eighth", 'Three sixteenths.'],
  ['three quarters of ninety foot pounds', 'Sixty-seven point five foot pounds.'],
  ['eighty percent of ninety foot pounds', 'Seventy-two foot pounds.'],
  ['ten percent of thirty-five hundred', 'Three hundred fifty.'],
  ['split seventy-one and five eighths in two', 'Thirty-five and thirteen sixteenths.'],
  ['ninety foot pounds to newton metres', 'About one hundred twenty-two newton metres.'],
  ['twelve foot pounds in inch pounds', 'One hundred forty-four inch pounds.'],
  ['two hundred fahrenheit in celsius', 'About ninety-three degrees Celsius.'],
  ['seven eighths as a decimal', 'Zero point eight seven five.'],
  ['point six two five as a fraction', 'Five eighths.'],
  ['0.625 in sixteenths', 'Ten sixteenths.'],
  ['how many sixteenths in eighteen and five eighths', 'Eighteen and ten sixteenths.'],
  ['how many thousandths is a sixty-fourth', 'About sixteen thousandths.'],
  ['point seven one inches to the nearest sixteenth', 'About eleven sixteenths inch.'],
  ['nearest sixteenth to seventeen millimetres', 'About eleven sixteenths inch.'],
  ['what is one millimetre in thou', 'About thirty-nine thousandths.'],
  ["what's 72 3/8 - 1/16 - 1/16", 'Seventy-two and a quarter.'],
])('%s', (said, told) => {
  expect(ask(said).speak).toBe(told);
});

test.each([
  ["what's seventy-two minus fifty-eight divided by two", 'seven', 'forty-three'],
  ['half of seventy-two minus fifty-eight', 'minus twenty-two', 'seven'],
])('"%s" can be read in two ways, and both are told', (said, inOrder, other) => {
  expect(ask(said).speak).toBe(`In the order said: ${inOrder}. The other way round: ${other}.`);
});

test.each([
  ['seventy-two plus a half minus a quarter', 'Seventy-two and a quarter.'],
  ['two times three times four', 'Twenty-four.'],
  ['two times three plus four', 'Ten.'],
])('"%s" can be read in one', (said, told) => expect(ask(said).speak).toBe(told));

test.each([
  ['what is ninety pounds plus three inches', 'compute.unlikeUnits'],
  ['sixty-one divided by zero', 'compute.divideByNothing'],
  ['three inches times four inches', 'compute.noSuchUnit'],
])('"%s" is refused with what would do', (said, code) => {
  expect(ask(said).code).toBe(code);
});

const job = jobOf([
  noted('hubFace', '579/8', { unit: 'in' }),
  noted('springCentre', '58', { unit: 'in' }),
  noted('endPlay', '3/1000', { unit: 'in', side: 'left' }),
]);

test.each([
  ["what's the hub face minus the spring centre", 'Fourteen and three eighths inches.'],
  ['half the difference between the hub face and the spring centre', 'Seven and three sixteenths inches.'],
  ['half the hub face', 'Thirty-six and three sixteenths inches.'],
  ['what is the hub face in millimetres', 'One thousand eight hundred thirty-eight point three two five millimetres.'],
])('%s: with the values of the job', (said, told) => {
  const answer = ask(said, job);
  expect(answer.speak).toBe(told);
  expect(answer.rests).toContain('hubFace');
});

test('a value not measured yet is asked for, not guessed', () => {
  expect(ask('half the spring centre', jobOf())).toMatchObject({ code: 'compute.notMeasured', missing: ['springCentre'] });
});

test.each([
  ['wheel offset minus twenty-four', 'measure'],
  ['spring centre fifty-eight plus or minus a sixteenth', 'measure'],
  ['half twenty', 'measure'],
  ['axle over spring', 'measure'],
  ['bolt pattern 5x4.5', 'measure'],
  ['half of an inch', 'quantity'],
  ['65 - 70 psi', 'quantity'],
])('"%s" is no sum', (said, kind) => {
  expect(understand(said).intents[0]?.kind).toBe(kind);
});
