// The shop's network for real: certificates checked by openssl, https by a client that trusts only our authority, pairing over it.
import { execFileSync } from 'node:child_process';
import { statSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { identity } from '../../server/http/certificates.ts';
import { somewhere } from '../support/log.ts';
import { ended, startServer } from '../support/process.ts';

const names = ['192.168.7.20', 'fd00::7', 'shop', 'shop.local', 'localhost'];
const day = 86_400_000;
const now = new Date('2026-11-25T09:00:00.000Z');

function openssl(...args: string[]): string {
  return execFileSync('openssl', args, { encoding: 'utf8' });
}

describe('the certificates', () => {
  it('are ones that browsers and telephones take', async () => {
    const folder = somewhere('tls');
    const { chain, authority } = await identity(folder, names, now);
    const at = (name: string) => join(folder, name);
    expect(
      openssl(
        'verify',
        '-attime',
        String(now.getTime() / 1000),
        '-purpose',
        'sslserver',
        '-CAfile',
        at('authority.crt'),
        at('server.crt'),
      ),
    ).toContain(': OK');
    const text = openssl('x509', '-in', at('server.crt'), '-noout', '-text');
    expect(text).toContain('ASN1 OID: prime256v1');
    expect(text).toContain('ecdsa-with-SHA256');
    expect(text).toContain('TLS Web Server Authentication');
    expect(text).toContain('CA:FALSE');
    expect(text).toContain('IP Address:192.168.7.20, IP Address:FD00:0:0:0:0:0:0:7, DNS:shop, DNS:shop.local, DNS:localhost');
    expect(openssl('x509', '-in', at('authority.crt'), '-noout', '-text')).toContain('CA:TRUE, pathlen:0');
    // Apple: 825 days (support.apple.com/103769); the CA/Browser Forum: 398. We stay under both.
    const [from, to] = openssl('x509', '-in', at('server.crt'), '-noout', '-dates')
      .split('\n')
      .map((line) => Date.parse(line.split('=')[1] ?? ''));
    expect(((to ?? 0) - (from ?? 0)) / day).toBeLessThanOrEqual(397);
    expect(chain.match(/-----BEGIN CERTIFICATE-----\n/g)).toHaveLength(2);
    expect(chain).not.toMatch(/-----END CERTIFICATE----------BEGIN/);
    expect(authority.endsWith('\n')).toBe(true);
    for (const key of ['authority.key', 'server.key']) expect(statSync(at(key)).mode & 0o777, key).toBe(0o600);
  });

  it('are kept while they are good, and renewed under the same authority when time or addresses change', async () => {
    const folder = somewhere('tls');
    const first = await identity(folder, names, now);
    expect(await identity(folder, names, new Date(now.getTime() + 300 * day))).toEqual(first);
    const later = await identity(folder, names, new Date(now.getTime() + 370 * day));
    expect(later.fingerprint).toBe(first.fingerprint);
    expect(later.chain).not.toBe(first.chain);
    const moved = await identity(folder, ['192.168.7.99', ...names], new Date(now.getTime() + 370 * day));
    expect(moved.fingerprint).toBe(first.fingerprint);
    expect(moved.chain).not.toBe(later.chain);
    expect(openssl('x509', '-in', join(folder, 'server.crt'), '-noout', '-text')).toContain('192.168.7.99');
  });
});

interface Answer {
  readonly status: number;
  readonly cookie: string;
  readonly text: string;
}

/** https as a device that trusts only this authority. */
function secure(
  ca: string,
  port: number,
  path: string,
  how: { body?: object; cookie?: string; host?: string } = {},
): Promise<Answer> {
  const host = how.host ?? `localhost:${port}`;
  const body = how.body && JSON.stringify(how.body);
  const headers = {
    host,
    origin: `https://${host}`,
    'content-type': 'application/json',
    ...(how.cookie ? { cookie: how.cookie } : {}),
  };
  return new Promise((resolve, reject) => {
    const sent = request(
      { host: 'localhost', servername: 'localhost', port, path, ca, headers, method: body ? 'POST' : 'GET' },
      (response) => {
        let text = '';
        response.setEncoding('utf8').on('data', (part) => (text += part));
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            cookie: String(response.headers['set-cookie'] ?? '').split(';')[0] ?? '',
            text,
          }),
        );
      },
    );
    sent.once('error', reject).end(body);
  });
}

describe('npm start -- --lan', () => {
  it('serves https to paired devices, the certificate by plain http, and plain pages to this computer alone', async () => {
    const db = somewhere();
    const server = await startServer(db, { LAN_PORT: '0', LAN_HELP_PORT: '0' }, ['--lan']);
    const until = async (pattern: RegExp): Promise<string> => {
      for (let i = 0; i < 100; i++) {
        const found = pattern.exec(server.output())?.[1];
        if (found) return found;
        await new Promise((next) => setTimeout(next, 50));
      }
      throw new Error(`no ${pattern} in ${server.output()}`);
    };
    const port = Number(await until(/https:\/\/\S+?:(\d+)\/pair/));
    const code = await until(/with code (\w{6})/);
    const helpPort = await until(/Trust the certificate first: http:\/\/\S+?:(\d+)\//);
    expect(server.output()).toContain('█');

    const help = `http://127.0.0.1:${helpPort}`;
    const ca = await (await fetch(`${help}/axlehand.crt`)).text();
    expect(await (await fetch(help)).text()).toMatch(/Certificate Trust Settings[\s\S]*/);
    for (const path of ['/api/jobs', '/api/health', '/log', '/pair', '/server.key', '/authority.key', '/../authority.key']) {
      const answer = await fetch(help + path);
      expect([answer.status, answer.headers.get('set-cookie')], path).toEqual([404, null]);
    }

    await expect(secure('', port, '/api/health')).rejects.toThrow(/certificate/);
    expect((await secure(ca, port, '/api/health')).status).toBe(200);
    expect((await secure(ca, port, '/api/jobs')).status).toBe(401);
    expect((await secure(ca, port, '/api/jobs', { host: `evil.test:${port}` })).status).toBe(421);
    const joined = await secure(ca, port, '/api/pair', { body: { code, name: 'bay 1' } });
    expect(JSON.parse(joined.text)).toEqual({ name: 'bay 1', role: 'desk' });
    const { cookie } = joined;
    expect((await secure(ca, port, '/api/jobs', { cookie })).status).toBe(200);
    const turn = {
      id: 'lan-turn-1',
      job: '1',
      text: 'note heard over https',
      heardBy: 'typed',
      heardAt: '2026-11-25T09:00:00.000Z',
    };
    expect((await secure(ca, port, '/api/turns', { cookie, body: turn })).status).toBe(200);

    const { devices } = (await (await fetch(`${server.address}/api/devices`)).json()) as {
      devices: { id: string; name: string }[];
    };
    expect(devices.map(({ name }) => name)).toEqual(['bay 1']);
    const gone = await fetch(`${server.address}/api/devices/${devices[0]?.id}`, {
      method: 'DELETE',
      headers: { origin: server.address },
    });
    expect(gone.status).toBe(200);
    expect((await secure(ca, port, '/api/jobs', { cookie })).status).toBe(401);
    for (const secret of [code, cookie.split('=')[1] ?? '', 'heard over https']) {
      expect(
        server
          .output()
          .split('\n')
          .filter((line) => line.startsWith('{'))
          .join('\n'),
      ).not.toContain(secret);
    }
    server.child.kill('SIGTERM');
    expect(await ended(server)).toBe(0);
  }, 40_000);

  it('takes the shop’s own certificate, and goes by the names in it and by those it is told', async () => {
    const folder = somewhere('tls');
    const { chain, key, authority } = await identity(folder, ['Axle.shop.test', '*.wild.test', 'localhost'], new Date());
    const [cert, keyFile] = [join(folder, 'own.crt'), join(folder, 'own.key')];
    writeFileSync(cert, chain);
    writeFileSync(keyFile, key, { mode: 0o600 });
    const env = { LAN_PORT: '0', LAN_NAME: 'bench.lan, 10.9.8.7' };
    const server = await startServer(somewhere(), env, ['--lan', '--cert', cert, '--key', keyFile]);
    for (let i = 0; i < 100 && !server.output().includes('/pair'); i++) await new Promise((next) => setTimeout(next, 50));
    expect(server.output()).not.toContain('Trust the certificate first');
    const port = Number(/https:\/\/bench\.lan:(\d+)\/pair/.exec(server.output())?.[1]);
    const status = async (host: string) => (await secure(authority, port, '/api/health', { host: `${host}:${port}` })).status;
    for (const host of ['localhost', 'axle.shop.test', 'bench.lan', '10.9.8.7']) expect(await status(host), host).toBe(200);
    for (const host of ['other.shop.test', '*.wild.test', 'x.wild.test', '10.9.8.6']) expect(await status(host), host).toBe(421);
    server.child.kill('SIGTERM');
    await ended(server);
  }, 40_000);

  it('says in one line why it cannot serve the network, and leaves nothing listening', async () => {
    const folder = somewhere('tls');
    await identity(folder, ['localhost'], new Date());
    await identity(`${folder}-other`, ['localhost'], new Date());
    const [cert, otherKey] = [join(folder, 'server.crt'), join(`${folder}-other`, 'server.key')];
    const first = await startServer(somewhere(), { LAN_PORT: '0', LAN_HELP_PORT: '0' }, ['--lan']);
    for (let i = 0; i < 100 && !first.output().includes('/pair'); i++) await new Promise((next) => setTimeout(next, 50));
    const LAN_PORT = /https:\/\/\S+?:(\d+)\/pair/.exec(first.output())?.[1] ?? '';
    const why = (env: Record<string, string>, ...args: string[]) =>
      startServer(somewhere(), { LAN_PORT: '0', LAN_HELP_PORT: '0', ...env }, ['--lan', ...args]).then(
        () => 'started',
        ({ message }: Error) => message,
      );
    const one = (words: string) => new RegExp(`^server ended with 1: axlehand: [^\\n]*${words}[^\\n]*\\n$`);
    expect(await why({ LAN_PORT })).toMatch(one('in use.*LAN_PORT'));
    expect(await why({ LAN_HELP_PORT: LAN_PORT })).toMatch(one('in use'));
    expect(await why({ LAN_PORT: '70000' })).toMatch(one('LAN_PORT is no port number'));
    expect(await why({ LAN_NAME: 'http://x' })).toMatch(one('LAN_NAME'));
    expect(await why({}, '--cert', cert)).toMatch(one('--cert FILE --key FILE'));
    expect(await why({}, '--cert', cert, '--key', `${cert}.none`)).toMatch(one('no such file'));
    expect(await why({}, '--cert', cert, '--key', otherKey)).toMatch(one('key that belongs to it'));
    expect(await why({}, '--cert', otherKey, '--key', otherKey)).toMatch(one('key that belongs to it'));
    first.child.kill('SIGTERM');
    await ended(first);
  }, 90_000);
});
