// How a device joins: someone at the shop's screen or at a paired desk makes a code; the device gives it back once.
import { randomBytes, randomInt, randomUUID } from 'node:crypto';
import { type Device, type Log, LogFault, type Role } from '#log';

/** No letters that are mistaken for digits or for each other. */
const alphabet = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
const codeLength = 6;
const lastsMs = 5 * 60_000;
const tries = 5;
const idleDays = 90;
const absoluteDays = 365;

/** `code` is typed by hand; `token` travels in the QR code. Either joins once. */
export interface Invitation {
  readonly code: string;
  readonly token: string;
  readonly role: Role;
  readonly expiresAt: string;
}

export type Joined = { readonly device: Device; readonly token: string } | 'wrongCode' | 'locked';

export function createPairing(log: Log, clock: () => string) {
  let open: Invitation[] = [];
  let wrong = 0;

  const current = (): Invitation[] => {
    open = open.filter(({ expiresAt }) => expiresAt > clock());
    return open;
  };

  /** Makes a code. The count of wrong tries starts anew: someone at the screen asked for it. */
  function invite(role: Role): Invitation {
    wrong = 0;
    const expiresAt = new Date(Date.parse(clock()) + lastsMs).toISOString();
    const code = Array.from({ length: codeLength }, () => alphabet[randomInt(alphabet.length)]).join('');
    const invitation = { code, token: randomBytes(24).toString('base64url'), role, expiresAt };
    open = [...current(), invitation].slice(-20);
    return invitation;
  }

  function join(given: string, name: string): Joined {
    const typed = given.toUpperCase().replace(/[\s-]/g, '');
    const invitation = current().find(({ code, token }) => code === typed || token === given);
    if (!invitation) {
      wrong += 1;
      if (wrong >= tries) open = [];
      return wrong >= tries ? 'locked' : 'wrongCode';
    }
    open = open.filter((other) => other !== invitation);
    const token = randomBytes(32).toString('base64url');
    const at = clock();
    const device = { id: randomUUID(), name, role: invitation.role, pairedAt: at, seenAt: at };
    log.addDevice(device, token, at);
    return { device, token };
  }

  /** The device of a session's token; null when unknown, revoked, idle for 90 days or older than a year. */
  function known(token: string): Device | null {
    const device = log.deviceOf(token);
    if (!device) return null;
    const now = Date.parse(clock());
    const days = (at: string) => (now - Date.parse(at)) / 86_400_000;
    if (days(device.seenAt) > idleDays || days(device.pairedAt) > absoluteDays) return null;
    if (days(device.seenAt) > 1) note(device);
    return device;
  }

  /** A disk that takes no more keeps nobody from looking. */
  function note(device: Device): void {
    try {
      log.deviceSeen(device.id, clock());
    } catch (fault) {
      if (!(fault instanceof LogFault)) throw fault;
    }
  }

  return { invite, join, known };
}

export type Pairing = ReturnType<typeof createPairing>;
