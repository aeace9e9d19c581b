// Devices that joined: their names, what they may do, and a hash of their token. The token itself is never kept.
import { createHash } from 'node:crypto';
import { type Db, row, rows } from './db.ts';
import { guarded } from './faults.ts';

/** `desk` may do everything, `bay` may talk, `reader` may look. */
export type Role = 'desk' | 'bay' | 'reader';

export interface Device {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly pairedAt: string;
  readonly seenAt: string;
  readonly revokedAt?: string;
}

interface DeviceRow {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly paired_at: string;
  readonly seen_at: string;
  readonly revoked_at: string | null;
}

const columns = 'id, name, role, paired_at, seen_at, revoked_at';

export function openDevices(db: Db) {
  const all = db.prepare(`SELECT ${columns} FROM devices ORDER BY revoked_at IS NOT NULL, name, id`);
  const byToken = db.prepare(`SELECT ${columns} FROM devices WHERE token = ? AND revoked_at IS NULL`);
  const insert = db.prepare('INSERT INTO devices (id, name, role, token, paired_at, seen_at) VALUES (?, ?, ?, ?, ?, ?)');
  const seen = db.prepare('UPDATE devices SET seen_at = ? WHERE id = ?');
  const change = db.prepare(
    'UPDATE devices SET name = coalesce(?, name), role = coalesce(?, role) WHERE id = ? AND revoked_at IS NULL',
  );
  const revoke = db.prepare('UPDATE devices SET revoked_at = ? WHERE id = ? AND revoked_at IS NULL');
  return {
    devices: (): Device[] => rows<DeviceRow>(all).map(toDevice),
    deviceOf(token: string): Device | null {
      const found = row<DeviceRow>(byToken, hashOf(token));
      return found ? toDevice(found) : null;
    },
    addDevice: ({ id, name, role }: Pick<Device, 'id' | 'name' | 'role'>, token: string, at: string): void =>
      void guarded(() => insert.run(id, name, role, hashOf(token), at, at)),
    deviceSeen: (id: string, at: string): void => void guarded(() => seen.run(at, id)),
    /** Another name, another role, or both. @returns false where there is no such device or it was revoked */
    changeDevice: (id: string, { name = null, role = null }: { name?: string | null; role?: Role | null }): boolean =>
      guarded(() => change.run(name, role, id)).changes > 0,
    /** @returns false where there is none or it was revoked before */
    revokeDevice: (id: string, at: string): boolean => guarded(() => revoke.run(at, id)).changes > 0,
  };
}

function hashOf(token: string): Buffer {
  return createHash('sha256').update(token).digest();
}

function toDevice({ id, name, role, paired_at, seen_at, revoked_at }: DeviceRow): Device {
  return { id, name, role, pairedAt: paired_at, seenAt: seen_at, ...(revoked_at === null ? {} : { revokedAt: revoked_at }) };
}
