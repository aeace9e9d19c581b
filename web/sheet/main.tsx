// The job sheet: what the customer is handed and the shop keeps, on one or two pages. Signatures are by hand.
import { render } from 'hono/jsx/dom';
import { showValue } from '#intents';
import type { CardRow, JobRecord, JobView, Settings } from '#wire';
import { axleFront } from '../drawings/axle.ts';
import { Drawing } from '../drawings/picture.tsx';
import { api, sheetAddress } from '../shared/api.ts';
import { linesOf } from '../shared/card-lines.ts';
import { applyTheme } from '../shared/device.ts';
import { installShell } from '../shared/install.ts';
import { createStore, useStore } from '../shared/store.ts';
import { Top } from '../shared/top.tsx';
import { day, when } from '../shared/when.ts';

interface Sheet {
  readonly record?: JobRecord;
  readonly view?: JobView;
  readonly settings?: Settings;
  readonly trouble?: string;
}

const id = decodeURIComponent(location.pathname.split('/')[2] ?? '');
const sheet = createStore<Sheet>({});

async function look(): Promise<void> {
  const [record, view, settings] = await Promise.all([api.record(id), api.view(id), api.settings()]);
  for (const part of [record, view, settings]) if (!part.ok) return sheet.set({ trouble: `${part.message} ${part.whatToDo}` });
  if (record.ok && view.ok && settings.ok) sheet.set({ record: record.value, view: view.value, settings: settings.value });
}

function SheetPage() {
  const { record, view, settings, trouble } = useStore(sheet);
  return (
    <>
      <Top title={`Sheet of job ${id}`}>
        <button type="button" class="plain" onClick={() => print()}>
          Print
        </button>
        <a class="plain" href={`/jobs/${encodeURIComponent(id)}`}>
          Review
        </a>
        <a class="plain" href={sheetAddress(id, 'csv')} download>
          CSV
        </a>
        <a class="plain" href={sheetAddress(id, 'json')} download>
          JSON
        </a>
      </Top>
      <main>
        {record && view && settings ? (
          <Paper record={record} view={view} settings={settings} />
        ) : (
          <p role="status">{trouble ?? 'Looking it up.'}</p>
        )}
      </main>
    </>
  );
}

function Paper({ record, view, settings }: { record: JobRecord; view: JobView; settings: Settings }) {
  return (
    <article class="paper">
      <header class="paper-head">
        <h2>Job sheet {record.id}</h2>
        <p class="paper-shop">{settings.name}</p>
        {record.invented ? <p class="paper-invented">Invented: a demonstration, not a real trailer</p> : null}
        <dl class="facts">
          <Fact name="Work" value={record.title} />
          <Fact name="Customer" value={record.customer ?? ''} />
          <Fact name="Opened" value={day(record.openedAt)} />
          <Fact name="Closed" value={record.closedAt ? day(record.closedAt) : `not yet: ${record.status}`} />
        </dl>
      </header>
      {view.verdict ? (
        <section>
          <h3>Does it fit</h3>
          <p class="paper-verdict">{view.verdict}</p>
          {record.verdict && record.verdict.unconfirmed.length > 0 ? (
            <p>Rests on {record.verdict.unconfirmed.length} unconfirmed values.</p>
          ) : null}
        </section>
      ) : null}
      <Measures card={view.card} />
      <figure class="paper-picture">
        <Drawing picture={axleFront(view)} />
      </figure>
      <Candidate view={view} settings={settings} />
      <Open view={view} />
      <Notes record={record} />
      <Work record={record} />
      <Hands />
      <footer class="paper-foot">
        From the log up to entry {record.version}, printed {when(new Date().toISOString())}. Boxed with a broken line: not
        confirmed. The part maker's published values come first; this sheet signs for nobody.
      </footer>
    </article>
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

function Measures({ card }: { card: readonly CardRow[] }) {
  const lines = linesOf(card);
  if (lines.length === 0) return <p>Nothing measured.</p>;
  return (
    <section>
      <h3>Measured</h3>
      <table class="measures">
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
              {[line.found, line.fitted].map((rows, column) => (
                <td key={column}>
                  {rows.map((row) => (
                    <span key={row.id} class={`value ${row.status}`}>
                      {row.side ? `${row.side} ` : ''}
                      <b>{row.shown}</b>
                      {row.status === 'heard' ? <em>unconfirmed</em> : null}
                    </span>
                  ))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Candidate({ view, settings }: { view: JobView; settings: Settings }) {
  const { candidate } = view;
  if (!candidate) return null;
  const values = Object.entries(candidate.values) as [CardRow['field'], string][];
  return (
    <section>
      <h3>Part chosen</h3>
      <p>
        {candidate.title}: {values.map(([field, value]) => `${field} ${showValue(field, { value }, settings)}`).join(', ')}
      </p>
    </section>
  );
}

function Open({ view }: { view: JobView }) {
  return (
    <section>
      <h3>Open points</h3>
      {view.open.length === 0 ? <p>None.</p> : null}
      <ul>
        {view.open.map((point) => (
          <li key={point.id}>
            <span class="box" aria-hidden="true" /> {point.safety ? <b>Safety: </b> : null}
            {point.text}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Notes({ record }: { record: JobRecord }) {
  if (record.notes.length === 0) return null;
  return (
    <section>
      <h3>Notes</h3>
      <ul>
        {record.notes.map((note) => (
          <li key={note.id}>
            {note.text}
            {note.closed === undefined ? '' : ` (closed: ${note.closed})`}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Work({ record }: { record: JobRecord }) {
  const skipped = record.steps.filter(({ status }) => status === 'skipped');
  return (
    <section>
      <h3>Work</h3>
      <p>
        {record.steps.length - skipped.length} steps done.{' '}
        {skipped.length > 0
          ? `${skipped.length} skipped: ${skipped.map(({ step, reason }) => `${step} (${reason ?? 'no reason'})`).join('; ')}.`
          : ''}{' '}
        {record.cautions.length} cautions given.
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

applyTheme();
render(<SheetPage />, document.getElementById('page') as HTMLElement);
void look();
void installShell();
