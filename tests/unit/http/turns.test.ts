import { describe, expect, it } from 'vitest';
import { openLog } from '#log';
import type { DeskResponse, EventList, JobList, JobRecord, SheetFile, TurnResponse } from '#wire';
import { aLog, somewhere } from '../../support/log.ts';
import { aServer, paired, type Server, spoken } from '../../support/server.ts';

async function say(server: Server, text: string, job: string | null = null): Promise<TurnResponse> {
  const response = await server.call('/api/turns', { method: 'POST', body: spoken(text, job) });
  expect(response.status).toBe(200);
  return (await response.json()) as TurnResponse;
}

async function read<T>(server: Server, path: string): Promise<T> {
  const response = await server.call(path);
  expect(response.status, path).toBe(200);
  return (await response.json()) as T;
}

async function measured(server: Server): Promise<{ job: string; record: JobRecord }> {
  const { job } = await say(server, 'open a job for the blue trailer');
  if (job === null) throw new TypeError('no job was opened');
  await say(server, 'hub face seventy-two and three eighths', job);
  await say(server, 'spring centre fifty-eight', job);
  return { job, record: await read(server, `/api/jobs/${job}/record`) };
}

describe('turns', () => {
  it('logs what was heard, taken and answered before it answers', async () => {
    const server = await aServer();
    const { job } = await measured(server);
    const { events } = await read<EventList>(server, `/api/jobs/${job}/events`);
    const second = events.filter(({ turn }) => turn === events[events.length - 1]?.turn).map(({ body }) => body.kind);
    expect(second[0]).toBe('heard');
    expect(second).toContain('valueHeard');
    expect(second.at(-1)).toBe('replied');
    expect(server.log.verify().fault).toBeUndefined();
  });

  it('answers the same turn the same, and takes it once', async () => {
    const server = await aServer();
    const { job } = await measured(server);
    const turn = spoken('beam diameter three', job);
    const once = await (await server.call('/api/turns', { method: 'POST', body: turn })).json();
    const head = server.log.head();
    const twice = await (await server.call('/api/turns', { method: 'POST', body: { ...turn } })).json();
    expect(twice).toEqual(once);
    expect(server.log.head()).toBe(head);
    const other = await server.call('/api/turns', { method: 'POST', body: { ...turn, text: 'beam diameter two' } });
    expect(other.status).toBe(422);
    expect(server.log.head()).toBe(head);
  });

  describe('a yes from a device whose clock is wrong', () => {
    async function yesAt(late: object): Promise<string | undefined> {
      const server = await aServer();
      const { job } = await say(server, 'open a job for the blue trailer');
      await say(server, 'left wheel nut torque ninety', job);
      const response = await server.call('/api/turns', { method: 'POST', body: { ...spoken('yes', job), ...late } });
      expect(response.status).toBe(200);
      const { values } = await read<JobRecord>(server, `/api/jobs/${job}/record`);
      return values.find(({ field }) => field === 'wheelNutTorque')?.status;
    }

    it.each(['1970-01-01T00:00:00.000Z', '2026-11-25T09:00:00.000Z', '2099-01-01T00:00:00.000Z'])(
      'counts at %s',
      async (heardAt) => {
        expect(await yesAt({ heardAt })).toBe('confirmed');
      },
    );
    it('counts when it waited on the device for a moment', async () => expect(await yesAt({ waitedMs: 2000 })).toBe('confirmed'));
    it.each([600_000, 8e15])('answers nothing when it was kept there for %d ms', async (waitedMs) => {
      expect(await yesAt({ waitedMs })).toBe('heard');
    });
  });

  it('takes a turn once that is sent again after a longer wait', async () => {
    const server = await aServer();
    const turn = spoken('open a job for the blue trailer');
    for (const waitedMs of [10, 5000]) {
      const answer = await server.call('/api/turns', { method: 'POST', body: { ...turn, waitedMs } });
      expect(answer.status).toBe(200);
    }
    expect((await read<JobList>(server, '/api/jobs')).total).toBe(1);
  });

  it.each(['no, 72 3/8', '72 3/8', 'no, 72'])('does not take "%s" for a bolt pattern', async (said) => {
    const server = await aServer();
    const { job } = await say(server, 'open a job for the blue trailer');
    await say(server, 'bolt pattern five on four and a half', job);
    await say(server, said, job);
    const { values } = await read<JobRecord>(server, `/api/jobs/${job}/record`);
    expect(values.filter(({ field }) => field === 'boltPattern').map(({ value }) => value)).toEqual(['5x9/2']);
  });

  it('keeps what is said while no job is open, outside any job', async () => {
    const server = await aServer();
    const { job, seq } = await say(server, 'help');
    expect(job).toBeNull();
    expect(server.log.eventsSince(0, 10).map((event) => event.job)).toEqual(Array.from({ length: seq }, () => '0'));
    expect((await server.call('/api/jobs/0')).status).toBe(404);
  });

  it('keeps the order of two devices on one job, and says which of them it was', async () => {
    const server = await aServer({ trusted: false });
    const cookies = [await paired(server, 'bay', 'bay 1'), await paired(server, 'bay', 'bay 2')];
    const from = async (device: number, text: string, job: string | null) => {
      const headers = { cookie: cookies[device] ?? '' };
      const response = await server.call('/api/turns', { method: 'POST', body: spoken(text, job), headers });
      return (await response.json()) as TurnResponse;
    };
    const { job } = await from(0, 'open a job for the blue trailer', null);
    const answers = await Promise.all(Array.from({ length: 20 }, (_, i) => from(i % 2, `note number ${i}`, job)));
    const events = server.log.events(job ?? '');
    const turns = events.map(({ turn }) => turn);
    expect(turns).toEqual([...turns].sort((a, b) => turns.indexOf(a) - turns.indexOf(b)));
    expect(new Set(turns).size).toBe(21);
    const notes = events.flatMap(({ body, who }) => (body.kind === 'noteTaken' ? [[body.text, who]] : []));
    expect(notes.toSorted()).toEqual(Array.from({ length: 20 }, (_, i) => [`number ${i}`, `bay ${(i % 2) + 1}`]).toSorted());
    expect(new Set(answers.map(({ seq }) => seq)).size).toBe(20);
  });

  it('brings reminders and the waiting question through a restart', async () => {
    const path = somewhere();
    const first = openLog(path);
    const before = await aServer({}, first);
    const { job } = await measured(before);
    await say(before, 'remind me to re-torque in 50 miles', job);
    const record = await read<JobRecord>(before, `/api/jobs/${job}/record`);
    expect(record.reminders.length).toBeGreaterThan(0);
    first.close();
    const after = await aServer({}, aLog(path));
    expect(await read<JobRecord>(after, `/api/jobs/${job}/record`)).toEqual(record);
  });
});

describe('the desk', () => {
  it('corrects with a reason, once, and not over someone else', async () => {
    const server = await aServer();
    const { job, record } = await measured(server);
    const target = record.values[0]?.id ?? '';
    const action = {
      id: 'desk-action-1',
      version: record.version,
      action: 'correct',
      target,
      value: '73',
      reason: 'tape was hooked',
    };
    const done = await server.call(`/api/jobs/${job}/desk`, { method: 'POST', body: action });
    expect(done.status).toBe(200);
    const { seq, events } = (await done.json()) as DeskResponse;
    expect(events.some(({ kind }) => kind === 'valueCorrected')).toBe(true);
    const again = await server.call(`/api/jobs/${job}/desk`, { method: 'POST', body: action });
    expect(((await again.json()) as DeskResponse).seq).toBe(seq);
    const stale = await server.call(`/api/jobs/${job}/desk`, { method: 'POST', body: { ...action, id: 'desk-action-2' } });
    expect(stale.status).toBe(409);
    const reused = await server.call(`/api/jobs/${job}/desk`, { method: 'POST', body: { ...action, reason: 'other' } });
    expect(reused.status).toBe(422);
    const empty = { ...action, id: 'desk-action-3', version: seq, target: 'nothing' };
    const refused = await server.call(`/api/jobs/${job}/desk`, { method: 'POST', body: empty });
    expect(refused.status).toBe(422);
    expect(server.log.head()).toBe(seq);
  });
});

describe('the log book', () => {
  it('finds by words, values, days and state, and takes nothing for a command', async () => {
    const server = await aServer();
    await measured(server);
    await say(server, 'open a job for the red trailer');
    const asked: readonly (readonly [query: string, total: number])[] = [
      ['q=blue', 1],
      ['q=blu', 1],
      ['q=purple', 0],
      ['q=hub face 72 3/8', 1],
      ['q=hub face 72', 0],
      ['q=hub face seventy-two and three eighths', 1],
      ['q=72 3/8', 1],
      ['q=blue hub face 72.375', 1],
      ['q=blue hub face 71', 0],
      ['field=hubFace&value=72 3/8', 1],
      ['field=springCentre&value=72 3/8', 0],
      ['field=springCentre', 1],
      ['status=open', 2],
      ['status=closed', 0],
      ['from=2999-01-01', 0],
      ['to=2000-01-01', 0],
      ['from=2000-01-01&to=2999-01-01', 2],
      [`q=${encodeURIComponent('" OR 1=1; DROP TABLE jobs --')}`, 0],
      ['q=%25', 2],
    ];
    for (const [query, total] of asked) expect((await read<JobList>(server, `/api/jobs?${query}`)).total, query).toBe(total);
  });
});

describe('sheets', () => {
  it('writes cells that no spreadsheet runs', async () => {
    const server = await aServer();
    const { job } = await measured(server);
    await say(server, 'note =HYPERLINK("http://x","y")', job);
    server.log.append({
      turn: 'formula-0001',
      job: job,
      at: '2026-11-25T09:00:00.000Z',
      who: '+cmd',
      events: ['=1+1', '+1', '-1', '@x', '\t=1', ' =1', '＝1', '|x', '%x'].map((text, i) => ({
        kind: 'noteTaken',
        id: `f${i}`,
        text,
      })),
      receipt: { digest: 'x' },
    });
    const response = await server.call(`/api/jobs/${job}/sheet.csv`);
    expect(response.headers.get('content-type')).toContain('text/csv');
    const csv = await response.text();
    const cells = csv.split('\r\n').flatMap((line) => line.split(','));
    expect(cells.filter((cell) => /^"?\s*[=+\-@|%＝]/.test(cell))).toEqual([]);
    expect(csv).toContain("'=1+1");
    expect(csv).toContain("'+cmd");
  });

  it('gives the job as JSON with the event it goes up to', async () => {
    const server = await aServer();
    const { job, record } = await measured(server);
    const { format, sheet } = await read<SheetFile>(server, `/api/jobs/${job}/sheet.json`);
    expect(format).toBe('axlehand-sheet-1');
    expect(sheet.entry).toBe(record.version);
    expect(sheet.measurements.map(({ found }) => found?.id)).toEqual(record.values.map(({ id }) => id));
  });
});
