// A device that is not known yet gives the code from the shop's own screen.
import { render } from 'hono/jsx/dom';
import { api } from '../shared/api.ts';
import { applyTheme } from '../shared/device.ts';
import { createStore, useStore } from '../shared/store.ts';
import { Top } from '../shared/top.tsx';

const state = createStore<{ readonly trouble?: string; readonly done?: string }>({});

/** The QR code carries the code behind the #, which never leaves the device by itself. */
const given = location.hash.slice(1);

async function pair(event: Event): Promise<void> {
  event.preventDefault();
  const form = new FormData(event.currentTarget as HTMLFormElement);
  const paired = await api.pair(String(form.get('code')).trim(), String(form.get('name')).trim());
  state.set(paired.ok ? { done: paired.value.name } : { trouble: `${paired.message} ${paired.whatToDo}` });
  if (paired.ok) history.replaceState(null, '', '/pair');
}

function PairPage() {
  const { trouble, done } = useStore(state);
  return (
    <>
      <Top title="Pair this device" />
      <main class="pair">
        {done === undefined ? (
          <form class="sheetlike" onSubmit={(event: Event) => void pair(event)}>
            <p>The code is on the shop computer's screen. It works once, for a few minutes.</p>
            <label>
              Code <input name="code" required autocomplete="one-time-code" autocapitalize="characters" value={given} />
            </label>
            <label>
              Name of this device <input name="name" required maxlength={40} autocomplete="off" placeholder="bay 2 phone" />
            </label>
            {trouble ? (
              <p class="trouble" role="alert">
                {trouble}
              </p>
            ) : null}
            <button type="submit" class="plain">
              Pair
            </button>
          </form>
        ) : (
          <p role="status">
            This device is "{done}" now. <a href="/">Go to the bay.</a>
          </p>
        )}
        <Tier />
      </main>
    </>
  );
}

/** What this way of reaching the shop allows. */
function Tier() {
  if (!isSecureContext) {
    return (
      <p class="sheetlike trouble">
        This address is not secure, so the browser gives no microphone here and keeps no page for when the network is gone. Typing
        works. Open the shop's https address instead, and trust its certificate once.
      </p>
    );
  }
  if (!('serviceWorker' in navigator))
    return <p class="sheetlike">Voice works here; the page itself is not kept for when the network is gone.</p>;
  return null;
}

applyTheme();
render(<PairPage />, document.getElementById('page') as HTMLElement);
