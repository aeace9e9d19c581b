// The job card on its clipboard: found and fitted side by side, left and right in their places, unconfirmed values boxed
// with a broken line and the word.
import { useEffect, useRef } from 'hono/jsx/dom';
import type { CardRow, JobView } from '#wire';
import { linesOf } from '../shared/card-lines.ts';
import { openWords } from '../shared/open-words.ts';
import type { KeptValue } from './state.ts';

export function JobCard({ view, kept }: { view: JobView | null; kept: readonly KeptValue[] }) {
  const lines = linesOf(view?.card ?? []);
  const fresh = useFresh(view);
  const unconfirmed = (view?.card ?? []).filter(({ status }) => status === 'heard').length;
  return (
    <section class="clipboard" aria-label="Job card" ref={fresh.card}>
      <Clip />
      <div class="card">
        <h2>
          Job card <span class="card-id">{view?.id ?? ''}</span>
        </h2>
        {lines.length === 0 && kept.length === 0 ? (
          <p class="card-empty">Nothing measured yet. Call out a measure: "hub face seventy-two".</p>
        ) : null}
        {kept.length > 0 ? (
          <ul class="kept-values" aria-label="Kept on this device, not sent">
            {kept.map(({ turn, label, shown }) => (
              <li key={turn + label}>
                {label} <span class="value kept">{shown}</span> <em>kept on this device, not sent</em>
              </li>
            ))}
          </ul>
        ) : null}
        {lines.length > 0 ? (
          <table>
            <thead>
              <tr>
                <th scope="col">Measure</th>
                <th scope="col">Found</th>
                <th scope="col">Fitted</th>
              </tr>
            </thead>
            <tbody>
              {lines.map((line) => (
                <tr key={line.key} class={[...line.found, ...line.fitted].some(({ id }) => fresh.ids.has(id)) ? 'fresh' : ''}>
                  <th scope="row">{line.label}</th>
                  <td>
                    <Values rows={line.found} />
                  </td>
                  <td>
                    <Values rows={line.fitted} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        ) : null}
        {unconfirmed > 0 ? <p class="card-foot">{unconfirmed} unconfirmed: boxed with a broken line.</p> : null}
        {view?.verdict ? <p class="verdict">{view.verdict}</p> : null}
        {view && view.open.length > 0 ? (
          <details class="open-points">
            <summary>{openWords(view.open)}</summary>
            <ul>
              {view.open.map((point) => (
                <li key={point.id} class={point.safety ? 'safety' : ''}>
                  {point.safety ? 'Safety: ' : ''}
                  {point.text}
                </li>
              ))}
            </ul>
          </details>
        ) : null}
      </div>
    </section>
  );
}

function Values({ rows }: { rows: readonly CardRow[] }) {
  return (
    <>
      {rows.map((row) => (
        <span key={row.id} class={`value ${row.status} ${/\d/.test(row.shown) ? '' : 'words'}`}>
          {row.side ? <span class="side">{row.side}</span> : null}
          <b>{row.shown}</b>
          {row.status === 'heard' ? <em>unconfirmed</em> : <span class="tick-mark" role="img" aria-label="confirmed" />}
        </span>
      ))}
    </>
  );
}

/** The rows that came with the latest version of this job; where the card has a column of its own, they are brought into sight. */
function useFresh(view: JobView | null) {
  const card = useRef<HTMLElement>(null);
  const seen = useRef<{ job: string; version: number; all: ReadonlySet<string>; ids: ReadonlySet<string> } | null>(null);
  const before = seen.current;
  if (view && (before?.job !== view.id || before.version !== view.version)) {
    const all = new Set(view.card.map(({ id }) => id));
    const added = before?.job === view.id ? [...all].filter((id) => !before.all.has(id)) : [];
    const ids = added.length > 0 ? new Set(added) : before?.job === view.id ? before.ids : new Set<string>();
    seen.current = { job: view.id, version: view.version, all, ids };
  }
  useEffect(() => {
    const board = card.current?.closest('.board');
    if (board && getComputedStyle(board).overflowY === 'auto')
      card.current?.querySelector('tr.fresh')?.scrollIntoView({ block: 'nearest' });
  }, [view?.version]);
  return { card, ids: seen.current?.ids ?? new Set<string>() };
}

function Clip() {
  return (
    <svg class="clip" viewBox="0 0 120 30" aria-hidden="true" focusable="false">
      <path class="clip-plate" d="M6 30V18q0-8 8-8h26q4-10 20-10t20 10h26q8 0 8 8v12z" />
      <circle class="clip-hole" cx="60" cy="9" r="4.5" />
      <path class="clip-edge" d="M6 25h108" />
    </svg>
  );
}
