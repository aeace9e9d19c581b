// Who is listening for turns: pages with the log book or a job open.
import type { Changed } from './turns.ts';

export interface Listeners {
  add(listener: Listener): () => void;
  tell(turn: Changed): void;
  /** Ends every stream; used when the server stops. */
  bye(): void;
  count(): number;
}

export interface Listener {
  readonly turn: (turn: Changed) => void;
  readonly bye: () => void;
}

export function createListeners(): Listeners {
  const listeners = new Set<Listener>();
  return {
    add(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    tell(turn) {
      for (const listener of listeners) listener.turn(turn);
    },
    bye() {
      for (const listener of listeners) listener.bye();
    },
    count: () => listeners.size,
  };
}
