// The shop's network: https for the app, with pairing; a little plain http for the certificate alone.
import { readFileSync } from 'node:fs';
import { createSecureContext } from 'node:tls';
import QRCode from 'qrcode';
import { hostWithPort, lanAddresses, ownNames } from './addresses.ts';
import { createApp, type Services } from './app.ts';
import { type Identity, identity, namesIn } from './certificates.ts';
import { alongside, type Listening, listen, type Tls } from './serve.ts';
import { trustApp } from './trust.ts';

export interface LanWish {
  /** Where the certificates are kept. */
  readonly folder: string;
  readonly port: number;
  readonly helpPort: number;
  /** All interfaces unless said otherwise. */
  readonly host?: string;
  /** Names and addresses by which devices reach this machine where they are not its own: a router's name for it, a container's host. */
  readonly names: readonly string[];
  /** The shop's own certificate, as files. */
  readonly own?: { readonly cert: string; readonly key: string };
}

export interface Lan {
  /** Ready to print: addresses, fingerprint, pairing code and QR. */
  readonly notice: string;
  readonly port: number;
  stop(): Promise<void>;
}

const renewEveryMs = 60_000;
const deviceLimit = { perSecond: 20, burst: 60 };

/** @throws the listen error, or ENOENT, ERR_OSSL_... where the shop's own certificate cannot be used */
export async function openLan(services: Services, wish: LanWish): Promise<Lan> {
  const first = await certificate(services, wish);
  let { names } = first;
  let port = wish.port;
  const gate = {
    hosts: () => names.map((name) => hostWithPort(name, port, 443)),
    scheme: 'https',
    trusted: false,
    limit: deviceLimit,
  } as const;
  const secure = await listen(createApp(services, gate), wish.host, wish.port, first.tls);
  port = secure.port;
  const address = `https://${hostWithPort(names[0] ?? 'localhost', port, 443)}`;
  const { made } = first;
  const help =
    made &&
    (await alongside(secure, () => listen(trustApp(made.authority, made.fingerprint, address), wish.host, wish.helpPort)));
  const renewing = setInterval(() => {
    // An address that came with a new lease counts from now on; a certificate that is about to run out is made anew.
    certificate(services, wish).then(
      (next) => {
        names = next.names;
        secure.renew(next.tls);
      },
      (error: unknown) => services.line('error', 'certificateNotRenewed', { why: error instanceof Error ? error.message : '' }),
    );
  }, renewEveryMs).unref();
  return {
    notice: await notice(services, address, made, help),
    port,
    async stop() {
      clearInterval(renewing);
      await Promise.all([secure.stop(), help?.stop()]);
    },
  };
}

interface Certificate {
  readonly tls: Tls;
  /** What the server answers to; the first is the one to print. */
  readonly names: readonly string[];
  /** Absent where the certificate is the shop's own. */
  readonly made?: Identity;
}

async function certificate({ clock }: Services, { own, names, folder }: LanWish): Promise<Certificate> {
  const here = [...new Set([...names, ...lanAddresses(), ...ownNames()])];
  if (own) {
    const tls = { cert: readFileSync(own.cert, 'utf8'), key: readFileSync(own.key, 'utf8') };
    createSecureContext(tls);
    return { tls, names: [...new Set([...names, ...namesIn(tls.cert), ...here])] };
  }
  const made = await identity(folder, here, new Date(clock()));
  return { tls: { cert: made.chain, key: made.key }, names: here, made };
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
