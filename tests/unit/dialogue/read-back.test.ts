// The read-back policy, rule by rule.
import { describe, expect, it } from 'vitest';
import { fields, policy } from '#data';
import { sayValue, understand } from '#intents';
import { say, sayAll, silent, type Talk, viewed } from '../../support/dialogue.ts';

const opened = say(silent, 'new job');
const replied = ({ events }: Talk) => {
  const body = events.at(-1)?.body;
  if (body?.kind !== 'replied') throw new TypeError('the last event is no reply');
  return body;
};
const confirmed = ({ events }: Talk) => events.filter(({ body }) => body.kind === 'valueConfirmed').length;

describe('risk classes', () => {
  const kinds = ['measure', 'quantity', 'correct', 'strike', 'note', 'question', 'problem', 'unknown'];
  const commands = [
    'next',
    'back',
    'repeat',
    'slower',
    'readBack',
    'undo',
    'confirm',
    'deny',
    'done',
    'skip',
    'pause',
    'resume',
    'openJob',
    'closeJob',
    'closeAnyway',
    'renameJob',
    'help',
    'remind',
    'same',
    'adjust',
  ];

  it.each([...kinds, ...commands])('%s has one', (name) => expect(policy.classes[name]).toMatch(/^R[0-3]$/));

  it('asks of every field that clears someone to drive', () => {
    const asked = fields.filter(({ risk }) => risk === 'asked').map(({ id }) => id);
    expect(asked).toEqual(expect.arrayContaining(['endPlay', 'wheelNutTorque', 'uBoltTorque']));
  });
});

describe('teens and tens', () => {
  const pairs = [13, 14, 15, 16, 17, 18, 19].flatMap((teen) => {
    const ten = (teen - 10) * 10;
    return [
      [teen, ten],
      [ten, teen],
    ] as const;
  });

  it.each(pairs)('%i is offered against %i where both can be', (heard, other) => {
    const word = (value: number) => sayValue(undefined, { value: String(value), unit: '1' });
    const talk = say(opened, `tyre pressure left ${word(heard)}`);
    expect(talk.job?.asked?.about).toBe('alternatives');
    expect(talk.job?.asked?.choices).toEqual([String(heard), String(other)]);
  });

  it('takes the choice by its digits, and asks once more for a choice that sounds like the other', () => {
    const asked = say(opened, 'tyre pressure left fifteen');
    expect(asked.job && viewed(asked.job).expects.offered).toEqual(['fifteen P S I', 'one five', 'fifty P S I', 'five zero']);
    expect(say(asked, 'five zero').job?.values.at(-1)).toMatchObject({ value: '50', status: 'confirmed' });
    const alike = say(asked, 'fifty');
    expect(alike.job?.values.at(-1)).toMatchObject({ value: '50', status: 'heard' });
    expect(alike.job?.asked?.about).toBe('value');
  });
});

describe('many values in one breath', () => {
  const names = [
    'hub face seventy two',
    'spring centre fifty eight',
    'beam two and three eighths',
    'drop four',
    'frame width sixty',
    'backspacing three',
    'four leaves',
  ];

  it.each([1, 2, 3, 4, 5, 6, 7])('%i: none is lost, three at most are read back at a time', (count) => {
    const talk = say(opened, names.slice(0, count).join(', '));
    expect(talk.job?.values).toHaveLength(count);
    expect(replied(talk).readBack).toHaveLength(Math.min(count, 3));
    const later = sayAll(talk, ['yes', 'yes', 'yes']);
    expect(later.job?.values.every(({ readBack }) => readBack)).toBe(true);
    expect(later.job?.values.filter(({ status }) => status === 'confirmed')).toHaveLength(count);
  });
});

describe('a yes', () => {
  const asked = say(opened, 'left end play three thousandths');

  it('confirms what was asked', () => expect(confirmed(say(asked, 'yes'))).toBe(1));

  it('confirms nothing thirty seconds later, and is asked for again', () => {
    const late = say(asked, 'yes', (policy.askSeconds + 1) * 1000);
    expect(confirmed(late)).toBe(0);
    expect(late.job?.asked?.id).not.toBe(asked.job?.asked?.id);
    expect(confirmed(say(late, 'yes'))).toBe(1);
  });

  it('confirms once', () => expect(confirmed(sayAll(asked, ['yes', 'yes', 'yes']))).toBe(1));

  it('does not confirm what another utterance came between', () => {
    const between = say(asked, 'hub face seventy two');
    const ids = between.events.flatMap(({ body }) => (body.kind === 'askClosed' ? [body.outcome] : []));
    expect(ids).toContain('expired');
    expect(between.job?.values[0]?.status).toBe('heard');
  });
});

describe('not understood', () => {
  it('never says the same thing twice running', () => {
    const [first, second, third] = [1, 2, 3].map((times) => replied(sayAll(opened, Array(times).fill('mumble mumble'))).speak);
    expect(new Set([first, second, third]).size).toBe(3);
  });

  it('keeps what was understood beside what was not', () => {
    const talk = say(opened, 'hub face seventy two wibble wobble');
    expect(talk.job?.values[0]?.value).toBe('72');
    expect(replied(talk).speak).toMatch(/wibble/);
  });
});

it('reads a value back in words that are heard as the same value', () => {
  for (const text of [
    'hub face seventy two and three eighths',
    'spring centre fifty eight',
    'beam two and three eighths',
    'drop four',
  ]) {
    const talk = say(opened, text);
    const value = talk.job?.values[0];
    const again = understand(replied(talk).speak.replace(/\.$/, '')).intents;
    expect(again, replied(talk).speak).toMatchObject([{ kind: 'measure', field: value?.field, value: value?.value }]);
  }
});
