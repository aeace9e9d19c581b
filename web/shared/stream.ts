// The server's news: one message for each committed turn. The browser reconnects by itself; we only say whether it is there.
import type { StreamTurn } from '#wire';
import { streamAddress } from './api.ts';

export function followStream(on: { turn: (turn: StreamTurn) => void; link: (up: boolean) => void }): () => void {
  let source: EventSource | undefined;
  let again: ReturnType<typeof setTimeout> | undefined;
  const open = (): void => {
    source = new EventSource(streamAddress);
    source.addEventListener('open', () => on.link(true));
    source.addEventListener('turn', (message) => on.turn(JSON.parse(message.data) as StreamTurn));
    source.addEventListener('error', () => {
      on.link(false);
      // After an HTTP error the browser gives up for good; we do not.
      if (source?.readyState === EventSource.CLOSED) again = setTimeout(open, 5000);
    });
  };
  open();
  return () => {
    clearTimeout(again);
    source?.close();
  };
}
