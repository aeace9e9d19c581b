// A question that lacks facts asks back, and what is told next answers it.
import { describe, expect, test } from 'vitest';
import { understand } from '#intents';
import { type FollowUpCode, followUps } from '../../../server/dialogue/answers/service-follow-ups.ts';
import { ask } from '../../support/ask.ts';
import { say, sayAll, silent, type Talk } from '../../support/dialogue.ts';

const code = ({ job }: Talk) => job?.lastReply?.code;
const spoken = ({ job }: Talk) => job?.lastReply?.speak ?? '';
const opened = say(silent, 'new job hub service');

/** What leads to each question back. */
const leadsTo: Readonly<Record<FollowUpCode, string>> = {
  'bolt.threadMissing': 'what torque for a grade five bolt',
  'bolt.gradeMissing': 'what torque for a half twenty bolt',
  'bolt.unknownThread': 'what torque for an eight point eight bolt M eight by one point two five',
  'bolt.unknownGrade': 'what torque for a half twenty grade nine bolt',
  'stretch.missing': 'how much does the bolt stretch',
  'extension.missing': 'what do i set the wrench to with an extension',
  'wheelNuts.studUnknown': 'what torque for the wheel nuts',
  'uBolts.threadUnknown': 'what torque for the u bolts',
  'endPlay.threadMissing': 'what does one slot give',
  'endPlay.sizeMissing': 'how far do i turn the nut on a one inch fourteen',
  'brake.wireMissing': 'how much voltage drop',
  'sequence.countMissing': 'what order do i tighten the lugs',
  'grease.mixMissing': 'can i mix greases',
  'grease.mixNameless': 'can i mix marine grease with red grease',
  'compute.notUnderstood': '',
};

const codes = (Object.keys(followUps) as FollowUpCode[]).filter((one) => leadsTo[one] !== '');

describe.each(codes)('%s', (asked) => {
  test('is what the question leads to, and waits for facts', () => {
    const asking = say(opened, leadsTo[asked]);
    expect(code(asking)).toBe(asked);
    expect(asking.job?.asked?.about).toBe('facts');
  });

  test.each(followUps[asked].examples)('"%s", said back, answers it', (example) => {
    const answered = sayAll(opened, [leadsTo[asked], example]);
    expect([asked, 'whatIsIt', 'notUnderstood', 'notCaught', 'impossible']).not.toContain(code(answered));
  });
});

test.each(followUps['compute.notUnderstood'].examples)('"%s" is a sum', (example) => {
  expect(ask(example).code).toBe('compute.sum');
});

test('a value that the job keeps is written down; one that only the question needs is not', () => {
  const kept = sayAll(opened, ['what torque for the u bolts', 'half twenty']);
  expect(kept.job?.values.map(({ field, value }) => [field, value])).toEqual([['uBoltThread', '1/2-20']]);
  const loose = sayAll(opened, ['what torque for a grade five bolt', 'half twenty']);
  expect(loose.job?.values).toEqual([]);
  expect(spoken(loose)).toContain('eighty-five foot pounds');
});

test('facts may come one at a time', () => {
  const told = sayAll(opened, ['what torque for a bolt', 'half twenty', 'grade five']);
  expect(spoken(told)).toContain('eighty-five foot pounds');
});

test.each([
  ['grade eight', 'one hundred twenty foot pounds'],
  ['grade eight oiled', 'ninety foot pounds'],
])('"%s" alone fills the grade', (said, figure) => {
  expect(spoken(sayAll(opened, ['what torque for a half twenty bolt', said]))).toContain(figure);
});

test('what does not bear on it means what it would by itself, and the question lapses', () => {
  const other = sayAll(opened, ['what torque for a bolt', 'spring centre fifty-eight']);
  expect(other.job?.values.map(({ field }) => field)).toEqual(['springCentre']);
  expect(other.job?.asked).toBeUndefined();
  const moved = sayAll(opened, ['what torque for a bolt', 'done']);
  expect(code(moved)).toBe('step');
});

test('another question is another question', () => {
  const asked = sayAll(opened, ['what torque for the u bolts', 'what torque for the wheel nuts', 'half twenty']);
  expect(asked.job?.values.map(({ field }) => field)).toEqual(['studThread']);
});

test('a day later the answer is an ordinary value', () => {
  const late = say(say(opened, 'what torque for a half twenty bolt'), 'hub face seventy-two', 3_600_000);
  expect(late.job?.values.map(({ field }) => field)).toEqual(['hubFace']);
});

test('no question lasts over a "never mind"', () => {
  const dropped = sayAll(opened, ['what torque for the u bolts', 'no']);
  expect(code(dropped)).toBe('leftAsIs');
  expect(dropped.job?.asked).toBeUndefined();
});

test.each([
  ['ninety foot pounds with a three inch extension, wrench eighteen inches', 'torque', 3],
  ['ninety foot pounds, wrench eighteen inches, extension three inches', 'torque', 3],
  ['twelve gauge, thirty feet, fifteen amps', 'brake', 3],
  ['half twenty grade five dry', 'torque', 1],
  ['six lug order', 'sequence', 1],
])('"%s" can only be meant to be worked out', (said, topic, given) => {
  const [intent, ...more] = understand(said).intents;
  expect(more).toEqual([]);
  expect(intent).toMatchObject({ kind: 'question', topic, told: true });
  expect(intent?.kind === 'question' && intent.given?.length).toBe(given);
});

test('a wrench setting asked with "set to" keeps its torque', () => {
  const told = ask('what do i set the wrench to for ninety foot pounds with a three inch crowfoot on an eighteen inch wrench');
  expect(told.speak).toContain('seventy-seven foot pounds');
});

describe('a question that leans on the one before', () => {
  const asked = say(opened, 'what torque for a half twenty grade five bolt');

  test.each([
    ['what about oiled', 'Half twenty grade five, oiled: about sixty-four foot pounds'],
    ['how about grade eight', 'Half twenty grade eight, dry: about one hundred twenty foot pounds'],
    ['what about nine sixteenths', 'Nine sixteenths eighteen grade five, dry: about one hundred twenty-one foot pounds'],
    ['what if it is oiled', 'oiled: about sixty-four'],
  ])('"%s" changes that and no more', (words, answered) => {
    expect(spoken(say(asked, words))).toContain(answered);
  });

  test('leans on what was added before too', () => {
    const both = sayAll(asked, ['what about oiled', 'what about grade eight']);
    expect(spoken(both)).toContain('grade eight, oiled: about ninety');
  });

  test('of wheel nuts, oil is no figure but a caution, and goes with the next', () => {
    const oiled = sayAll(opened, ['what torque for the wheel nuts', 'what about oiled']);
    expect(code(oiled)).toBe('practice.dryStuds');
    expect(spoken(sayAll(oiled, ['what about nine sixteenths', 'what about aluminium']))).toContain('Nine sixteenths eighteen:');
  });

  test('takes nothing into the job', () => {
    expect(sayAll(asked, ['what about oiled', 'what about nine sixteenths']).job?.values).toEqual([]);
  });

  test('means nothing without one, or too long after it', () => {
    expect(code(say(opened, 'what about oiled'))).toBe('moreOfWhat');
    expect(code(say(asked, 'what about oiled', 400_000))).toBe('moreOfWhat');
  });
});

describe("the maker's figure, told after the question", () => {
  test.each([
    ['what torque for the wheel nuts', 'wheelNutTorque'],
    ['what do the u bolts get', 'uBoltTorque'],
    ['what does the spindle nut get', 'seatTorque'],
  ])('%s', (question, field) => {
    const told = sayAll(opened, [question, 'the book says seventy-five', 'yes']);
    expect(told.job?.values.map((value) => [value.field, value.value, value.origin, value.status])).toEqual([
      [field, '75', 'maker', 'confirmed'],
    ]);
    const again = say(told, question);
    expect(spoken(again)).toContain("The maker's figure: seventy-five foot pounds");
  });

  test('is of nothing where nothing was asked', () => {
    expect(code(say(opened, 'the book says seventy'))).toBe('whatIsIt');
  });
});

describe('where the books differ on wheel nuts', () => {
  const differ = sayAll(opened, ['what torque for the wheel nuts with five eighths eighteen studs', 'sixteen inch']);

  test('what narrows them may be told one at a time', () => {
    expect(code(differ)).toBe('wheelNuts.documentsDiffer');
    expect(spoken(differ)).toContain('Tell me the wheel to be sure');
  });

  test('each is told with its own wheels and stages, and shown with its source', () => {
    const both = say(differ, 'aluminium');
    expect(spoken(both)).toContain('Aluminium wheels: between one hundred forty and one hundred sixty foot pounds.');
    expect(spoken(both)).toMatch(
      /Sixteen inch wheels: .* three hundred twenty-five foot pounds, first between twenty and twenty-five, then/,
    );
    const shown = both.job?.lastReply?.show ?? '';
    expect(shown).toContain('16 inch wheels: 275 to 325 lb-ft, first 20 to 25, then 40 to 50 (a trailer builder');
    expect(shown).toContain('aluminium wheels: 140 to 160 lb-ft (recstuff.com');
  });
});
