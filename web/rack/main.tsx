// The rack: what lies on it, a list taken in with its faults line by line and given out again, and a job held against it.
import { render } from 'hono/jsx/dom';
import type { JobRack, JobSummary, StockLineFault, StockList } from '#wire';
import { api, type Failure } from '../shared/api.ts';
import { applyTheme } from '../shared/device.ts';
import { Heads } from '../shared/heads.tsx';
import { installShell } from '../shared/install.ts';
import { createStore, useStore } from '../shared/store.ts';
import { Top } from '../shared/top.tsx';
import { Held } from './held.tsx';

interface Desk extends StockList {
  readonly said: string;
  readonly trouble: string;
  readonly faults: readonly StockLineFault[];
  /** Jobs that an axle may still be wanted for. */
  readonly jobs: readonly JobSummary[];
  readonly job: string;
  readonly held?: JobRack;
}

const asked = new URLSearchParams(location.search).get('job') ?? '';
const desk = createStore<Desk>({ stock: [], said: 'Looking.', trouble: '', faults: [], jobs: [], job: asked });
/** Longer lists are given out whole, and shown in part. */
const shownMost = 200;

const complain = ({ message, whatToDo }: Failure): void => desk.set({ trouble: `${message} ${whatToDo}` });

async function look(): Promise<void> {
  const found = await api.stock();
  if (!found.ok) return complain(found);
  const { stock } = found.value;
  desk.set({ stock, said: `${stock.length} ${stock.length === 1 ? 'axle' : 'axles'} on the rack.` });
}

async function lookForJobs(): Promise<void> {
  const found = await api.jobs({ status: 'open', limit: '100' });
  if (found.ok) desk.set({ jobs: found.value.jobs });
}

async function hold(job: string): Promise<void> {
  desk.set({ job });
  if (job === '') return;
  const found = await api.rack(job);
  if (found.ok) desk.set({ held: found.value, trouble: '' });
  else complain(found);
}

async function takeIn(event: Event): Promise<void> {
  event.preventDefault();
  const file = new FormData(event.currentTarget as HTMLFormElement).get('list');
  if (!(file instanceof File) || file.size === 0) return desk.set({ trouble: 'Choose a CSV file first.' });
  const taken = await api.putStock(file.name, await file.text());
  if (!taken.ok) return complain(taken);
  const { faults = [] } = taken.value;
  desk.set({ faults, trouble: '' });
  await look();
  const left = faults.length === 0 ? '' : ` ${faults.length} ${faults.length === 1 ? 'fault' : 'faults'} below.`;
  desk.set({ said: `${taken.value.taken} axles taken from ${file.name}.${left}` });
  await hold(desk.get().job);
}

function RackPage() {
  const { stock, said, trouble, faults, jobs, job, held } = useStore(desk);
  return (
    <>
      <Top title="Rack" />
      <main class="ledger rack">
        <p role="status" class="count">
          {said}
        </p>
        {trouble === '' ? null : (
          <p role="alert" class="trouble">
            {trouble}
          </p>
        )}
        <section class="sheetlike" aria-labelledby="list-title">
          <h2 id="list-title">The list</h2>
          <form onSubmit={takeIn}>
            <label>
              CSV file: id, title, place, quantity, and any fields (hubFace, springCentre)
              <input type="file" name="list" accept=".csv,text/csv" />
            </label>
            <div class="hands">
              <button type="submit" class="plain">
                Put it in the place of the old list
              </button>
              <a class="plain" href="/api/stock?format=csv" download="rack.csv">
                Give the list out
              </a>
            </div>
          </form>
          <Faults faults={faults} />
        </section>
        <section class="sheetlike" aria-labelledby="held-title">
          <h2 id="held-title">Held against a job</h2>
          <label>
            Job
            <select name="job" onChange={(event: Event) => void hold((event.target as HTMLSelectElement).value)}>
              <option value="">none</option>
              {jobs.map(({ id, title }) => (
                <option key={id} value={id} selected={id === job}>
                  {id}: {title || 'no title'}
                </option>
              ))}
            </select>
          </label>
          {held && job !== '' ? <Held rack={held} /> : null}
        </section>
        <Stock stock={stock} />
      </main>
    </>
  );
}

function Faults({ faults }: { faults: readonly StockLineFault[] }) {
  if (faults.length === 0) return null;
  return (
    <table class="jobs faults">
      <caption>Lines left out</caption>
      <Heads names={['Line', 'Column', 'What is wanted']} />
      <tbody>
        {faults.slice(0, shownMost).map(({ line, column, fault }) => (
          <tr key={`${line} ${column}`}>
            <td class="number">{line}</td>
            <th scope="row">{column || 'whole line'}</th>
            <td data-name="Wanted">{fault}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Stock({ stock }: StockList) {
  if (stock.length === 0) return null;
  return (
    <table class="jobs">
      <caption>{stock.length > shownMost ? `The first ${shownMost} of ${stock.length}` : 'On the rack'}</caption>
      <Heads names={['Axle', 'What it is', 'Where', 'How many']} />
      <tbody>
        {stock.slice(0, shownMost).map(({ id, title, place, quantity, invented }) => (
          <tr key={id}>
            <td class="number">{id}</td>
            <th scope="row">
              {title}
              {invented ? <span class="stamp">invented</span> : null}
            </th>
            <td data-name="Where">{place ?? ''}</td>
            <td data-name="How many">{quantity}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

applyTheme();
render(<RackPage />, document.getElementById('page') as HTMLElement);
void look();
void lookForJobs();
void hold(asked);
void installShell();
