// The shop's own certificate authority and the server's certificate, made on first use. Devices trust the authority once;
// the certificate under it is renewed before it runs out and when the machine's addresses change.
import { createPrivateKey, X509Certificate } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as x509 from '@peculiar/x509';

export interface Identity {
  /** The authority's certificate, for devices to trust. */
  readonly authority: string;
  /** SHA-256 of the authority, to compare by eye: "1A:2B:..." */
  readonly fingerprint: string;
  /** Server certificate and authority, in one text. */
  readonly chain: string;
  readonly key: string;
}

const algorithm = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;
const day = 86_400_000;
/** Browsers refuse leaves that live longer: 398 days is the limit of the CA/Browser Forum baseline requirements. */
const leafDays = 397;
const renewDays = 30;
const authorityDays = 3650;
x509.cryptoProvider.set(crypto);

/** The authority that devices trust is there, but cannot be used. It is not replaced unasked: every device would have to trust anew. */
export class AuthorityFault extends Error {
  readonly whatToDo =
    'Put the folder back from a copy; or move it away: a new authority is made, to be trusted once more by each device.';
}

/** Reads or makes the files in `folder`; a server certificate that cannot be used is made anew. `names`: host names and IP
 * addresses the server goes by. @throws AuthorityFault */
export async function identity(folder: string, names: readonly string[], now: Date): Promise<Identity> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const at = (name: string) => join(folder, name);
  if (!existsSync(at('authority.key')) && !existsSync(at('authority.crt'))) await makeAuthority(at, now);
  if (!isPair(at('authority.crt'), at('authority.key')))
    throw new AuthorityFault(`The shop's certificate authority in ${folder} is damaged.`);
  const authority = readFileSync(at('authority.crt'), 'utf8');
  if (!isGood(at, authority, names, now)) await makeLeaf(at, authority, names, now);
  const leaf = readFileSync(at('server.crt'), 'utf8');
  const { fingerprint256 } = new X509Certificate(authority);
  return { authority, fingerprint: fingerprint256, chain: `${leaf}\n${authority}`, key: readFileSync(at('server.key'), 'utf8') };
}

/** Host names and addresses that a certificate is made out to; one for all names under a domain names no host. */
export function namesIn(pem: string): string[] {
  const { subjectAltName = '' } = new X509Certificate(pem);
  const named = subjectAltName.split(', ').flatMap((entry) => /^(?:DNS|IP Address):(.+)$/.exec(entry)?.[1] ?? []);
  return named.filter((name) => !name.includes('*')).map((name) => name.toLowerCase());
}

type Key = Awaited<ReturnType<typeof crypto.subtle.importKey>>;
type At = (name: string) => string;

async function makeAuthority(at: At, now: Date): Promise<void> {
  const keys = await crypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: serial(),
    name: `CN=Axlehand shop ${serial().slice(0, 6)}`,
    notBefore: new Date(now.getTime() - day),
    notAfter: new Date(now.getTime() + authorityDays * day),
    keys,
    signingAlgorithm: algorithm,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey, false, crypto),
    ],
  });
  await writeKey(at('authority.key'), keys.privateKey);
  writeWhole(at('authority.crt'), `${certificate.toString('pem')}\n`);
}

async function makeLeaf(at: At, authorityPem: string, names: readonly string[], now: Date): Promise<void> {
  const authority = new x509.X509Certificate(authorityPem);
  const signingKey = await readKey(at('authority.key'));
  const keys = await crypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);
  const certificate = await x509.X509CertificateGenerator.create({
    serialNumber: serial(),
    subject: `CN=${names[0] ?? 'axlehand'}`,
    issuer: authority.subject,
    notBefore: new Date(now.getTime() - day),
    notAfter: new Date(now.getTime() + (leafDays - 1) * day),
    publicKey: keys.publicKey,
    signingKey,
    signingAlgorithm: algorithm,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(names.map(asGeneralName)),
      await x509.AuthorityKeyIdentifierExtension.create(authority.publicKey, false, crypto),
    ],
  });
  await writeKey(at('server.key'), keys.privateKey);
  writeWhole(at('server.crt'), `${certificate.toString('pem')}\n`);
}

/** Signed by our authority, names every name, and good for another month. */
function isGood(at: At, authority: string, names: readonly string[], now: Date): boolean {
  if (!isPair(at('server.crt'), at('server.key'))) return false;
  const leaf = new X509Certificate(readFileSync(at('server.crt')));
  const covers = (name: string) => (isAddress(name) ? leaf.checkIP(name) : leaf.checkHost(name)) !== undefined;
  const lasts = Date.parse(leaf.validTo) - now.getTime() > renewDays * day && Date.parse(leaf.validFrom) <= now.getTime();
  return lasts && names.every(covers) && leaf.verify(new X509Certificate(authority).publicKey);
}

/** Both can be read and belong together. */
function isPair(certificate: string, key: string): boolean {
  try {
    return new X509Certificate(readFileSync(certificate)).checkPrivateKey(createPrivateKey(readFileSync(key)));
  } catch {
    return false;
  }
}

async function writeKey(path: string, key: Key): Promise<void> {
  const pem = x509.PemConverter.encode(await crypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY');
  writeWhole(path, `${pem}\n`, 0o600);
}

/** Under its name only when it is whole: a power cut leaves no half certificate. */
function writeWhole(path: string, text: string, mode = 0o644): void {
  const temporary = `${path}.coming`;
  writeFileSync(temporary, text, { mode, flush: true });
  chmodSync(temporary, mode);
  renameSync(temporary, path);
}

function readKey(path: string): Promise<Key> {
  const der = x509.PemConverter.decodeFirst(readFileSync(path, 'utf8'));
  return crypto.subtle.importKey('pkcs8', der, algorithm, false, ['sign']);
}

function asGeneralName(value: string): { type: 'ip' | 'dns'; value: string } {
  return { type: isAddress(value) ? 'ip' : 'dns', value };
}

function isAddress(name: string): boolean {
  return /^[\d.]+$/.test(name) || name.includes(':');
}

/** Positive and 15 bytes long. */
function serial(): string {
  return `01${Buffer.from(crypto.getRandomValues(new Uint8Array(14))).toString('hex')}`;
}
