// Work told as done: every wording of the table is read as its own step, and nothing beside it.
import { describe, expect, it } from 'vitest';
import { procedures, told } from '#data';
import { understand } from '#intents';
import { sequencesOf } from '../../../intents/lexicon.ts';
import { phrase } from '../../../intents/phrase.ts';

const tellings = (text: string, name = 'told') =>
  understand(text).intents.flatMap((intent) => (intent.kind === 'command' && intent.name === name ? (intent.acts ?? []) : []));

it('reads every wording of every step as that step', () => {
  const wordings = told.flatMap(({ id, said }) =>
    said.flatMap((template) => sequencesOf(phrase(template)).map((words) => ({ id, words: words.join(' ') }))),
  );
  expect(wordings.length).toBeGreaterThan(200);
  expect(wordings.filter(({ id, words }) => !tellings(words).flat().includes(id))).toEqual([]);
});

it('names steps that are there', () => {
  const steps = new Set(procedures.flatMap(({ id, steps }) => steps.map((step) => `${id}/${step.id}`)));
  expect(told.filter(({ id }) => !steps.has(id.split('.')[0] ?? ''))).toEqual([]);
});

describe('is told', () => {
  it.each([
    ['chocked it', 'makeSafe/park.chocked'],
    ["I've got the chocks in now", 'makeSafe/park.chocked'],
    ['stands are under it', 'makeSafe/lift.stands'],
    ["it's on stands", 'makeSafe/lift.stands'],
    ['jacked it up', 'makeSafe/lift.jacked'],
    ['unplugged it', 'makeSafe/power.unplugged'],
    ["left wheel's off", 'hubOff/before.off'],
    ['packed them', 'hubBearing/pack.packed'],
    ["cotter's in", 'hubBearing/pin.in'],
  ])('%s', (text, act) => {
    expect(tellings(text)).toHaveLength(1);
    expect(tellings(text)[0]).toContain(act);
  });

  it('takes two things of one breath, and the side', () => {
    expect(tellings("unplugged it and the battery's off")).toEqual([['makeSafe/power.unplugged'], ['makeSafe/power.battery']]);
    expect(tellings('jacked it up, stands are under it')).toHaveLength(2);
    expect(understand("left wheel's off").intents[0]).toMatchObject({ side: 'left' });
  });
});

describe('is not told', () => {
  it.each([
    'not chocked yet',
    "it isn't chocked",
    'going to chock it',
    'about to jack it up',
    "I'll chock it",
    'chocking it now',
    "stands aren't under it",
  ])('%s, but not done yet', (text) => {
    expect(tellings(text)).toEqual([]);
    expect(tellings(text, 'notYet')).toHaveLength(1);
  });

  it.each([
    'is it chocked',
    'chocked?',
    'chock fell out',
    'if it is on stands',
    'when it is on stands',
    'the jack is leaking',
    'wheel nuts are loose',
    'left brake not working',
    'no dust cap on the left rear',
    'should be on stands',
    'somebody chocked it',
  ])('%s', (text) => {
    expect(tellings(text)).toEqual([]);
  });

  it.each(['left brake not working', 'no dust cap on the left rear', 'wheel nuts are loose'])('%s, but a note', (text) => {
    expect(understand(text).intents.map(({ kind }) => kind)).toEqual(['note']);
  });
});
