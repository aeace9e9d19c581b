// The job card on its clipboard: found and fitted side by side, left and right in their places, unconfirmed values boxed
// with a broken line and the word.
import type { CardRow, JobView } from '#wire';
import { linesOf } from '../shared/card-lines.ts';
import type { KeptValue } from './state.ts';

export function JobCard({ view, kept }: { view: JobView | null; kept: readonly KeptValue[] }) {
  const lines = linesOf(view?.card ?? []);
  const unconfirmed = (view?.card ?? []).filter(({ status }) => status === 'heard').length;
  return (
    <section class="clipboard" aria-label="Job card">
      <Clip />
      <div class="card">
        <h2>
          Job card <span class="card-id">{view?.id ?? ''}</span>
        </h2>
        {lines.length === 0 && kept.length === 0 ? (
          <p class="card-empty">Nothing measured yet. Call out a measure: "hub face seventy-two".</p>
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
                <tr key={line.key}>
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
        {kept.length > 0 ? (
          <ul class="kept-values" aria-label="Kept on this device, not sent">
            {kept.map(({ turn, label, shown }) => (
              <li key={turn + label}>
                {label} <span class="value kept">{shown}</span> <em>kept on this device, not sent</em>
              </li>
            ))}
          </ul>
        ) : null}
        {unconfirmed > 0 ? <p class="card-foot">{unconfirmed} unconfirmed: boxed with a broken line.</p> : null}
        {view?.verdict ? <p class="verdict">{view.verdict}</p> : null}
        {view && view.open.length > 0 ? (
          <details class="open-points">
            <summary>{view.open.length} open</summary>
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
        <span key={row.id} class={`value ${row.status}`}>
          {row.side ? <span class="side">{row.side}</span> : null}
          <b>{row.shown}</b>
          {row.status === 'heard' ? <em>unconfirmed</em> : <span class="tick-mark" role="img" aria-label="confirmed" />}
        </span>
      ))}
    </>
  );
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
