// What is due over all jobs: reminders, and the next service of each trailer.
import { expect, test } from 'vitest';
import type { FieldId, JobKindId } from '#data';
import type { EventBody } from '#log/events';
import type { DueItem, DueList } from '#wire';
import { aLog, aTurn } from '../../support/log.ts';
import { aServer } from '../../support/server.ts';

const heard = (id: string, field: FieldId, value: string): EventBody => ({
  kind: 'valueHeard',
  value: { id, field, stage: 'found', value, raw: value, heardBy: 'typed' },
});

const vin = '1J9RP1A36A1644345';

async function dueOn(now: string, jobs: readonly { at: string; kind: JobKindId; bodies: readonly EventBody[] }[]) {
  const log = aLog();
  for (const { at, kind, bodies } of jobs)
    log.append(aTurn(null, [{ kind: 'jobOpened', jobKind: kind, title: kind }, ...bodies], { at }));
  const server = await aServer({}, log, () => now);
  const { items } = (await (await server.call('/api/due')).json()) as DueList;
  return items.map(({ text, state, dueAt, dueMiles }: DueItem) => [state, text, dueAt, dueMiles]);
}

const done = (...steps: readonly string[]): readonly EventBody[] => steps.map((step) => ({ kind: 'stepDone', step }));
const packed = ['hubBearing/pack@left', 'hubBearing/pack@right'];
const service = {
  at: '2026-01-10T09:00:00.000Z',
  kind: 'scheduledService',
  bodies: [heard('v', 'vin', vin), heard('o', 'odometer', '1000'), ...done(...packed, 'scheduledService/running')],
} as const;

test('the next service of a trailer counts from its last one, by date or by miles', async () => {
  // 12 months or 12,000 miles: horse-trailer manual, manualshive 3771233 p. 71; twelve months: 49 CFR 396.17.
  const bearings = ['repack and set the wheel bearings', '2027-01-10', '13000'];
  const yearly = ['yearly inspection', '2027-01-10', undefined];
  expect(await dueOn('2026-06-01T09:00:00.000Z', [service])).toEqual([
    ['notYet', ...bearings],
    ['notYet', ...yearly],
  ]);
  expect(await dueOn('2026-12-20T09:00:00.000Z', [service])).toEqual([
    ['soon', ...bearings],
    ['soon', ...yearly],
  ]);
  const back = {
    at: '2026-05-01T09:00:00.000Z',
    kind: 'inspection',
    bodies: [heard('v', 'vin', vin), heard('o', 'odometer', '13001')],
  } as const;
  expect((await dueOn('2026-06-01T09:00:00.000Z', [service, back]))[0]).toEqual(['due', ...bearings]);
});

test('a job that did not do the work, or took it back, counts for nothing', async () => {
  const named = { ...service, kind: 'hubService', bodies: [heard('v', 'vin', vin), { kind: 'closed', open: [] }] } as const;
  expect(await dueOn('2026-06-01T09:00:00.000Z', [named])).toEqual([]);
  const undone = { ...service, bodies: [...service.bodies, { kind: 'stepReopened', step: 'hubBearing/pack@left' }] } as const;
  expect((await dueOn('2026-06-01T09:00:00.000Z', [undone])).map(([, text]) => text)).toEqual(['yearly inspection']);
});

test('work that one job began and another ended counts from its older half', async () => {
  const half = (at: string, place: string) =>
    ({ at, kind: 'hubService', bodies: [heard('v', 'vin', vin), ...done(`hubBearing/pack@${place}`)] }) as const;
  const both = [half('2026-01-10T09:00:00.000Z', 'left'), half('2026-03-01T09:00:00.000Z', 'right')];
  expect(await dueOn('2026-06-01T09:00:00.000Z', both)).toEqual([
    ['notYet', 'repack and set the wheel bearings', '2027-01-10', undefined],
  ]);
});

test('a reminder is due by its date or its miles, and gone when it is dealt with', async () => {
  const reminders: EventBody[] = [
    { kind: 'reminderSet', id: 'miles', text: 'check the nuts', dueMiles: '1050' },
    { kind: 'reminderSet', id: 'date', text: 'check the U-bolts', dueAt: '2026-07-10' },
    { kind: 'reminderSet', id: 'done', text: 'done already', dueAt: '2026-02-10' },
    { kind: 'reminderDone', id: 'done' },
  ];
  const job = {
    at: '2026-01-10T09:00:00.000Z',
    kind: 'axleReplacement',
    bodies: [heard('v', 'vin', vin), heard('o', 'odometer', '1000'), ...reminders],
  } as const;
  expect(await dueOn('2026-02-11T09:00:00.000Z', [job])).toEqual([
    ['soon', 'check the nuts', undefined, '1050'],
    ['notYet', 'check the U-bolts', '2026-07-10', undefined],
  ]);
  const back = {
    at: '2026-07-11T09:00:00.000Z',
    kind: 'hubService',
    bodies: [heard('v', 'vin', vin), heard('o', 'odometer', '1050')],
  } as const;
  expect((await dueOn('2026-07-11T09:00:00.000Z', [job, back])).map(([state]) => state)).toEqual(['due', 'due']);
});

test('miles without an odometer are said as they are, and never taken for a reading', async () => {
  const job = {
    at: '2026-01-10T09:00:00.000Z',
    kind: 'axleReplacement',
    bodies: [{ kind: 'reminderSet', id: 'm', text: 'check the nuts after 50 miles', dueMiles: '50' }],
  } as const;
  expect(await dueOn('2026-02-11T09:00:00.000Z', [job])).toEqual([
    ['soon', 'check the nuts after 50 miles', undefined, undefined],
  ]);
});
