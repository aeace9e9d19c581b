// Turns that arrive together are committed together, in the order they came: one flush to disk serves them all. Between two groups
// the event loop has its round, because one round accepts one connection, and a long burst would keep new ones waiting.
import type { Log } from '#log';

/** A group ends after so many or so long, whichever comes first. */
const most = 32;
const longestMs = 40;

interface Piece {
  readonly work: () => void;
  readonly done: () => void;
  readonly failed: (error: unknown) => void;
}

/** Runs `work`; its result is given out when everything it appended is on disk. */
export function createTurnstile(log: Pick<Log, 'together'>): <T>(work: () => T) => Promise<T> {
  const waiting: Piece[] = [];

  function next(): void {
    const group: Piece[] = [];
    try {
      log.together((each) => take(group, each));
      for (const { done } of group) done();
    } catch (error) {
      for (const { failed } of group) failed(error);
    }
    if (waiting.length > 0) setImmediate(next);
  }

  function take(group: Piece[], each: (piece: () => void) => void): void {
    const until = performance.now() + longestMs;
    do {
      const piece = waiting.shift();
      if (!piece) return;
      group.push(piece);
      each(piece.work);
    } while (group.length < most && performance.now() < until);
  }

  return <T>(work: () => T) =>
    new Promise<T>((resolve, reject) => {
      let settle = (): void => {};
      const tried = (): void => {
        try {
          const value = work();
          settle = () => resolve(value);
        } catch (error) {
          settle = () => reject(error);
        }
      };
      waiting.push({ work: tried, done: () => settle(), failed: reject });
      if (waiting.length === 1) setImmediate(next);
    });
}
