// Naming and closing a job, and what is said of it.
import { describe, expect, it } from 'vitest';
import { understand } from '#intents';
import { say, sayAll, silent, type Talk, viewed } from '../../support/dialogue.ts';

const opened = say(silent, 'new job for the grey flatbed, hub service');
const spoken = ({ job }: Talk) => job?.lastReply?.speak ?? '';
const open = ({ job }: Talk) => (job ? viewed(job).open : []);

describe('a name for the job', () => {
  it.each([
    ['call this job the kettle hauler', 'The kettle hauler'],
    ['rename the job to kettle hauler.', 'Kettle hauler'],
    ['name this job Number 5 left axle', 'Number 5 left axle'],
  ])('%s', (text, title) => {
    const named = say(opened, text);
    expect(named.job?.title).toBe(title);
    expect(named.events.map(({ body }) => body.kind)).toContain('jobRenamed');
    expect(spoken(named)).toContain('now called');
  });

  it('is taken back by undo', () => {
    const back = sayAll(opened, ['call this job the kettle hauler', 'undo']);
    expect(back.job?.title).toBe(opened.job?.title);
    expect(spoken(back)).toContain('Grey flatbed');
  });

  it('is not changed by calling the job done', () => {
    expect(understand('call the job done').intents).toMatchObject([{ kind: 'command', name: 'closeJob' }]);
  });
});

describe('what a job is opened on', () => {
  it.each([
    ['new job hub service on a single axle trailer', ['single']],
    ['open a new job for a tandem dump trailer', ['tandem']],
    ['new job hub service', []],
  ])('%s: tells how many axles', (text, axles) => {
    const { job } = say(silent, text);
    expect(job?.values.map(({ field, value }) => [field, value])).toEqual(axles.map((value) => ['axleCount', value]));
  });
});

describe('closing', () => {
  const asked = say(opened, 'close the job');

  it('is not done by a yes while a point of safety is open', () => {
    expect(open(asked).some(({ safety }) => safety)).toBe(true);
    const answered = sayAll(asked, ['yes', 'yes', 'close the job']);
    expect(answered.job?.status).toBe('open');
    expect(answered.job?.asked?.about).toBe('close');
  });

  it('offers its own word in place of a yes', () => {
    const view = asked.job && viewed(asked.job);
    expect(view?.choices).toEqual([{ say: 'close it anyway', show: 'close it anyway' }]);
  });

  it('is done by its own word, and lists what stays open', () => {
    const closed = say(asked, 'close it anyway');
    expect(closed.job?.status).toBe('closed');
    const body = closed.events.map((event) => event.body).find(({ kind }) => kind === 'closed');
    expect(body?.kind === 'closed' && body.open.length).toBe(open(asked).filter(({ kind }) => kind !== 'reminder').length);
  });

  it.each(['close it anyway', 'close the job anyway'])('"%s" before the list has been heard asks first', (text) => {
    const early = say(opened, text);
    expect(early.job?.status).toBe('open');
    expect(early.job?.asked?.about).toBe('close');
  });

  it('takes the word too late for no word', () => {
    expect(say(asked, 'close it anyway', 600_000).job?.status).toBe('open');
  });
});

it('tells open points without a stop of their own', () => {
  const talk = sayAll(opened, ['note the left hanger is cracked.', 'skip', 'no jack stands here.', 'yes', 'what is still open']);
  expect(open(talk).map(({ text }) => text)).toContain('the left hanger is cracked');
  for (const { text } of open(talk)) expect(text).not.toMatch(/[.,;:]($|[.,;:)])/);
  expect(spoken(talk)).not.toMatch(/[.,][.,]/);
});
