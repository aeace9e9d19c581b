// Short repairs, each in a job of its own, on a real log.
import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { aTechnician, standing } from '../../support/conversation.ts';

const rows = readFileSync(new URL('repair.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => line.split(' => ') as [string, string]);

const technician = aTechnician();
afterAll(() => technician.close());

describe('repairs', () => {
  it('are more than sixty', () => expect(rows.length).toBeGreaterThanOrEqual(60));

  it.each(rows)('%s => %s', (said, expected) => {
    technician.say('new job');
    for (const text of said.split(' / ')) technician.say(text);
    const job = technician.job();
    const stand = standing(job);
    if (expected.startsWith('!')) expect(stand.join(' ')).not.toContain(`${expected.slice(1)}:`);
    else if (expected !== '?') expect(stand).toContain(expected.replace(/^\? /, ''));
    expect(job?.asked !== undefined).toBe(expected.startsWith('?'));
    const heard = technician.events().filter(({ body }) => body.kind === 'valueHeard').length;
    expect(job?.values).toHaveLength(heard);
  });
});
