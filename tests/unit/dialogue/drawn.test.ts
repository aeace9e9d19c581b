// What the page draws follows the last answer, then the step.
import { expect, it } from 'vitest';
import type { JobView, TurnResponse } from '#wire';
import { aServer, spoken } from '../../support/server.ts';

async function talk(...lines: readonly string[]): Promise<(text: string) => Promise<JobView>> {
  const server = await aServer();
  let job: string | null = null;
  const say = async (text: string): Promise<JobView> => {
    const response = await server.call('/api/turns', { method: 'POST', body: spoken(text, job) });
    const { view } = (await response.json()) as TurnResponse;
    if (!view) throw new TypeError('no job');
    job = view.id;
    return view;
  };
  for (const line of lines) await say(line);
  return say;
}

it('draws the order of the nuts once it is asked for, and the axle again with the next measure', async () => {
  const say = await talk('open job red tipper', 'bolt pattern five on four and a half');
  expect(await say('hub face seventy-two')).not.toHaveProperty('sequence');
  expect((await say('what order do I tighten the wheel nuts')).sequence).toMatchObject({ what: 'wheelNuts', positions: 5 });
  expect((await say('what torque for the u bolts')).sequence).toMatchObject({ what: 'uBolts', positions: 4 });
  expect(await say('spring centre fifty-eight')).not.toHaveProperty('sequence');
});

it('draws the squaring move once it is asked for', async () => {
  const say = await talk(
    'open job grey hauler',
    'coupler diagonal left one hundred forty-two and five eighths',
    'yes',
    'coupler diagonal right one hundred forty-two and one quarter',
    'yes',
    'hub face seventy-two',
  );
  expect((await say('how is the alignment')).alignment).toMatchObject({ longer: 'left', difference: '3/8 in' });
});

it('draws the order also when the answer rests on a pattern nobody confirmed', async () => {
  const say = await talk('open job tight in order', 'bolt pattern five on four and a half');
  expect((await say('what order do I tighten the wheel nuts')).sequence).toMatchObject({ what: 'wheelNuts', next: 0 });
});

it('draws the axle askew as soon as a diagonal is out of limits, and still while that is asked about', async () => {
  const say = await talk('open job grey hauler', 'coupler diagonal left one hundred forty-two and five eighths', 'yes');
  const asked = await say('coupler diagonal right one hundred forty-two and one quarter');
  expect(asked).toMatchObject({ question: expect.any(String), alignment: { longer: 'left', move: { side: 'left' } } });
});

it('marks the nut whose turn it is: on with "next nut", back with "undo", round again after the last', async () => {
  const say = await talk('open job nut by nut', 'bolt pattern five on four and a half', 'what order do I tighten the wheel nuts');
  expect((await say('next nut')).sequence?.next).toBe(1);
  expect((await say('next lug')).sequence?.next).toBe(2);
  expect((await say('which nut is next')).sequence?.next).toBe(2);
  expect((await say('undo')).said).toMatch(/./);
  expect((await say('which nut is next')).sequence?.next).toBe(1);
  for (const next of [2, 3, 4, 0]) expect((await say('next nut')).sequence?.next).toBe(next);
});

it('goes round the legs of a U-bolt crosswise, by name', async () => {
  const say = await talk('open job leg by leg', 'what order for the u bolts');
  const second = await say('next bolt');
  expect(second.sequence).toMatchObject({ what: 'uBolts', next: 1 });
  expect(second.said).toMatch(/rear outside, 2 of 4/i);
});
