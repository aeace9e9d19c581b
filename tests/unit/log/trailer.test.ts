// The log book ties the jobs of one trailer together: VIN and odometer as they stand.
import { expect, test } from 'vitest';
import type { FieldId } from '#data';
import type { EventBody } from '#log/events';
import { aLog, aTurn, opens } from '../../support/log.ts';

const heard = (id: string, field: FieldId, value: string): EventBody => ({
  kind: 'valueHeard',
  value: { id, field, stage: 'found', value, raw: value, heardBy: 'typed' },
});

test('a summary carries the VIN and the odometer that stand, not the ones that were struck', () => {
  const log = aLog();
  const bodies = [
    opens('stock trailer'),
    heard('a', 'vin', '1J9RP1A36A1644345'),
    heard('b', 'odometer', '1200'),
    heard('c', 'odometer', '1250'),
  ];
  log.append(aTurn(null, [...bodies, { kind: 'valueStruck', id: 'c' }]));
  log.append(aTurn(null, [opens('no plate')]));
  const jobs = log.search({}).jobs.map(({ title, vin, odometer }) => [title, vin, odometer]);
  expect(jobs.toSorted()).toEqual([
    ['no plate', undefined, undefined],
    ['stock trailer', '1J9RP1A36A1644345', '1200'],
  ]);
});
