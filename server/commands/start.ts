import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { checkTables } from '#data/schema';
import { hostWithPort } from '../http/addresses.ts';
import { createApp, createServices, type House, type Services } from '../http/app.ts';
import { addDemo, openHouse } from '../http/house.ts';
import { type Lan, openLan } from '../http/lan.ts';
import { keepBackups } from '../http/nightly.ts';
import { alongside, type Listening, listen } from '../http/serve.ts';
import { complain } from './complain.ts';

const loopback = ['127.0.0.1', '::1', 'localhost'];
/** One person at one computer, and scripts of theirs. */
const ownLimit = { perSecond: 2000, burst: 4000 };

/** Serves until it is told to stop. PORT, HOST, AXLEHAND_DB; --lan (LAN_PORT, LAN_HELP_PORT, LAN_NAME), --cert FILE --key FILE. */
export async function run(args: readonly string[]): Promise<number> {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: { lan: { type: 'boolean' }, cert: { type: 'string' }, key: { type: 'string' } },
    });
    const host = process.env.HOST || '127.0.0.1';
    const refusal = refuse(host, values);
    if (refusal) return say(refusal);
    const house = await openHouse();
    try {
      return await serve(house, values.lan ? '127.0.0.1' : host, values);
    } finally {
      house.log.close();
    }
  } catch (error) {
    return complain(error);
  }
}

interface Flags {
  readonly lan?: boolean;
  readonly cert?: string;
  readonly key?: string;
}

const usualPorts = { PORT: 8090, LAN_PORT: 8443, LAN_HELP_PORT: 8480 } as const;

function portOf(name: keyof typeof usualPorts): number {
  return Number(process.env[name] || usualPorts[name]);
}

/** What LAN_NAME adds to this machine's own names. */
function otherNames(): string[] {
  return (process.env.LAN_NAME ?? '')
    .toLowerCase()
    .split(/[\s,]+/)
    .filter(Boolean);
}

function refuse(host: string, { lan, cert, key }: Flags): string | null {
  const [fault] = checkTables();
  if (fault)
    return `${fault.file}, row ${fault.row}, ${fault.column || 'whole row'}: ${fault.fault}. Mend the row, then start again.`;
  for (const name of Object.keys(usualPorts) as (keyof typeof usualPorts)[]) {
    const port = portOf(name);
    if (!Number.isInteger(port) || port < 0 || port > 65535)
      return `${name} is no port number. Set it to a number from 0 to 65535.`;
  }
  if (!lan && !loopback.includes(host))
    return `plain http is for this computer alone. For the shop's network: npm start -- --lan.`;
  const odd = otherNames().find((name) => !/^[a-z0-9.:-]+$/.test(name));
  if (odd !== undefined) return `LAN_NAME '${odd}' is no name or address. Give names such as axlehand.lan, divided by commas.`;
  if ((cert === undefined) !== (key === undefined)) return 'a certificate needs its key. Give both: --cert FILE --key FILE.';
  if (cert !== undefined && !lan) return "a certificate is for the shop's network. Add --lan.";
  return null;
}

function say(text: string): number {
  console.error(`axlehand: ${text}`);
  return 1;
}

async function serve(house: House, host: string, flags: Flags): Promise<number> {
  if (house.log.isNew) await addDemo(house);
  const services = createServices(house);
  let at = portOf('PORT');
  const hosts = () => [host, ...loopback].map((name) => hostWithPort(name, at, 80));
  const own = await listen(createApp(services, { hosts, scheme: 'http', trusted: true, limit: ownLimit }), host, at);
  at = own.port;
  const lan = flags.lan ? await alongside(own, () => openShopNetwork(services, flags)) : undefined;
  console.log(`Axlehand is at http://${hostWithPort(host, at, 80)}/`);
  if (lan) console.log(`${lan.notice}\nMore codes, and all devices: http://${hostWithPort(host, at, 80)}/devices`);
  const refusal = house.log.refusal();
  if (refusal) console.error(`axlehand: ${refusal.message} ${refusal.whatToDo}`);
  return untilStopped(services, own, lan);
}

function openShopNetwork(services: Services, { cert, key }: Flags): Promise<Lan> {
  return openLan(services, {
    folder: join(dirname(services.log.path), 'tls'),
    ...(process.env.HOST ? { host: process.env.HOST } : {}),
    port: portOf('LAN_PORT'),
    helpPort: portOf('LAN_HELP_PORT'),
    names: (process.env.LAN_NAME ?? '')
      .toLowerCase()
      .split(/[\s,]+/)
      .filter(Boolean),
    ...(cert !== undefined && key !== undefined ? { own: { cert, key } } : {}),
  });
}

async function untilStopped(services: Services, own: Listening, lan: Lan | undefined): Promise<number> {
  const { line, listeners, log } = services;
  const nightly = keepBackups(services);
  line('info', 'started', { events: log.head(), lan: lan !== undefined });
  const why = await new Promise<string>((stop) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => stop(signal));
    process.once('uncaughtException', (error) => stop(`fault ${error.name}`));
  });
  nightly.stop();
  listeners.bye();
  await Promise.all([own.stop(), lan?.stop()]);
  line('info', 'stopped', { why, events: log.head() });
  return why.startsWith('SIG') ? 0 : 1;
}
