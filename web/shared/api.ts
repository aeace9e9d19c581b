// Every address of the server, in one place. A failure is a returned value; status 0 means the server was not reached.
import type {
  DeskAction,
  DeskResponse,
  DeviceChange,
  DeviceList,
  DeviceRole,
  DueList,
  ErrorBody,
  EventList,
  Invitation,
  JobList,
  JobRack,
  JobRecord,
  JobView,
  Settings,
  SheetFile,
  StockList,
  StockTaken,
  TurnRequest,
  TurnResponse,
} from '#wire';

export interface Failure {
  readonly ok: false;
  readonly status: number;
  readonly code: string;
  readonly message: string;
  readonly whatToDo: string;
}
export type Outcome<T> = { readonly ok: true; readonly value: T } | Failure;

const unreachable: Failure = {
  ok: false,
  status: 0,
  code: 'unreachable',
  message: 'The shop computer does not answer.',
  whatToDo: 'Carry on: what you say is kept here and sent when it is back.',
};

/** Long enough for a slow turn, short enough that a technician is not left waiting at a dead line. */
const patienceMs = 5000;

async function call<T>(method: string, path: string, body?: unknown): Promise<Outcome<T>> {
  const signal = AbortSignal.timeout(patienceMs);
  const json = body === undefined ? {} : sent(body);
  try {
    const response = await fetch(path, { method, signal, cache: 'no-store', ...json });
    if (response.ok) return { ok: true, value: (await response.json()) as T };
    return await failureOf(response);
  } catch {
    return unreachable;
  }
}

/** JSON, or a list as the text it is. */
function sent(body: unknown): { readonly headers: Record<string, string>; readonly body: string } {
  if (typeof body === 'string') return { headers: { 'content-type': 'text/csv' }, body };
  return { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

async function failureOf(response: Response): Promise<Failure> {
  const plain = { code: `http${response.status}`, message: `The server answered ${response.status}.`, whatToDo: 'Try again.' };
  const body = await response.json().then(
    (json) => (json as ErrorBody).error ?? plain,
    () => plain,
  );
  return { ok: false, status: response.status, code: body.code, message: body.message, whatToDo: body.whatToDo };
}

const job = (id: string): string => `/api/jobs/${encodeURIComponent(id)}`;
const device = (id: string): string => `/api/devices/${encodeURIComponent(id)}`;

export interface JobQuery {
  readonly q?: string;
  readonly status?: string;
  readonly from?: string;
  readonly to?: string;
  readonly open?: string;
  readonly limit?: string;
}

export const api = {
  turn: (request: TurnRequest) => call<TurnResponse>('POST', '/api/turns', request),
  jobs: (query: JobQuery) => call<JobList>('GET', `/api/jobs?${new URLSearchParams({ ...query })}`),
  due: () => call<DueList>('GET', '/api/due'),
  view: (id: string) => call<JobView>('GET', job(id)),
  sheet: (id: string) => call<SheetFile>('GET', sheetAddress(id, 'json')),
  record: (id: string) => call<JobRecord>('GET', `${job(id)}/record`),
  events: (id: string) => call<EventList>('GET', `${job(id)}/events`),
  desk: (id: string, action: DeskAction) => call<DeskResponse>('POST', `${job(id)}/desk`, action),
  stock: () => call<StockList>('GET', '/api/stock'),
  putStock: (file: string, csv: string) => call<StockTaken>('POST', `/api/stock?${new URLSearchParams({ file })}`, csv),
  rack: (id: string) => call<JobRack>('GET', `${job(id)}/rack?most=20`),
  settings: () => call<Settings>('GET', '/api/settings'),
  saveSettings: (settings: Settings) => call<Settings>('PUT', '/api/settings', settings),
  pair: (code: string, name: string) => call<{ readonly name: string }>('POST', '/api/pair', { code, name }),
  devices: () => call<DeviceList>('GET', '/api/devices'),
  invite: (role: DeviceRole) => call<Invitation>('POST', '/api/devices/codes', { role }),
  changeDevice: (id: string, change: DeviceChange) => call<{ readonly ok: true }>('PUT', device(id), change),
  revokeDevice: (id: string) => call<{ readonly ok: true }>('DELETE', device(id)),
} as const;

export const sheetAddress = (id: string, format: 'json' | 'csv'): string => `${job(id)}/sheet.${format}`;
export const streamAddress = '/api/stream';
