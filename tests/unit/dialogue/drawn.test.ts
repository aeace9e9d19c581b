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
