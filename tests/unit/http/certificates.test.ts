// Certificates whose files were torn or lost, at start and under a server that runs.
import { readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { join } from 'node:path';
import type { TLSSocket } from 'node:tls';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { AuthorityFault, identity } from '../../../server/http/certificates.ts';
import { openLan } from '../../../server/http/lan.ts';
import { somewhere } from '../../support/log.ts';
import { aServer } from '../../support/server.ts';

const names = ['localhost'];
const now = new Date();
const torn = (path: string) => truncateSync(path, Math.floor(statSync(path).size / 2));

describe('at start', () => {
  it.each(['server.crt', 'server.key'])(
    'makes the server certificate anew where %s is torn, under the same authority',
    async (name) => {
      const folder = somewhere('tls');
      const first = await identity(folder, names, now);
      torn(join(folder, name));
      const next = await identity(folder, names, now);
      expect(next.fingerprint).toBe(first.fingerprint);
      expect(next.chain).not.toBe(first.chain);
      expect(await identity(folder, names, now)).toEqual(next);
    },
  );

  it('makes it anew where the key belongs to another certificate', async () => {
    const [folder, other] = [somewhere('tls'), somewhere('tls')];
    const first = await identity(folder, names, now);
    writeFileSync(join(folder, 'server.key'), (await identity(other, names, now)).key);
    expect((await identity(folder, names, now)).key).not.toBe(first.key);
  });

  it.each(['authority.crt', 'authority.key'])(
    'replaces no authority that devices trust where %s is torn or lost',
    async (name) => {
      const folder = somewhere('tls');
      await identity(folder, names, now);
      torn(join(folder, name));
      await expect(identity(folder, names, now)).rejects.toThrow(AuthorityFault);
      rmSync(join(folder, name));
      await expect(identity(folder, names, now)).rejects.toThrow(AuthorityFault);
    },
  );
});

describe('under a running server', () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  /** The fingerprint of the certificate that is served now, trusted through `ca`. */
  const served = (ca: string, port: number): Promise<string> =>
    new Promise((resolve, reject) => {
      const sent = request(
        { host: 'localhost', servername: 'localhost', port, ca, path: '/api/health', agent: false },
        (response) => {
          resolve((response.socket as TLSSocket).getPeerCertificate().fingerprint256);
          response.resume();
        },
      );
      sent.once('error', reject).end();
    });

  it('keeps the one it has while the files cannot be read, says so, and takes the renewed one after', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    const folder = somewhere('tls');
    const server = await aServer();
    const lan = await openLan(server, { folder, port: 0, helpPort: 0, host: '127.0.0.1', names });
    const { authority } = await identity(folder, names, now);
    const key = join(folder, 'authority.key');
    const whole = readFileSync(key);
    const first = await served(authority, lan.port);
    const minute = (then: () => Promise<void>) => {
      vi.advanceTimersByTime(60_000);
      return vi.waitFor(then, { timeout: 5000 });
    };
    torn(key);
    await minute(async () => expect(server.lines.join()).toContain('certificateNotRenewed'));
    expect(server.lines.join()).not.toContain('BEGIN');
    expect(await served(authority, lan.port)).toBe(first);
    writeFileSync(key, whole);
    rmSync(join(folder, 'server.crt'));
    await minute(async () => expect(await served(authority, lan.port)).not.toBe(first));
    vi.useRealTimers();
    await lan.stop();
  });
});
