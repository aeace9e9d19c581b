// The desk's hand: what is to be done to which value, and why. A reason is always written.
import type { Settings, ValueRecord } from '#wire';
import { useModal } from '../shared/modal.ts';
import type { Action } from './values.tsx';
import { valueWords } from './words.ts';

export interface Wanted {
  readonly action: Action;
  readonly value: ValueRecord;
  readonly trouble?: string;
}

interface Props {
  readonly wanted: Wanted;
  readonly settings: Settings;
  readonly onDo: (value: string, reason: string) => void;
  readonly onClose: () => void;
}

const titles: Record<Action, string> = {
  correct: 'Correct a value',
  confirm: 'Confirm a value',
  strike: 'Strike a value',
  annotate: 'Remark on a value',
};

export function DeskForm({ wanted, settings, onDo, onClose }: Props) {
  const sheet = useModal();
  const { action, value, trouble } = wanted;
  const send = (event: Event): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    onDo(String(form.get('value') ?? ''), String(form.get('reason') ?? ''));
  };
  return (
    <dialog class="desk" ref={sheet} aria-labelledby="desk-title" onClose={onClose}>
      <form onSubmit={send}>
        <h2 id="desk-title">{titles[action]}</h2>
        <p>{valueWords(value, settings)}</p>
        {action === 'correct' ? (
          <label>
            New value, as it would be said <input name="value" required autocomplete="off" placeholder="for example: 72 3/8" />
          </label>
        ) : null}
        <label>
          {action === 'annotate' ? 'Remark' : 'Reason'}{' '}
          <input name="reason" required maxlength={500} autocomplete="off" dir="auto" />
        </label>
        {trouble ? (
          <p class="trouble" role="alert">
            {trouble}
          </p>
        ) : null}
        <p class="hands">
          <button type="submit" class="plain">
            {titles[action]}
          </button>
          <button type="button" class="plain" onClick={() => sheet.current?.close()}>
            Leave it
          </button>
        </p>
      </form>
    </dialog>
  );
}
