// May I, what is this damage, and when do I check it again: as asked and told in the bay.
import { describe, expect, test } from 'vitest';
import { ask, jobOf } from '../../support/ask.ts';
import { say, sayAll, silent } from '../../support/dialogue.ts';

const opened = say(silent, 'new job hub service');

test.each([
  ['can i reuse the u bolts', 'uBoltReuse'],
  ['can i put the old u bolts back on', 'uBoltReuse'],
  ['can i reuse the cotter pin', 'pinReuse'],
  ['should i use the same seal again', 'sealReuse'],
  ['can i reuse the bearings', 'bearingReuse'],
  ['is it okay to use an impact on the lugs', 'impact'],
  ['can i use the rattle gun', 'impact'],
  ['should i oil the studs', 'dryStuds'],
  ['can i put never seize on the stud threads', 'dryStuds'],
  ['do i torque the wheel nuts wet or dry', 'dryStuds'],
  ['what if the cotter pin does not line up', 'pinHole'],
  ["the hole doesn't line up with the slot", 'pinHole'],
  ['how do i adjust the brakes', 'adjustBrakes'],
  ['how many clicks on the adjuster', 'adjustBrakes'],
])('%s', (said, id) => {
  const told = ask(said);
  expect(told.code).toBe(`practice.${id}`);
  expect(told.sources).not.toEqual([]);
});

test.each(['how do i set the bearings', 'how do i adjust the bearing', 'what preload'])(
  '"%s" is told as it is seated',
  (said) => {
    const told = ask(said);
    expect(told.code).toBe('seat');
    expect(told.speak).toContain('Turning the hub');
  },
);

test('damage named in the question comes before the general answer', () => {
  expect(ask('can i reuse a bearing with rust stains').code).toBe('damage.rust');
});

test.each([
  ['what torque for half twenty studs dry', 'torque'],
  ['what grease do i use', 'grease'],
])('"%s" asks for something else', (said) => expect(ask(said).code).not.toMatch(/^practice/));

describe('damage told without "note"', () => {
  test.each([
    ['washboard pattern in the race', 'fluting'],
    ['little dents at roller spacing', 'brinell'],
    ['the race has dents from the drift', 'brinell'],
    ['marks at every roller, trailer sat all winter', 'falseBrinell'],
    ['the cage is bent', 'cage'],
    ['bearing got water in it', 'water'],
    ['frosted race', 'surface'],
    ['cup turns in the hub by hand', 'fretting'],
    ['galling on the big end', 'smearing'],
    ['peeling on the race', 'flaking'],
  ])('%s', (said, id) => {
    const { job } = say(opened, said);
    expect(job?.lastReply?.code).toBe(`damage.${id}`);
    expect(job?.notes.at(-1)?.reading?.seriousness).not.toBe('info');
  });

  test.each(['left hanger is cracked', 'the brake wire is blue', 'drum is scored'])('"%s" is no bearing damage', (said) => {
    expect(say(opened, said).job?.lastReply?.code).not.toMatch(/^damage/);
  });
});

describe('when a joint is checked again', () => {
  test.each(['when do i retorque', 'when do i retorque the wheels', 'how often do i check the lugs'])('%s', (said) => {
    const told = ask(said, jobOf());
    expect(told.code).toBe('due.retorque');
    expect(told.speak).toContain('ten, twenty-five and fifty miles');
    expect(told.sources.join()).toContain('cerka.ca');
  });

  test('of the U-bolts alone, with miles and months', () => {
    const { speak } = ask('when do i retorque the u bolts');
    expect(speak).toContain('one hundred and one thousand miles, then every three months');
    expect(speak).not.toContain('wheel');
  });

  test('a repack is no re-torque', () =>
    expect(ask('when do the bearings need repacking').code).toMatch(/^due\.(nothing|later)/));

  test('reminders that stand are shown with it', () => {
    const job = { ...jobOf(), reminders: [{ id: 'r', text: 'check the wheel nuts after 10 miles', at: '', turn: '' }] } as never;
    expect(ask('when do i retorque the wheels', job).show).toContain('check the wheel nuts after 10 miles');
    expect(sayAll(opened, ['when do i retorque']).job?.reminders).toEqual([]);
  });
});
