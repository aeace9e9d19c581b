// One small observable value; the page's parts read it and never each other.
import { useSyncExternalStore } from 'hono/jsx/dom';

export interface Store<T> {
  readonly get: () => T;
  readonly set: (patch: Partial<T>) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

export function createStore<T extends object>(initial: T): Store<T> {
  let value = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    set: (patch) => {
      const keys = Object.keys(patch) as (keyof T)[];
      if (keys.every((key) => patch[key] === value[key])) return;
      value = { ...value, ...patch };
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

export function useStore<T>(store: Store<T>): T {
  return useSyncExternalStore(store.subscribe, store.get);
}
