// The steel rule along the top: an inch for each step of the procedure, a mark at the one we are at, and the state of the line.
import type { JobView } from '#wire';
import { shell } from '../shared/install.ts';
import { Ticks } from '../shared/rule.tsx';
import { useStore } from '../shared/store.ts';
import type { Bay } from './state.ts';

export function Strip({ state, onSettings }: { state: Bay; onSettings: () => void }) {
  const { update, offline } = useStore(shell);
  return (
    <header class="strip">
      <Rule view={state.view} />
      <div class="strip-words">
        <p class="job-title">
          {state.view ? state.view.title : 'No job open'}
          {state.view?.invented ? <span class="stamp">invented demo</span> : null}
          {state.view && state.view.status !== 'open' ? <span class="stamp">{state.view.status}</span> : null}
        </p>
        <LinkState state={state} offline={offline} />
        <nav class="strip-links" aria-label="Pages">
          {update ? (
            <button type="button" class="plain" onClick={update}>
              New version: tap to change
            </button>
          ) : null}
          <a class="plain" href="/log">
            Log book
          </a>
          {state.job ? (
            <a class="plain" href={`/jobs/${encodeURIComponent(state.job)}`}>
              Review
            </a>
          ) : null}
          <button type="button" class="plain" onClick={onSettings}>
            Settings
          </button>
        </nav>
      </div>
    </header>
  );
}

/** Which of three states the line is in: a shape and a word each. */
function LinkState({ state, offline }: { state: Bay; offline: boolean }) {
  // A turn on its way is not a kept one.
  const isKept = state.waiting > 0 && (state.late || state.link === 'down');
  const kept = isKept ? `${state.waiting} kept on this device, not sent` : '';
  const words =
    state.link === 'up'
      ? kept || 'In the log'
      : state.link === 'down'
        ? `No server. ${kept || 'Carry on'}`
        : 'Looking for the server';
  return (
    <p role="status" class={`link-state ${state.link} ${isKept ? 'kept' : ''}`}>
      <span class="mark" aria-hidden="true" />
      {words}
      {offline && state.link === 'up' ? <small>works without network too</small> : null}
    </p>
  );
}

function Rule({ view }: { view: JobView | null }) {
  const of = view?.step?.of ?? 24;
  const at = view?.step?.number;
  const wide = of * 16;
  return (
    <svg
      class="rule"
      viewBox={`0 0 ${wide} 20`}
      preserveAspectRatio="none"
      role="img"
      aria-label={at ? `Step ${at} of ${of}` : 'No step yet'}
    >
      <Ticks inches={of} />
      {at ? <rect class="rule-done" x="0" y="16" width={at * 16} height="4" /> : null}
      {at ? <path class="rule-mark" d={`M${at * 16} 20 l-5 -9 h10z`} /> : null}
    </svg>
  );
}
