// The desk's list of devices: let one join, name it, say what it may do, put it out.
import { render } from 'hono/jsx/dom';
import type { DeviceEntry, DeviceList, DeviceRole, Invitation } from '#wire';
import { api, type Failure } from '../shared/api.ts';
import { applyTheme } from '../shared/device.ts';
import { installShell } from '../shared/install.ts';
import { createStore, useStore } from '../shared/store.ts';
import { Top } from '../shared/top.tsx';
import { when } from '../shared/when.ts';

interface Desk extends DeviceList {
  readonly said: string;
  readonly trouble: string;
  /** The code that waits for its device. */
  readonly invitation: Invitation | null;
  /** Id of the device whose revoking waits for a second press. */
  readonly asked?: string;
}

const roles: readonly (readonly [role: DeviceRole, words: string])[] = [
  ['bay', 'bay: talks and looks'],
  ['reader', 'reader: looks only'],
  ['desk', 'desk: everything'],
];

const desk = createStore<Desk>({ devices: [], own: null, said: 'Looking.', trouble: '', invitation: null });
const lookEveryMs = 3000;

async function look(): Promise<void> {
  const found = await api.devices();
  if (!found.ok) return complain(found);
  const isUsed = found.value.devices.length > desk.get().devices.length;
  const joined = found.value.devices.filter(({ revokedAt }) => revokedAt === undefined).length;
  desk.set({ ...found.value, said: `${joined} ${joined === 1 ? 'device' : 'devices'} joined.` });
  if (isUsed) desk.set({ invitation: null });
}

function complain({ message, whatToDo }: Failure): void {
  desk.set({ trouble: `${message} ${whatToDo}` });
}

async function invite(event: Event): Promise<void> {
  event.preventDefault();
  const role = String(new FormData(event.currentTarget as HTMLFormElement).get('role')) as DeviceRole;
  const made = await api.invite(role);
  if (made.ok) desk.set({ invitation: made.value, trouble: '' });
  else complain(made);
}

async function change(event: Event, id: string): Promise<void> {
  event.preventDefault();
  const form = new FormData(event.currentTarget as HTMLFormElement);
  const changed = await api.changeDevice(id, { name: String(form.get('name')), role: String(form.get('role')) as DeviceRole });
  if (!changed.ok) return complain(changed);
  desk.set({ trouble: '' });
  await look();
}

async function revoke(id: string): Promise<void> {
  if (desk.get().asked !== id) return desk.set({ asked: id });
  const revoked = await api.revokeDevice(id);
  if (!revoked.ok) return complain(revoked);
  desk.set({ asked: '', trouble: '' });
  await look();
}

function DevicesPage() {
  const { devices, own, said, trouble, invitation, asked } = useStore(desk);
  return (
    <>
      <Top title="Devices" />
      <main class="devices">
        <form class="sheetlike" onSubmit={(event: Event) => void invite(event)}>
          <h2>Let a device join</h2>
          <Roles label="As" may="bay" />
          <button type="submit" class="plain">
            Make a code
          </button>
          <p role="status">{invitation ? <Code invitation={invitation} /> : null}</p>
        </form>
        {trouble ? (
          <p class="sheetlike trouble" role="alert">
            {trouble}
          </p>
        ) : null}
        <p role="status" class="count">
          {said}
        </p>
        <ul>
          {devices.map((device) => (
            <Entry key={device.id} device={device} isOwn={device.id === own} isAsked={device.id === asked} />
          ))}
        </ul>
      </main>
    </>
  );
}

function Code({ invitation: { code, role, expiresAt } }: { invitation: Invitation }) {
  return (
    <>
      On the new device open {location.protocol === 'https:' ? `${location.origin}/pair` : 'the shop’s https address, /pair,'} and
      give <b class="code">{code}</b> It works once, until {when(expiresAt)}, and joins a {role}.
    </>
  );
}

function Entry({ device, isOwn, isAsked }: { device: DeviceEntry; isOwn: boolean; isAsked: boolean }) {
  const { id, name, role, pairedAt, seenAt, revokedAt } = device;
  if (revokedAt !== undefined)
    return (
      <li class="sheetlike">
        <b>{name}</b>, {role}: revoked {when(revokedAt)}.
      </li>
    );
  return (
    <li class="sheetlike">
      <form aria-label={name} onSubmit={(event: Event) => void change(event, id)}>
        <label>
          Name <input name="name" required maxlength={40} autocomplete="off" value={name} />
        </label>
        <Roles label="May do" may={role} />
        <p>
          Joined {when(pairedAt)}, last day seen {when(seenAt)}.{isOwn ? ' This is the device in your hand.' : ''}
        </p>
        <p class="hands">
          <button type="submit" class="plain">
            Keep the change
          </button>
          <button type="button" class="plain" onClick={() => void revoke(id)}>
            {isAsked ? `Press again to put "${name}" out` : 'Revoke'}
          </button>
        </p>
      </form>
    </li>
  );
}

function Roles({ label, may }: { label: string; may: DeviceRole }) {
  return (
    <label>
      {label}{' '}
      <select name="role">
        {roles.map(([id, words]) => (
          <option key={id} value={id} selected={id === may}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

applyTheme();
render(<DevicesPage />, document.getElementById('page') as HTMLElement);
void installShell();
void look();
setInterval(() => void (desk.get().invitation && look()), lookEveryMs);
