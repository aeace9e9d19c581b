// The rack over HTTP: a list with faults, and a job held against it check by check.
import { expect, test } from 'vitest';
import { demoStock } from '#data';
import type { EventBody } from '#log/events';
import type { JobRack, StockLineFault } from '#wire';
import { aLog, aTurn } from '../../support/log.ts';
import { wholeTrailer } from '../../support/readings.ts';
import { aServer } from '../../support/server.ts';

const csv = { 'content-type': 'text/csv' };

test('a fault names file, line, column, reason and what stood there; blank lines keep the count', async () => {
  const server = await aServer();
  const list =
    'id,title,hubFace,boltPattern\n\nA,one,72 3/8,5x9/2\nB,two,1838 mm,five\n,three,72,\n"C\tx",four,72,\nD,five,wide,5x5\n';
  const response = await server.call('/api/stock?file=rack.csv', { method: 'POST', body: list, headers: csv });
  const { taken, faults = [] } = (await response.json()) as { taken: number; faults?: StockLineFault[] };
  expect(taken).toBe(1);
  expect(faults.map(({ file, line, column }) => `${file} ${line} ${column}`)).toEqual([
    'rack.csv 4 boltPattern',
    'rack.csv 5 id',
    'rack.csv 6 id',
    'rack.csv 7 hubFace',
  ]);
  expect(faults.at(0)?.fault).toMatch(/studs and circle.*not "five"/);
  expect(server.log.stock()).toMatchObject([{ id: 'A', values: { hubFace: '579/8', boltPattern: '5x9/2' } }]);
});

test('a field in quotes may run over lines, and a fault below it is still named by its own line', async () => {
  const server = await aServer();
  const list = 'id,title,hubFace\r\nA,"one\r\n\r\nlong",72\r\nB,two,wide\r\nC,three\r\nD,four,900\r\nE,five,"72"x\r\nF,six,7\r\n';
  const response = await server.call('/api/stock', { method: 'POST', body: list, headers: csv });
  const { faults = [] } = (await response.json()) as { faults?: StockLineFault[] };
  expect(faults.map(({ line, column }) => `${line} ${column}`)).toEqual(
    expect.arrayContaining(['5 hubFace', '6 ', '7 hubFace', '8 ']),
  );
});

async function rackOf(values: Readonly<Record<string, string>>) {
  const heard = Object.entries(values).map(
    ([field, value]): EventBody => ({
      kind: 'valueHeard',
      value: { id: field, field: field as 'hubFace', stage: 'found', value, raw: value, heardBy: 'typed' },
    }),
  );
  const log = aLog();
  log.append(aTurn(null, [{ kind: 'jobOpened', jobKind: 'axleReplacement', title: 'flatbed' }, ...heard]));
  log.putStock(demoStock);
  const server = await aServer({}, log);
  return { server, rack: (await (await server.call('/api/jobs/1/rack?most=4')).json()) as JobRack };
}

test('each axle comes with its checks: name, measured, needed, margin, result, why, source; the best first', async () => {
  const { server, rack } = await rackOf(wholeTrailer);
  expect(rack.counts.fits + rack.counts.fitsWithWork + rack.counts.cannotSayYet + rack.counts.doesNotFit).toBe(demoStock.length);
  expect(rack.best).toHaveLength(4);
  const [best] = rack.best;
  expect([best?.id, best?.result]).toEqual(['TB-3502', 'fits']);
  expect(best?.rows.find(({ check }) => check === 'springCentre')).toMatchObject({
    name: 'Spring centre',
    measured: '58 in',
    needed: '57 7/8 in to 58 1/8 in',
    margin: '1/8 in',
    result: 'fits',
    rests: ['springCentre'],
    unconfirmed: ['springCentre'],
    source: 'common practice, no source',
  });
  expect(rack.nearest.map(({ id }) => id)).toContain('TB-3511');
  expect(rack.nearest.find(({ id }) => id === 'TB-3511')?.takes.join()).toMatch(/hubs with the right pattern/);
  expect((await server.call('/api/jobs/9/rack')).status).toBe(404);
  expect((await server.call('/api/jobs/1/rack?most=0')).status).toBe(400);
});

test('what cannot be right is named, and the rest is still computed', async () => {
  const { rack } = await rackOf({ ...wholeTrailer, hubFace: '57', tyreSize: 'round', innerBearing: 'QQ9' });
  expect(rack.problems).toHaveLength(4);
  expect(rack.problems.join('\n')).toMatch(/hub face must be wider than spring centre[\s\S]*no bearing on file/);
  expect(rack.best.at(0)?.rows.find(({ check }) => check === 'boltPattern')?.result).toBe('fits');
});
