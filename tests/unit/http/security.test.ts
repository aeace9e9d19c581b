import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LogFault } from '#log';
import type { DeviceList, ErrorBody } from '#wire';
import { aLog, somewhere } from '../../support/log.ts';
import { aServer, ownHost, ownOrigin, paired, spoken } from '../../support/server.ts';

const open = () => ({ method: 'POST', body: spoken('open a job for the blue trailer') });

async function refusal(response: Response): Promise<[status: number, code: string]> {
  const { error } = (await response.json()) as ErrorBody;
  expect(Object.keys(error).sort()).toEqual(['code', 'message', 'whatToDo']);
  expect(error.whatToDo).not.toBe('');
  return [response.status, error.code];
}

describe('whose name and whose page', () => {
  it.each([
    'evil.test',
    'evil.test:8090',
    'shop.test',
    'shop.test:80',
    'shop.test:8090.evil.test',
    '',
    '127.0.0.1:8090@evil.test',
  ])('refuses the host "%s"', async (host) => {
    const server = await aServer();
    for (const path of ['/', '/api/jobs', '/api/health']) {
      expect(await refusal(await server.call(path, { headers: { host } }))).toEqual([421, 'wrongHost']);
    }
    expect(await refusal(await server.call('/api/turns', { ...open(), headers: { host, origin: `http://${host}` } }))).toEqual([
      421,
      'wrongHost',
    ]);
    expect(server.log.head()).toBe(0);
  });

  it.each([
    ['no origin', { origin: '' }],
    ['null', { origin: 'null' }],
    ['another site', { origin: 'https://evil.test' }],
    ['our name, other scheme', { origin: `https://${ownHost}` }],
    ['our name, other port', { origin: 'http://shop.test:9999' }],
    ['cross-site by the browser’s word', { origin: ownOrigin, 'sec-fetch-site': 'cross-site' }],
    ['same-site by the browser’s word', { origin: ownOrigin, 'sec-fetch-site': 'same-site' }],
  ])('refuses a change from %s', async (_, headers) => {
    const server = await aServer();
    expect(await refusal(await server.call('/api/turns', { ...open(), headers }))).toEqual([403, 'wrongOrigin']);
    expect(server.log.head()).toBe(0);
  });

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', ''])(
    'refuses a body of type "%s"',
    async (type) => {
      const server = await aServer();
      expect((await refusal(await server.call('/api/turns', { ...open(), headers: { 'content-type': type } })))[0]).toBe(400);
      expect(server.log.head()).toBe(0);
    },
  );
});

describe('devices', () => {
  const asked = { trusted: false };

  it('gives an unknown device nothing but the page, the way to join and a sign of life', async () => {
    const server = await aServer(asked);
    for (const path of [
      '/api/jobs',
      '/api/jobs/1',
      '/api/jobs/1/events',
      '/api/stream',
      '/api/settings',
      '/api/stock',
      '/api/devices',
      '/api/metrics',
    ]) {
      expect(await refusal(await server.call(path)), path).toEqual([401, 'unpaired']);
    }
    expect(await refusal(await server.call('/api/turns', open()))).toEqual([401, 'unpaired']);
    expect((await server.call('/api/health')).status).toBe(200);
    expect(server.log.head()).toBe(0);
  });

  it('sets a cookie that scripts and other sites cannot use', async () => {
    const server = await aServer(asked);
    const { code } = server.pairing.invite('bay');
    const response = await server.call('/api/pair', { method: 'POST', body: { code: code.toLowerCase(), name: 'bay 1' } });
    expect(await response.json()).toEqual({ name: 'bay 1', role: 'bay' });
    const cookie = response.headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/^__Host-axlehand=[\w-]{43};/);
    for (const part of ['HttpOnly', 'Secure', 'SameSite=Strict', 'Path=/']) expect(cookie).toContain(part);
    expect(cookie).not.toContain('Domain');
  });

  it('takes a code once, for five minutes, and five wrong ones void all', async () => {
    let now = '2026-11-25T09:00:00.000Z';
    const server = await aServer(asked, undefined, () => now);
    const join = async (code: string) => server.call('/api/pair', { method: 'POST', body: { code, name: 'bay 1' } });
    const used = server.pairing.invite('bay');
    expect((await join(used.code)).status).toBe(200);
    expect(await refusal(await join(used.code))).toEqual([403, 'wrongCode']);
    const late = server.pairing.invite('bay');
    now = '2026-11-25T09:05:01.000Z';
    expect(await refusal(await join(late.code))).toEqual([403, 'wrongCode']);
  });

  it('locks after five wrong codes until a new one is asked for at the screen', () => {
    const pairs = async () => {
      const { pairing } = await aServer(asked);
      const right = pairing.invite('bay');
      const answers = Array.from({ length: 5 }, () => pairing.join('WRONG2', 'x'));
      expect(answers).toEqual(['wrongCode', 'wrongCode', 'wrongCode', 'wrongCode', 'locked']);
      expect(pairing.join(right.code, 'x')).toBe('locked');
      expect(pairing.join(pairing.invite('bay').token, 'x')).toMatchObject({ device: { role: 'bay' } });
    };
    return pairs();
  });

  it('slows down guessing', async () => {
    const server = await aServer(asked);
    const statuses: number[] = [];
    for (let i = 0; i < 8; i++) {
      statuses.push((await server.call('/api/pair', { method: 'POST', body: { code: `WRONG${i}`, name: 'x' } })).status);
      server.pairing.invite('bay');
    }
    expect(statuses.slice(0, 5)).toEqual([403, 403, 403, 403, 403]);
    expect(statuses.slice(5)).toEqual([429, 429, 429]);
  });

  it('lets a reader look, a bay talk and a desk do everything', async () => {
    const server = await aServer(asked);
    const reader = { cookie: await paired(server, 'reader') };
    const bay = { cookie: await paired(server, 'bay') };
    const desk = { cookie: await paired(server, 'desk') };
    const status = async (headers: Record<string, string>, path: string, call: object = {}) =>
      (await server.call(path, { ...call, headers })).status;
    expect([await status(reader, '/api/turns', open()), await status(bay, '/api/turns', open())]).toEqual([403, 200]);
    const action = { id: 'desk-action', version: 0, action: 'strike', target: 'x', reason: 'y' };
    const post = { method: 'POST', body: action };
    expect([
      await status(reader, '/api/jobs/1/desk', post),
      await status(bay, '/api/jobs/1/desk', post),
      await status(desk, '/api/jobs/1/desk', post),
    ]).toEqual([403, 403, 409]);
    expect([await status(reader, '/api/jobs'), await status(bay, '/api/devices'), await status(desk, '/api/devices')]).toEqual([
      200, 403, 200,
    ]);
    const settings = {
      method: 'PUT',
      body: { name: 'x', lengthUnit: 'mm', spelling: 'british', sides: { left: 'near side', right: 'off side' } },
    };
    expect([await status(bay, '/api/settings', settings), await status(desk, '/api/settings', settings)]).toEqual([403, 200]);
    expect(server.log.events('1')[0]?.who).toBe('a bay');
  });

  it('names, lists and revokes; a revoked device is out at once and its streams end', async () => {
    const server = await aServer(asked);
    const desk = { cookie: await paired(server, 'desk') };
    const bay = { cookie: await paired(server, 'bay', 'bay 1') };
    const { devices } = (await (await server.call('/api/devices', { headers: desk })).json()) as {
      devices: { id: string; name: string }[];
    };
    const id = devices.find(({ name }) => name === 'bay 1')?.id ?? '';
    expect(JSON.stringify(devices)).not.toContain('token');
    const change = async (body: object) =>
      (await server.call(`/api/devices/${id}`, { method: 'PUT', body, headers: desk })).status;
    expect(await change({ name: 'bay 7' })).toBe(200);
    expect(server.log.devices().find((device) => device.id === id)).toMatchObject({ name: 'bay 7', role: 'bay' });
    expect([await change({}), await change({ role: 'king' }), await change({ name: '--' })]).toEqual([400, 400, 400]);
    const stream = await server.call('/api/stream', { headers: bay });
    expect(stream.status).toBe(200);
    expect((await server.call(`/api/devices/${id}`, { method: 'DELETE', headers: desk })).status).toBe(200);
    expect(await stream.text()).toContain('event: bye');
    expect(await change({ name: 'back again' })).toBe(404);
    expect(await refusal(await server.call('/api/jobs', { headers: bay }))).toEqual([401, 'unpaired']);
    expect(await refusal(await server.call(`/api/devices/${id}`, { method: 'DELETE', headers: desk }))).toEqual([
      404,
      'noSuchDevice',
    ]);
  });

  it('makes a device read-only at once, and a bay again', async () => {
    const server = await aServer(asked);
    const desk = { cookie: await paired(server, 'desk', 'front desk') };
    const bay = { cookie: await paired(server, 'bay', 'bay 1') };
    const { devices, own } = (await (await server.call('/api/devices', { headers: desk })).json()) as DeviceList;
    const of = (name: string) => devices.find((device) => device.name === name)?.id;
    expect(own).toBe(of('front desk'));
    const talks = async () => (await server.call('/api/turns', { ...open(), headers: bay })).status;
    const put = (role: string) => server.call(`/api/devices/${of('bay 1')}`, { method: 'PUT', body: { role }, headers: desk });
    expect(await talks()).toBe(200);
    expect((await put('reader')).status).toBe(200);
    expect([await talks(), (await server.call('/api/jobs/1', { headers: bay })).status]).toEqual([403, 200]);
    expect((await put('bay')).status).toBe(200);
    expect(await talks()).toBe(200);
    expect(server.log.devices().map(({ name }) => name)).toEqual(['bay 1', 'front desk']);
  });

  it('forgets a device that was idle for 90 days or is a year old', async () => {
    let now = '2026-01-01T00:00:00.000Z';
    const server = await aServer(asked, undefined, () => now);
    const bay = { cookie: await paired(server, 'bay') };
    const status = async () => (await server.call('/api/jobs', { headers: bay })).status;
    for (const [day, expected] of [
      ['2026-03-15', 200],
      ['2026-06-10', 200],
      ['2026-09-07', 200],
      ['2026-12-01', 200],
      ['2027-01-02', 401],
    ] as const) {
      now = `${day}T00:00:00.000Z`;
      expect(await status(), day).toBe(expected);
    }
    now = '2026-12-01T00:00:00.000Z';
    const other = { cookie: await paired(server, 'bay') };
    now = '2027-03-02T00:00:00.000Z';
    expect((await server.call('/api/jobs', { headers: other })).status).toBe(401);
  });
});

it('lets a device look that cannot be noted as seen, because the disk takes no more', async () => {
  let now = '2026-11-25T09:00:00.000Z';
  const log = aLog();
  const full = () => {
    throw new LogFault('full');
  };
  const server = await aServer({ trusted: false }, { ...log, deviceSeen: full }, () => now);
  const cookie = await paired(server, 'desk');
  now = '2026-11-27T09:00:00.000Z';
  expect((await server.call('/api/jobs', { headers: { cookie } })).status).toBe(200);
});

describe('how much', () => {
  it('asks a caller that is too quick to wait', async () => {
    const server = await aServer({ limit: { perSecond: 1, burst: 3 } });
    const answers = await Promise.all(Array.from({ length: 5 }, () => server.call('/api/jobs')));
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200, 429, 429]);
    expect(answers[4]?.headers.get('retry-after')).toBe('1');
  });

  it('limits bodies, with and without a length, and long sayings', async () => {
    const server = await aServer();
    const long = { method: 'POST', body: spoken('x'.repeat(70_000)) };
    expect(await refusal(await server.call('/api/turns', long))).toEqual([413, 'tooLarge']);
    const stream = new Response(JSON.stringify(long.body)).body;
    const chunked = await server.app.request('/api/turns', {
      method: 'POST',
      headers: { host: ownHost, origin: ownOrigin, 'content-type': 'application/json' },
      body: stream,
      duplex: 'half',
    } as RequestInit);
    expect(chunked.status).toBe(413);
    expect((await refusal(await server.call('/api/turns', { method: 'POST', body: spoken('x'.repeat(10_000)) })))[0]).toBe(400);
    expect(server.log.head()).toBe(0);
  });
});

describe('what goes out', () => {
  it('dresses every reply, errors too', async () => {
    const server = await aServer();
    for (const path of ['/', '/api/jobs', '/api/none', '/nowhere', '/api/jobs/99']) {
      const { headers } = await server.call(path);
      expect(headers.get('content-security-policy'), path).toContain("default-src 'none'");
      expect(headers.get('content-security-policy'), path).toContain(
        "require-trusted-types-for 'script'; trusted-types axlehand",
      );
      expect(headers.get('content-security-policy'), path).not.toContain('unsafe-inline');
      expect(headers.get('x-content-type-options'), path).toBe('nosniff');
      expect(headers.get('referrer-policy'), path).toBe('no-referrer');
      expect(headers.get('cross-origin-resource-policy'), path).toBe('same-origin');
      if (path.startsWith('/api/')) expect(headers.get('cache-control'), path).toBe('no-store');
    }
  });

  it.each([
    '/../package.json',
    '/%2e%2e/package.json',
    '/..%2fpackage.json',
    '/..%5cpackage.json',
    '/.git/config',
    '/%2egit/config',
    '/assets/../../../package.json',
    '/assets/',
    '/voice',
    '//etc/passwd',
    '/%00',
    '/.env',
    '/axlehand.db',
    '/%',
  ])('gives out no file at %s', async (path) => {
    const server = await aServer();
    expect((await refusal(await server.call(path)))[0]).toBe(404);
  });

  it.each([
    ['GET', '/api/turns', 'POST'],
    ['POST', '/api/jobs', 'GET, HEAD'],
    ['PATCH', '/api/devices/x', 'PUT, DELETE'],
    ['OPTIONS', '/api/settings', 'GET, HEAD, PUT'],
    ['DELETE', '/api/jobs/1/sheet.csv', 'GET, HEAD'],
    ['POST', '/jobs/1', 'GET, HEAD'],
  ])('names the methods of an address that is asked by %s %s', async (method, path, allow) => {
    const server = await aServer();
    const response = await server.call(path, { method });
    expect(await refusal(response)).toEqual([405, 'wrongMethod']);
    expect(response.headers.get('allow')).toBe(allow);
    const nowhere = await server.call('/api/nowhere', { method });
    expect([await refusal(nowhere), nowhere.headers.get('allow')]).toEqual([[404, 'notFound'], null]);
  });

  it('gives out the built page and nothing hidden beside it', async () => {
    const folder = dirname(somewhere());
    for (const name of ['bay.html', '.env', '..db']) writeFileSync(join(folder, name), name);
    mkdirSync(join(folder, '.git'));
    writeFileSync(join(folder, '.git/config'), 'hidden');
    const server = await aServer({}, undefined, undefined, folder);
    expect(await (await server.call('/')).text()).toBe('bay.html');
    for (const path of ['/.env', '/%2eenv', '/..db', '/.git/config', '/x/..%2f.env']) {
      expect(await refusal(await server.call(path)), path).toEqual([404, 'notFound']);
    }
  });

  it('shows nothing of its inside when it fails, and lets nothing of it in the log', async () => {
    const server = await aServer();
    const failing = {
      ...server.log,
      job: () => {
        throw new Error('secret inside /work');
      },
    };
    const broken = await aServer({}, failing as never);
    const response = await broken.call('/api/jobs/1');
    expect(response.status).toBe(500);
    expect(await response.text()).not.toMatch(/secret|at .*\.ts/);
    expect(broken.lines.join('\n')).toContain('"level":"error"');
    expect(broken.lines.join('\n')).not.toContain('secret');
  });

  it('writes no word that was said into its own log', async () => {
    const server = await aServer();
    await server.call('/api/turns', { method: 'POST', body: spoken('open a job for the zebra trailer of Quagga') });
    await server.call('/api/jobs?q=zebra');
    await server.call('/api/pair', { method: 'POST', body: { code: 'ZEBRA2', name: 'zebra' } });
    expect(server.lines.length).toBeGreaterThan(2);
    expect(server.lines.join('\n')).not.toMatch(/zebra|quagga/i);
  });
});

describe('the rack', () => {
  const head = 'id,title,place,quantity,hubFace,springCentre,brakeType\n';
  const post = (body: string) => ({ method: 'POST', body, headers: { 'content-type': 'text/csv' } });

  it('takes a good list whole', async () => {
    const server = await aServer();
    const response = await server.call(
      '/api/stock',
      post(`${head}A-1,Axle one,rack 1,2,72 3/8,58,electric\nA-2,"Axle, two",,,73.5,,\n`),
    );
    expect(await response.json()).toEqual({ taken: 2 });
    expect(server.log.stock()[0]).toEqual({
      id: 'A-1',
      title: 'Axle one',
      place: 'rack 1',
      quantity: 2,
      invented: false,
      values: { hubFace: '579/8', springCentre: '58', brakeType: 'electric' },
    });
    expect(server.log.stock()[1]?.values).toEqual({ hubFace: '147/2' });
  });

  it('keeps the good lines of a list and names line, column and fault of the bad ones', async () => {
    const server = await aServer();
    const csv = `${head}A,x,,1,72,58,electric\nA,y,,1,72,58,electric\nB,z,,1,wide,58,electric\nC,w,,1,73,58,idler\n`;
    const { taken, faults } = (await (await server.call('/api/stock', post(csv))).json()) as { taken: number; faults: object[] };
    expect(taken).toBe(2);
    expect(faults).toMatchObject([
      { line: 3, column: 'id', fault: 'is also on line 2' },
      { line: 4, column: 'hubFace' },
    ]);
    expect(server.log.stock().map(({ id }) => id)).toEqual(['A', 'C']);
  });

  it('gives the list out as it takes it in', async () => {
    const server = await aServer();
    await server.call('/api/stock', post(`${head}A-1,"Axle, one",rack 1,2,72 3/8,58,electric\nA-2,Two,,,73.5,,\n`));
    const before = server.log.stock();
    const csv = await (await server.call('/api/stock?format=csv')).text();
    expect(await (await server.call('/api/stock', post(csv))).json()).toEqual({ taken: 2 });
    expect(server.log.stock()).toEqual(before);
  });

  it.each([
    ['an unknown column', 'id,title,colour\nA,x,red\n', /line 1, colour/],
    ['no axle', head, /line 2, whole line: no axle/],
    ['a missing column', 'id,quantity\nA,1\n', /line 1, title/],
    ['no number', `${head}A,x,,1,wide,58,electric\n`, /line 2, hubFace: a number such as "\d+", from \d+ to \d+ in; not "wide"/],
    ['a number out of range', `${head}A,x,,1,7000,58,electric\n`, /line 2, hubFace/],
    ['a choice that is none', `${head}A,x,,1,72,58,steam\n`, /line 2, brakeType: one of/],
    ['a quantity of half', `${head}A,x,,0.5,72,58,electric\n`, /line 2, quantity/],
    ['a row too long', `${head}A,x,,1,72,58,electric,more\n`, /line 2/],
  ])('refuses %s and keeps the old list', async (_, csv, message) => {
    const server = await aServer();
    await server.call('/api/stock', post(`${head}A-1,Axle one,,1,72,58,electric\n`));
    const response = await server.call('/api/stock', post(csv));
    expect(response.status).toBe(422);
    expect(((await response.json()) as ErrorBody).error.message).toMatch(message);
    expect(server.log.stock()).toHaveLength(1);
  });
});
