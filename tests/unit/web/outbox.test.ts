import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import type { TurnRequest, TurnResponse } from '#wire';
import { openOutbox } from '../../../web/shared/outbox.ts';
import { createSender } from '../../../web/shared/sender.ts';

const turn = (id: string, job: string | null = null): TurnRequest => ({
  id,
  job,
  text: id,
  heardBy: 'typed',
  heardAt: '2026-11-25T10:00:00Z',
});
const answer = (job: string | null): TurnResponse =>
  ({ job, seq: 1, reply: {}, intents: [], events: [], view: null }) as unknown as TurnResponse;
const quiet = { settled: () => undefined, held: () => undefined, changed: () => undefined };
const nothere = { ok: false, status: 0, code: 'unreachable', message: '', whatToDo: '' } as const;

describe('the outbox', () => {
  it('sends in order, each once, and ties later turns to the job that an earlier one opened', async () => {
    const outbox = await openOutbox();
    for (const id of ['a', 'b', 'c']) await outbox.add('this page', turn(id));
    await outbox.add('another page', turn('d'));
    const sent: [string, string | null][] = [];
    const sender = createSender(
      outbox,
      async ({ request }) => {
        sent.push([request.id, request.job]);
        return { ok: true, value: answer(request.id === 'd' ? null : '7') };
      },
      quiet,
    );
    await Promise.all([sender.kick(), sender.kick(), sender.kick()]);
    sender.stop();
    expect(sent).toEqual([
      ['a', null],
      ['b', '7'],
      ['c', '7'],
      ['d', null],
    ]);
    expect(await outbox.all()).toEqual([]);
  });

  it('keeps all behind a turn that cannot be sent now, and sets aside one that is refused for good', async () => {
    const outbox = await openOutbox();
    for (const id of ['e', 'f', 'g']) await outbox.add('this page', turn(id));
    let isUp = false;
    const sent: string[] = [];
    const sender = createSender(
      outbox,
      async ({ request }) => {
        if (!isUp) return nothere;
        sent.push(request.id);
        if (request.id === 'f')
          return { ...nothere, status: 422, code: 'badRequest', message: 'too long.', whatToDo: 'Shorter.' };
        return { ok: true, value: answer(null) };
      },
      quiet,
    );
    await sender.kick();
    expect((await outbox.all()).map(({ request }) => request.id)).toEqual(['e', 'f', 'g']);
    isUp = true;
    await sender.kick();
    sender.stop();
    expect(sent).toEqual(['e', 'f', 'g']);
    expect((await outbox.all()).map(({ request, refused }) => [request.id, refused])).toEqual([['f', 'too long. Shorter.']]);
  });
});
