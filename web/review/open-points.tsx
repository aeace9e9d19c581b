// What still waits for someone. A defect noted in passing, and a reminder, is closed here with a reason.
import { useState } from 'hono/jsx/dom';
import type { JobView, OpenPoint } from '#wire';
import { openWords } from '../shared/open-words.ts';

interface Props {
  readonly view: JobView;
  /** Answers with what went wrong, or nothing. */
  readonly onClose: (point: string, reason: string) => Promise<string | undefined>;
}

export function OpenPoints({ view, onClose }: Props) {
  return (
    <section class="sheetlike" aria-label="Open points">
      <h2>{openWords(view.open)}</h2>
      <ul class="points">
        {view.open.map((point) => (
          <Point key={point.id} point={point} onClose={onClose} />
        ))}
      </ul>
    </section>
  );
}

function Point({ point, onClose }: { point: OpenPoint; onClose: Props['onClose'] }) {
  const [trouble, setTrouble] = useState('');
  const send = async (event: Event): Promise<void> => {
    event.preventDefault();
    const reason = String(new FormData(event.currentTarget as HTMLFormElement).get('reason') ?? '');
    setTrouble((await onClose(point.id, reason)) ?? '');
  };
  return (
    <li class={`point ${point.safety ? 'safety' : ''}`}>
      <p>
        <b>
          {point.safety ? 'Safety, ' : ''}
          {point.kind}:
        </b>{' '}
        {point.text}
      </p>
      {point.kind === 'defect' || point.kind === 'reminder' ? (
        <form class="point-form" onSubmit={(event: Event) => void send(event)}>
          <label>
            Closed because <input name="reason" required maxlength={500} autocomplete="off" />
          </label>
          <button type="submit" class="plain">
            Close point
          </button>
        </form>
      ) : null}
      {trouble ? <p role="alert">{trouble}</p> : null}
    </li>
  );
}
