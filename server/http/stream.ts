// Who is listening for turns: pages with the log book or a job open.
import type { Changed } from './turns.ts';

export interface Listeners {
  add(listener: Listener): () => void;
  tell(turn: Changed): void;
  /** Ends every stream, or those of one device: the server stops, or the device was revoked. */
  bye(device?: string): void;
  /** Streams open now, of one device or of all. */
  count(device?: string): number;
}

interface Listener {
  readonly device: string;
  readonly turn: (turn: Changed) => void;
  readonly bye: () => void;
}

export function createListeners(): Listeners {
  const listeners = new Set<Listener>();
  const of = (device?: string) => [...listeners].filter((listener) => device === undefined || listener.device === device);
  return {
    add(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    tell(turn) {
      for (const listener of listeners) listener.turn(turn);
    },
    bye: (device) =>
      of(device).forEach(({ bye }) => {
        bye();
      }),
    count: (device) => of(device).length,
  };
}
