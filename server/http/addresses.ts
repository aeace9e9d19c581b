// The names and addresses of this machine on the shop's network.
import { hostname, networkInterfaces } from 'node:os';

/** Addresses that other machines reach, IPv4 first; without link-local ones, which need a zone. */
export function lanAddresses(): string[] {
  const all = Object.values(networkInterfaces()).flatMap((found) => found ?? []);
  const reachable = all.filter(({ internal, address }) => !internal && !address.startsWith('fe80:'));
  return reachable.sort((a, b) => a.family.localeCompare(b.family)).map(({ address }) => address);
}

/** Names this machine goes by: its own, the same under .local, and localhost. */
export function ownNames(): string[] {
  const own = hostname().toLowerCase();
  const names = own.includes('.') ? [own] : [own, `${own}.local`];
  return [...names.filter((name) => /^[a-z0-9][a-z0-9.-]*$/.test(name)), 'localhost'];
}

/** As it stands in a Host header or an address line. */
export function hostWithPort(name: string, port: number, usual: number): string {
  const host = name.includes(':') ? `[${name}]` : name;
  return port === usual ? host : `${host}:${port}`;
}
