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

  it('waits in memory for what the browser has no room for, and keeps the order', async () => {
    let told = 0;
    const outbox = await openOutbox(() => {
      told += 1;
    });
    for (const { order } of await outbox.all()) await outbox.drop(order);
    await outbox.add('this page', turn('stored'));
    const add = IDBObjectStore.prototype.add;
    IDBObjectStore.prototype.add = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
    await outbox.add('this page', turn('no room'));
    IDBObjectStore.prototype.add = add;
    await outbox.add('this page', turn('room again'));
    expect(told).toBe(2);
    const [first, second] = await outbox.all();
    expect((await outbox.all()).map(({ request }) => request.id)).toEqual(['stored', 'no room', 'room again']);
    if (!first || !second) throw new TypeError('turns got lost');
    await outbox.settle(first, '7');
    await outbox.refuse(second, 'too long');
    expect((await outbox.all()).map(({ request, refused }) => [request.id, request.job, refused])).toEqual([
      ['no room', '7', 'too long'],
      ['room again', '7', undefined],
    ]);
    await outbox.drop(second.order);
    expect((await outbox.all()).map(({ request }) => request.id)).toEqual(['room again']);
    for (const { order } of await outbox.all()) await outbox.drop(order);
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
