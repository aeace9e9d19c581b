// Keys that talk: Space where it would do nothing else, and the pedal's key everywhere, also while a line is being typed.
import { device, setDevice } from '../shared/device.ts';

interface Hold {
  readonly down: () => void;
  readonly up: () => void;
  readonly toggle: () => void;
}

const typing = 'input, textarea, select, [contenteditable]';
const pressing = 'button, a, summary, [role=button]';

/** True where Space belongs to the focused thing: a letter to type, a button to press. */
function spaceIsTaken(target: EventTarget | null): boolean {
  if (!(target instanceof Element)) return false;
  return target.closest(typing) !== null || (target.closest(pressing) !== null && target.closest('.talk') === null);
}

let teach: ((code: string) => void) | undefined;

/** The next key that is pressed becomes the pedal's. Escape gives up. */
export function learnPedal(done: (code: string | undefined) => void): () => void {
  teach = (code) => {
    teach = undefined;
    if (code === 'Escape') return done(undefined);
    setDevice({ pedal: code });
    done(code);
  };
  return () => {
    teach = undefined;
  };
}

export function followKeys(hold: Hold): void {
  const mine = (event: KeyboardEvent): boolean =>
    event.code !== '' && (event.code === device.get().pedal || (event.code === 'Space' && !spaceIsTaken(event.target)));
  addEventListener(
    'keydown',
    (event) => {
      if (teach && event.code !== '') {
        event.preventDefault();
        event.stopPropagation();
        return event.repeat ? undefined : teach(event.code);
      }
      if (!mine(event) || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      if (event.repeat) return;
      if (event.code === device.get().pedal && device.get().pedalLatches) hold.toggle();
      else hold.down();
    },
    { capture: true },
  );
  addEventListener(
    'keyup',
    (event) => {
      if (!mine(event)) return;
      event.preventDefault();
      if (!(event.code === device.get().pedal && device.get().pedalLatches)) hold.up();
    },
    { capture: true },
  );
}
