// What a trade word means, asked mid-job: short, sourced, and the work goes on where it stood.
import { describe, expect, it, test } from 'vitest';
import { cautions, glossary, procedures } from '#data';
import { ask } from '../../support/ask.ts';
import { say, sayAll, silent } from '../../support/dialogue.ts';

const opened = say(silent, 'new job hub service');

describe.each(glossary.map(({ id, said, means, source }) => [id, said, means, source] as const))(
  '%s',
  (id, said, means, source) => {
    it('is told by each of its names, short and with its source', () => {
      for (const name of said) expect(ask(`what does ${name} mean`).code).toBe(`meaning.${id}`);
      const told = ask(`what's a ${said[0]}`);
      expect([told.code, told.speak, told.sources]).toEqual([`meaning.${id}`, means, [source]]);
      expect(means.split(/\s+/).length).toBeLessThanOrEqual(25);
    });
  },
);

test('words of the steps and cautions that need telling are told', () => {
  const text = [
    ...procedures.flatMap(({ steps }) => steps.flatMap(({ say: spoken, show }) => [spoken, show])),
    ...cautions.map((one) => one.text),
  ]
    .join(' ')
    .toLowerCase();
  const told = glossary.flatMap(({ said }) => said).filter((name) => text.includes(name));
  for (const word of [
    'tie plate',
    'keeper',
    'end play',
    'shackle',
    'castle nut',
    'keyed washer',
    'star wheel',
    'slipper',
    'breakaway',
    'spring seat',
  ])
    expect(told).toContain(word);
});

test('asks for the value where one was measured, unless the meaning is asked', () => {
  const measured = sayAll(opened, ['left end play three thou', 'yes']);
  expect(say(measured, "what's end play").job?.lastReply?.code).toBe('have');
  expect(say(measured, 'what does end play mean').job?.lastReply?.code).toBe('meaning.endPlay');
  expect(say(opened, "what's end play").job?.lastReply?.code).toBe('meaning.endPlay');
});

test('the step stays on the screen, and what was asked is asked on', () => {
  const asking = say(opened, 'left end play twelve thou');
  const told = say(asking, "what's a tang keeper");
  expect(told.job?.lastReply?.code).toBe('askLimits');
  expect(told.job?.lastReply?.speak).toContain('bent tab');
  expect(told.job?.currentStep).toBe('makeSafe/park');
});
