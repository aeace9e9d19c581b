// The shop's network: https for the app, with pairing; a little plain http for the certificate alone.
import { readFileSync } from 'node:fs';
import QRCode from 'qrcode';
import { hostWithPort, lanAddresses, ownNames } from './addresses.ts';
import { createApp, type Services } from './app.ts';
import { type Identity, identity } from './certificates.ts';
import { type Listening, listen } from './serve.ts';
import { trustApp } from './trust.ts';

export interface LanWish {
  /** Where the certificates are kept. */
  readonly folder: string;
  readonly port: number;
  readonly helpPort: number;
  /** All interfaces unless said otherwise. */
  readonly host?: string;
  /** The shop's own certificate, as files. */
  readonly own?: { readonly cert: string; readonly key: string };
}

export interface Lan {
  /** Ready to print: addresses, fingerprint, pairing code and QR. */
  readonly notice: string;
  readonly port: number;
  stop(): Promise<void>;
}

const renewEveryMs = 12 * 3_600_000;
const deviceLimit = { perSecond: 20, burst: 60 };

export async function openLan(services: Services, wish: LanWish): Promise<Lan> {
  const names = () => [...lanAddresses(), ...ownNames()];
  const made = wish.own ? undefined : await identity(wish.folder, names(), new Date(services.clock()));
  const tls = made ? { cert: made.chain, key: made.key } : readOwn(wish.own);
  let port = wish.port;
  const gate = {
    hosts: () => names().map((name) => hostWithPort(name, port, 443)),
    scheme: 'https',
    trusted: false,
    limit: deviceLimit,
  } as const;
  const secure = await listen(createApp(services, gate), wish.host, wish.port, tls);
  port = secure.port;
  const address = `https://${hostWithPort(lanAddresses()[0] ?? 'localhost', port, 443)}`;
  const help = made && (await listen(trustApp(made.authority, made.fingerprint, address), wish.host, wish.helpPort));
  const renewing = setInterval(() => void renew(services, wish, names(), secure), renewEveryMs).unref();
  return {
    notice: await notice(services, address, made, help),
    port,
    async stop() {
      clearInterval(renewing);
      await Promise.all([secure.stop(), help?.stop()]);
    },
  };
}

function readOwn(own: LanWish['own']): { cert: string; key: string } {
  if (!own) throw new TypeError('no certificate given');
  return { cert: readFileSync(own.cert, 'utf8'), key: readFileSync(own.key, 'utf8') };
}

async function renew(services: Services, wish: LanWish, names: readonly string[], secure: Listening): Promise<void> {
  if (wish.own) return secure.renew(readOwn(wish.own));
  const { chain, key } = await identity(wish.folder, names, new Date(services.clock()));
  secure.renew({ cert: chain, key });
}

async function notice(
  { pairing }: Services,
  address: string,
  made: Identity | undefined,
  help: Listening | undefined,
): Promise<string> {
  const { code, token } = pairing.invite('desk');
  // The code travels behind the #, which a browser keeps to itself.
  const qr = await QRCode.toString(`${address}/pair#${token}`, { type: 'terminal', small: true });
  const lines = [`On the shop's network: ${address}/pair with code ${code} (five minutes, once; pairs a desk)`];
  if (made && help)
    lines.push(`Trust the certificate first: http://${new URL(address).hostname}:${help.port}/`, `SHA-256 ${made.fingerprint}`);
  return [...lines, qr].join('\n');
}
