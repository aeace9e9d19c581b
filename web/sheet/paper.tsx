// The job sheet on paper: the customer's part first, then what the shop keeps. All of it is the one projection; the drawing alone is the view's.
import type { BillRow, JobView, Sheet, SheetRow, SheetValue } from '#wire';
import { axleFront } from '../drawings/axle.ts';
import { Drawing } from '../drawings/picture.tsx';
import { day, when } from '../shared/when.ts';

export function Paper({ sheet, view }: { sheet: Sheet; view: JobView }) {
  return (
    <article class="paper">
      <Head sheet={sheet} />
      <Verdict sheet={sheet} />
      <figure class="paper-picture">
        <Drawing picture={axleFront(view)} />
      </figure>
      <Measures title="Torque, end play and heat" rows={sheet.proof} />
      <List title="Open points" items={sheet.open} none="None.">
        {({ text, safety }) => (
          <>
            <span class="box" aria-hidden="true" /> {safety ? <b>Safety: </b> : null}
            {text}
          </>
        )}
      </List>
      <List title="To be checked again" items={sheet.reminders.filter(({ done }) => !done)} dense>
        {({ text, due }) => (due ? `${text}: ${due}` : text)}
      </List>
      <List title="Cautions given" items={sheet.cautions} dense>
        {(text) => text}
      </List>
      <Hands />
      <h2 class="paper-part">For the shop</h2>
      <Measures title="Measured" rows={sheet.measurements} />
      <Parts sheet={sheet} />
      <Bill rows={sheet.bill} />
      <List title="Notes" items={sheet.notes}>
        {({ text, closed }) => (closed === undefined ? text : `${text} (closed: ${closed})`)}
      </List>
      <List title="Changed" items={sheet.changed} dense>
        {({ what, was, to, reason }) => `${what} ${was.shown}, ${to === undefined ? 'struck' : `now ${to}`} (${reason})`}
      </List>
      <Work sheet={sheet} />
      <footer class="paper-foot">
        From the log up to entry {sheet.entry}, printed {when(new Date().toISOString())}. Boxed with a broken line: not confirmed.
        The part maker's published values come first; this sheet signs for nobody.
      </footer>
    </article>
  );
}

function Head({ sheet }: { sheet: Sheet }) {
  const { number, shop, invented, title, customer, kind, openedAt, closedAt, status } = sheet;
  return (
    <header class="paper-head">
      <h2>Job sheet {number}</h2>
      <p class="paper-shop">{shop}</p>
      {invented ? <p class="paper-invented">Invented: a demonstration, not a real trailer</p> : null}
      <dl class="facts">
        <Fact name="Work" value={title} />
        <Fact name="Kind" value={kind} />
        <Fact name="Customer" value={customer ?? ''} />
        <Fact name="Opened" value={day(openedAt)} />
        <Fact name="Closed" value={closedAt ? day(closedAt) : `not yet: ${status}`} />
      </dl>
    </header>
  );
}

function Fact({ name, value }: { name: string; value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}

function Verdict({ sheet: { verdict, axle } }: { sheet: Sheet }) {
  if (!verdict && !axle) return null;
  return (
    <section>
      <h3>Does it fit</h3>
      <p class="paper-verdict">
        {[verdict?.text, axle?.title].filter(Boolean).join(': ')}
        {verdict && !verdict.taken ? ' (verdict not taken)' : ''}
      </p>
      {verdict ? <p>{verdict.reasons.join('; ')}</p> : null}
      {verdict && verdict.unsure.length > 0 ? <p>Rests on values not confirmed: {verdict.unsure.join(', ')}.</p> : null}
    </section>
  );
}

function Measures({ title, rows }: { title: string; rows: readonly SheetRow[] }) {
  if (rows.length === 0) return null;
  const judged = rows.some((row) => row.judged !== undefined);
  return (
    <section>
      <h3>{title}</h3>
      <div class={rows.length > 16 ? 'measures-many' : ''}>
        <table class="measures">
          <thead>
            <tr>
              <th scope="col">Measure</th>
              <th scope="col">Found</th>
              <th scope="col">Fitted</th>
              {judged ? <th scope="col">Held against</th> : null}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.field} ${row.where}`}>
                <th scope="row">{[row.label, row.where].filter(Boolean).join(', ')}</th>
                <Cell value={row.found} />
                <Cell value={row.fitted} />
                {judged ? <td class="judged">{row.judged ?? ''}</td> : null}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Cell({ value }: { value: SheetValue | undefined }) {
  return (
    <td>
      {value ? <Reading value={value} /> : null}
      {value?.earlier.map((before) => (
        <div key={before.id}>
          before: <Reading value={before} />
        </div>
      ))}
    </td>
  );
}

function Reading({ value }: { value: SheetValue }) {
  return (
    <span class={`value ${value.sure ? 'confirmed' : 'heard'}`}>
      <b>{value.shown}</b>
      {value.sure ? null : <em>unconfirmed</em>}
    </span>
  );
}

interface Listed<T> {
  readonly title: string;
  readonly items: readonly T[];
  readonly none?: string;
  readonly dense?: boolean;
  readonly children: (item: T) => unknown;
}

/** Nothing at all where there is nothing to list, unless `none` says so. */
function List<T>({ title, items, none, dense, children }: Listed<T>) {
  if (items.length === 0 && none === undefined) return null;
  return (
    <section class={dense ? 'dense' : ''}>
      <h3>{title}</h3>
      {items.length === 0 ? <p>{none}</p> : null}
      <ul>
        {items.map((item, at) => (
          <li key={at}>{children(item)}</li>
        ))}
      </ul>
    </section>
  );
}

function Parts({ sheet: { parts, axle } }: { sheet: Sheet }) {
  if (parts.length === 0 && !axle) return null;
  return (
    <section>
      <h3>Parts</h3>
      {axle ? (
        <p>
          <b>{axle.title}</b>: {axle.figures.join('; ')}
        </p>
      ) : null}
      {parts.length > 0 ? <p>{parts.join(', ')}</p> : null}
    </section>
  );
}

/** What to order, why, and the measurements it rests on; a broken box where the size is not told for sure. */
function Bill({ rows }: { rows: readonly BillRow[] }) {
  if (rows.length === 0) return null;
  return (
    <section class="billed">
      <h3>Bill of parts</h3>
      <table class="measures bill">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Quantity</th>
            <th scope="col">Order by</th>
            <th scope="col">Why, and what it rests on</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ part, quantity, what, why, rests, sure }) => (
            <tr key={part}>
              <th scope="row">{part}</th>
              <td>{quantity}</td>
              <td>{what === '' ? null : <span class={`value ${sure ? 'confirmed' : 'heard'}`}>{what}</span>}</td>
              <td class="judged">{rests.length > 0 ? `${why}; rests on ${rests.join(', ')}` : why}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Work({ sheet: { steps, skipped } }: { sheet: Sheet }) {
  return (
    <section>
      <h3>Work</h3>
      <p>
        {steps.done} of {steps.of} steps done.{' '}
        {skipped.length > 0 ? `Skipped: ${skipped.map(({ step, reason }) => `${step} (${reason})`).join('; ')}.` : ''}
      </p>
    </section>
  );
}

function Hands() {
  return (
    <section class="hands-signed" aria-label="Signatures">
      {['Technician', 'Checked by', 'Received by'].map((who) => (
        <p key={who}>
          <span class="sign-line" /> {who}, date
        </p>
      ))}
    </section>
  );
}
