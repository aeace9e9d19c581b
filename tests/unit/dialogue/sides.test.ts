// Values with a side: which was asked for and told, which the next breath means, and that none is lost meanwhile.
import { describe, expect, test } from 'vitest';
import { say, sayAll, silent } from '../../support/dialogue.ts';

const opened = say(silent, 'new job hub service');
const values = (said: readonly string[]) =>
  sayAll(opened, said).job?.values.filter(({ status }) => status === 'heard' || status === 'confirmed') ?? [];
const told = (said: readonly string[]) => values(said).map(({ field, side, value }) => [field, side, value]);

describe('a side that was asked for', () => {
  test.each(['left', 'on the left', 'the left one', "it's the left side"])('is told by "%s"', (side) => {
    expect(told(['end play five thou', side])).toEqual([['endPlay', 'left', '1/200']]);
  });

  test('may be the right one, a yes elsewhere', () => {
    expect(told(['end play five thou', 'right'])).toEqual([['endPlay', 'right', '1/200']]);
  });

  test('comes with the number that is meant', () => {
    expect(told(['end play five thou', 'left six thou'])).toEqual([['endPlay', 'left', '3/500']]);
    expect(told(['end play five thou', 'end play left six thou'])).toEqual([['endPlay', 'left', '3/500']]);
  });

  test('is no reason to leave unheard what else was said', () => {
    const { job } = sayAll(opened, ['end play five thou', 'left bearing is pitted']);
    expect(job?.notes.map(({ text }) => text)).toEqual(['left bearing is pitted']);
    expect(job?.values).toEqual([]);
    expect(job?.asked?.question).toMatch(/left or right/);
    expect(told(['end play five thou', 'left bearing is pitted', 'right'])).toEqual([['endPlay', 'right', '1/200']]);
  });

  test('may stay untold: the value is kept, not confirmed', () => {
    const kept = values(['end play five thou', 'note hub is rusty', 'note cap is dented']);
    expect(kept).toMatchObject([{ field: 'endPlay', value: '1/200', status: 'heard' }]);
    expect(kept[0]).not.toHaveProperty('side');
  });
});

describe('the next breath', () => {
  test.each(['right six thou', 'the other side six thou', 'other side is six thousandths'])(
    '"%s" is of the other side',
    (said) => {
      expect(told(['left end play four thou', said])).toEqual([
        ['endPlay', 'left', '1/250'],
        ['endPlay', 'right', '3/500'],
      ]);
    },
  );

  test('is of what it can be, not of what stands on that side', () => {
    const before = ['right magnet three point four ohms', 'left end play three thou', 'seat torque fifty'];
    expect(told([...before, 'right four thou'])).toContainEqual(['endPlay', 'right', '1/250']);
    expect(told([...before, 'actually right was six thousandths'])).toContainEqual(['magnetResistance', 'right', '17/5']);
  });

  test('reaches past what has no sides', () => {
    expect(told(['left hub temperature one eighty', 'ambient seventy two degrees', 'other side one ten'])).toContainEqual([
      'hubTemperature',
      'right',
      '110',
    ]);
  });

  test('does not change what has none, nor fill what is stamped on a part', () => {
    expect(told(['seal one seven one two five five', 'yes', 'right side eight thousandths'])).toEqual([
      ['seal', undefined, '171255'],
    ]);
    expect(told(['ambient sixty six degrees', 'other side one ten'])).toEqual([['ambientTemperature', undefined, '66']]);
  });
});

describe('"is that okay"', () => {
  test.each(['is that ok', 'is it too loose', 'is that right', 'is that within limits', 'are they good'])(
    '"%s" is a question',
    (said) => {
      const before = sayAll(opened, ['left end play eight thou']);
      const after = say(before, said);
      expect(after.job?.values[0]?.status).toBe('heard');
      expect(after.job?.lastReply?.show).toMatch(/0\.008 in.*Loose/s);
    },
  );

  test('no question marks a step as done', () => {
    expect(say(opened, 'is it done').job?.steps).toEqual([]);
  });
});

describe('a place told wrong', () => {
  test('is put right without saying the value again', () => {
    expect(told(['end play left five thou', 'sorry that was the right side'])).toEqual([['endPlay', 'right', '1/200']]);
    expect(told(['end play left five thou', "that's the right side not the left"])).toEqual([['endPlay', 'right', '1/200']]);
  });

  test('goes for all that one breath told', () => {
    const moved = values(['tandem', 'end play left four thou right six thou', 'that was the rear axle']);
    expect(moved.filter(({ field }) => field === 'endPlay')).toMatchObject([
      { side: 'left', axle: 'rear', value: '1/250' },
      { side: 'right', axle: 'rear', value: '3/500' },
    ]);
  });

  test('is refused where nothing told has a place', () => {
    const { events, job } = sayAll(opened, ['hub face seventy two', 'that was the right side']);
    expect(events.at(-1)?.body).toMatchObject({ kind: 'replied', code: 'noValueThere' });
    expect(job?.values).toMatchObject([{ field: 'hubFace', value: '72' }]);
  });
});

test('the other side is no answer to a choice of this one', () => {
  expect(told(['left u bolt torque ninety', 'right ninety'])).toEqual([
    ['uBoltTorque', 'left', '90'],
    ['uBoltTorque', 'right', '90'],
  ]);
});

test('a drum and its limit in one breath are two values', () => {
  expect(told(['left drum twelve oh five max twelve oh nine'])).toEqual([
    ['drumDiameter', 'left', '241/20'],
    ['drumLimit', 'left', '1209/100'],
  ]);
});

test('"can I reuse it" is of what was found last', () => {
  const asked = sayAll(opened, ['the race is blue', 'can i reuse it']);
  expect(asked.job?.lastReply?.speak).toContain('Replace cone and cup');
});
