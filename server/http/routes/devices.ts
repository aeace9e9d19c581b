import { Hono } from 'hono';
import { setCookie } from 'hono/cookie';
import type { Log } from '#log';
import type { DeviceList } from '#wire';
import { atMost, readBody } from '../body.ts';
import { callerOf, cookieName, only } from '../gate.ts';
import { createLimiter } from '../limits.ts';
import type { Pairing } from '../pairing.ts';
import { problem } from '../problem.ts';
import { deviceChange, exact, invitationRequest, joinRequest } from '../schemas.ts';
import type { Listeners } from '../stream.ts';

const yearSeconds = 365 * 86_400;

/** A device joins. Five tries a minute from one address. */
export function joinRoutes(pairing: Pairing): Hono {
  const wait = createLimiter({ perSecond: 5 / 60, burst: 5 });
  return new Hono().post('/', atMost(1000), async (c) => {
    if (wait(callerOf(c)) > 0) return problem(c, 'tooMany');
    const body = await readBody(c, joinRequest);
    if (!body.ok) return body.response;
    const joined = pairing.join(body.value.code, body.value.name);
    if (typeof joined === 'string') return problem(c, joined === 'locked' ? 'pairingLocked' : 'wrongCode');
    const { device, token } = joined;
    setCookie(c, cookieName, token, { path: '/', secure: true, httpOnly: true, sameSite: 'Strict', maxAge: yearSeconds });
    return c.json({ name: device.name, role: device.role });
  });
}

/** The list of devices, for a desk: see, name, give a role, revoke, invite. */
export function deviceRoutes(log: Log, pairing: Pairing, listeners: Listeners, clock: () => string): Hono {
  const app = new Hono();
  app.use('*', only('desk'));
  app.get('/', (c) => c.json<DeviceList>({ devices: log.devices(), own: c.get('device')?.id ?? null }));
  app.post('/codes', async (c) => {
    const body = await readBody(c, invitationRequest);
    return body.ok ? c.json(pairing.invite(body.value.role)) : body.response;
  });
  app.put('/:id', async (c) => {
    const body = await readBody(c, deviceChange);
    if (!body.ok) return body.response;
    return log.changeDevice(c.req.param('id'), exact(body.value)) ? c.json({ ok: true }) : problem(c, 'noSuchDevice');
  });
  app.delete('/:id', (c) => {
    const id = c.req.param('id');
    if (!log.revokeDevice(id, clock())) return problem(c, 'noSuchDevice');
    listeners.bye(id);
    return c.json({ ok: true });
  });
  return app;
}
