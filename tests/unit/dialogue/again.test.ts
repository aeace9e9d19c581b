// What leans on the value said last: the same elsewhere, so much more or less. Never silently, never without a value to lean on.
import { describe, expect, it } from 'vitest';
import { say, sayAll, silent } from '../../support/dialogue.ts';

const opened = say(silent, 'new job');
const live = (...lines: readonly string[]) => {
  const { job } = sayAll(opened, lines);
  return (job?.values ?? [])
    .filter(({ status }) => status === 'heard' || status === 'confirmed')
    .map(({ field, side, axle, value, unit, status }) => [side, axle, field, value, unit, status].filter(Boolean).join(' '));
};

describe('the same elsewhere', () => {
  it.each([
    [
      ['left tyre pressure 65', 'same on the other side'],
      ['left tyrePressure 65 psi heard', 'right tyrePressure 65 psi heard'],
    ],
    [
      ['right overhang 7 1/2', 'left the same'],
      ['right overhang 15/2 in heard', 'left overhang 15/2 in heard'],
    ],
    [
      ['left inner bearing L68149 left outer bearing L44649', 'yes', 'right the same', 'yes'],
      [
        'left innerBearing L68149 confirmed',
        'left outerBearing L44649 confirmed',
        'right innerBearing L68149 confirmed',
        'right outerBearing L44649 confirmed',
      ],
    ],
    [
      ['front axle left tyre pressure 65', 'rear axle the same'],
      ['left front tyrePressure 65 psi heard', 'left rear tyrePressure 65 psi heard'],
    ],
    [
      ['left end play five thou', 'yes', 'same on the right'],
      ['left endPlay 1/200 in confirmed', 'right endPlay 1/200 in heard'],
    ],
    [['spring centre 58', 'same on the other side'], ['springCentre 58 in heard']],
    [['same on the other side'], []],
  ])('%s', (lines, values) => expect(live(...lines)).toEqual(values));
});

describe('so much more or less', () => {
  it.each([
    [['hub face 72', 'an eighth less'], ['hubFace 575/8 in heard']],
    [['hub face 72', 'no, make that a sixteenth more'], ['hubFace 1153/16 in heard']],
    [['left overhang 7 1/2, right an eighth more'], ['left overhang 15/2 in heard', 'right overhang 61/8 in heard']],
    [
      ['left tyre pressure 65', 'right two pounds less'],
      ['left tyrePressure 65 psi heard', 'right tyrePressure 63 psi heard'],
    ],
    [['hub face 1830 mm', 'add half an inch'], ['hubFace 18427/10 mm heard']],
    [['bolt pattern five on four and a half', 'an eighth less'], ['boltPattern 5x9/2 in heard']],
    [['an eighth less'], []],
  ])('%s', (lines, values) => expect(live(...lines)).toEqual(values));

  it('asks before a confirmed value gives way', () => {
    const talk = sayAll(opened, ['hub face 72', 'yes', 'a sixteenth more']);
    expect(talk.job?.asked?.about).toBe('value');
    expect(live('hub face 72', 'yes', 'a sixteenth more', 'no')).toEqual(['hubFace 72 in confirmed']);
  });
});
