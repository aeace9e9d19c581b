// Work told in its own words: done for the step on the screen, asked about for any other, and never past a gate.
import { describe, expect, it, test } from 'vitest';
import { procedures, told } from '#data';
import { say, sayAll, silent, type Talk } from '../../support/dialogue.ts';

const code = ({ job }: Talk) => job?.lastReply?.code;
const spoken = ({ job }: Talk) => job?.lastReply?.speak ?? '';
const done = ({ job }: Talk) => (job?.steps ?? []).filter(({ status }) => status === 'done').map(({ step }) => step);
const opened = say(silent, 'new job hub service');
const atPower = sayAll(opened, ['chocked it', 'skip no plate', 'yes']);
const atLift = sayAll(atPower, ['unplugged it and the battery is off']);
const atHubs = sayAll(atLift, ['pushed it', 'single axle, idler', 'done']);

test('what ends the step on the screen marks it done', () => {
  expect(done(say(opened, 'chocked it'))).toEqual(['makeSafe/park']);
});

describe('a part of a step', () => {
  it('asks about the rest, and a yes marks it', () => {
    const half = say(atPower, 'unplugged it');
    expect([code(half), done(half)]).toEqual(['alsoDone', ['makeSafe/park']]);
    expect(spoken(half)).toContain('breakaway battery');
    for (const answer of ['yes', 'done', 'battery is off']) expect(done(say(half, answer))).toContain('makeSafe/power');
  });

  it.each(['no', 'not yet'])('stays open at "%s"', (answer) => {
    const open = sayAll(atPower, ['unplugged it', answer]);
    expect(done(open)).not.toContain('makeSafe/power');
    expect(code(open)).toBe('notYet');
  });

  it('is never on stands because it was jacked', () => {
    const jacked = say(atLift, 'jacked it up');
    expect([code(jacked), done(jacked).includes('makeSafe/lift')]).toEqual(['alsoDone', false]);
    expect(spoken(jacked)).toMatch(/stands.*push it/);
  });
});

describe('another step', () => {
  it('is asked about, and marked by a yes alone', () => {
    const asked = say(atPower, 'packed them');
    expect([code(asked), done(asked)]).toEqual(['otherStep', ['makeSafe/park']]);
    expect(done(say(asked, 'no'))).toEqual(['makeSafe/park']);
    const marked = say(asked, 'yes');
    expect(done(marked)).toEqual(['makeSafe/park', 'hubBearing/pack@left']);
    expect(marked.job?.currentStep).toBe('makeSafe/power');
  });

  it('of the other side is not this one', () => {
    expect(atHubs.job?.currentStep).toBe('hubOff/before@left');
    const other = say(atHubs, "right wheel's off");
    expect([code(other), other.job?.asked?.step]).toEqual(['otherStep', 'hubOff/before@right']);
  });

  it('keeps a defect that was taken for it', () => {
    const kept = sayAll(opened, ['the cotter pin is out', 'no']);
    expect(kept.job?.notes.map(({ text }) => text)).toEqual(['the cotter pin is out']);
  });
});

test('a part by itself tells no work', () => {
  for (const text of ['springs', 'hangers', 'welds', 'coupler']) {
    const heard = say(opened, text).events.findLast(({ body }) => body.kind === 'heard')?.body;
    expect({ text, heard }).not.toMatchObject({ heard: { intents: [{ name: 'told' }] } });
  }
});

test('a gate holds whatever is told', () => {
  const gated = told.filter(({ id: act, left }) => {
    const [procedure, id] = act.split(/[/.]/);
    const found = procedures.find((one) => one.id === procedure)?.steps.find((one) => one.id === id);
    return left === undefined && found?.record.some(({ gate }) => gate);
  });
  expect(gated.length).toBeGreaterThan(2);
  const atTorque = sayAll(opened, ['go to the wheel nut torque']);
  expect(atTorque.job?.currentStep).toBe('wheelsOn/torque');
  const refused = say(atTorque, 'wheel nuts are torqued');
  expect([code(refused), done(refused)]).toEqual(['valuesMissing', []]);
});

test('what was marked and is said not to be done is open again', () => {
  const open = sayAll(opened, ['chocked it', "it isn't chocked"]);
  expect([code(open), done(open)]).toEqual(['openAgain', []]);
});

test.each(['going to chock it', 'not chocked yet', 'chocking it now'])('"%s" marks nothing', (words) => {
  const waiting = say(opened, words);
  expect([code(waiting), done(waiting)]).toEqual(['notYet', []]);
});
