// Sends the outbox, oldest first, one at a time, until it is empty or the server is not there. Several open pages share one
// outbox: a lock lets one of them send, and it tells the others what was answered.
import type { TurnResponse } from '#wire';
import type { Failure, Outcome } from './api.ts';
import type { Outbox, Waiting } from './outbox.ts';

export interface Sent {
  readonly item: Waiting;
  readonly outcome: Outcome<TurnResponse>;
}

export interface SenderEvents {
  /** Answered or refused for good, by this page or another. */
  readonly settled: (sent: Sent) => void;
  /** Not now: unreachable, busy, or not paired. */
  readonly held: (why: Failure, waiting: readonly Waiting[]) => void;
  readonly changed: (waiting: readonly Waiting[]) => void;
}

const later = new Set([0, 401, 403, 408, 409, 421, 425, 429]);
const mayPass = ({ status }: Failure): boolean => later.has(status) || status >= 500;

export interface Sender {
  readonly kick: () => Promise<void>;
  readonly stop: () => void;
}

export function createSender(outbox: Outbox, post: (item: Waiting) => Promise<Outcome<TurnResponse>>, on: SenderEvents): Sender {
  const channel = typeof BroadcastChannel === 'function' ? new BroadcastChannel('axlehand') : undefined;
  if (channel) channel.onmessage = ({ data }) => void tell(data as Sent);
  let running: Promise<void> | undefined;
  let again = false;
  let retry: ReturnType<typeof setTimeout> | undefined;

  const unsent = async (): Promise<readonly Waiting[]> => (await outbox.all()).filter(({ refused }) => refused === undefined);

  async function tell(sent: Sent): Promise<void> {
    on.settled(sent);
    on.changed(await unsent());
  }

  async function drain(): Promise<void> {
    for (let item = (await unsent())[0]; item; item = (await unsent())[0]) {
      const outcome = await post(item);
      if (!outcome.ok && mayPass(outcome)) {
        on.held(outcome, await unsent());
        clearTimeout(retry);
        retry = setTimeout(() => void kick(), 5000);
        return;
      }
      if (outcome.ok) await outbox.settle(item, outcome.value.job);
      else await outbox.refuse(item, `${outcome.message} ${outcome.whatToDo}`);
      const sent: Sent = { item, outcome };
      channel?.postMessage(sent);
      await tell(sent);
    }
  }

  async function loop(): Promise<void> {
    try {
      while (again) {
        again = false;
        if (globalThis.navigator?.locks) await navigator.locks.request('axlehand-outbox', drain);
        else await drain();
      }
    } finally {
      running = undefined;
    }
  }

  function kick(): Promise<void> {
    again = true;
    running ??= loop();
    return running;
  }

  return {
    kick,
    stop: () => {
      clearTimeout(retry);
      channel?.close();
    },
  };
}
