// The log book: every job, newest first, searched by the server as the words come in.
import { render } from 'hono/jsx/dom';
import type { JobSummary } from '#wire';
import { api, type JobQuery } from '../shared/api.ts';
import { applyTheme } from '../shared/device.ts';
import { installShell } from '../shared/install.ts';
import { createStore, useStore } from '../shared/store.ts';
import { followStream } from '../shared/stream.ts';
import { Top } from '../shared/top.tsx';
import { when } from '../shared/when.ts';
import { Due, lookWhatIsDue } from './due.tsx';

interface LogBook {
  readonly jobs: readonly JobSummary[];
  readonly total: number;
  readonly state: 'looking' | 'found' | 'failed';
  readonly trouble?: string;
}

const book = createStore<LogBook>({ jobs: [], total: 0, state: 'looking' });
const shown = '100';
let asked = 0;
let query: JobQuery = { limit: shown };

async function look(next: JobQuery): Promise<void> {
  query = next;
  asked += 1;
  const mine = asked;
  const found = await api.jobs(next);
  if (mine !== asked) return;
  if (found.ok) book.set({ jobs: found.value.jobs, total: found.value.total, state: 'found' });
  else book.set({ state: 'failed', trouble: `${found.message} ${found.whatToDo}` });
}

function queryOf(form: HTMLFormElement): JobQuery {
  const filled = [...new FormData(form)].filter(([, value]) => value !== '').map(([name, value]) => [name, String(value)]);
  return { ...Object.fromEntries(filled), limit: shown };
}

let pause: ReturnType<typeof setTimeout> | undefined;

function onInput(event: Event): void {
  const form = (event.target as HTMLElement).closest('form');
  if (!form) return;
  clearTimeout(pause);
  pause = setTimeout(() => void look(queryOf(form)), 120);
}

function onSubmit(event: Event): void {
  event.preventDefault();
  clearTimeout(pause);
  void look(queryOf(event.currentTarget as HTMLFormElement));
}

function LogPage() {
  const { jobs, total, state, trouble } = useStore(book);
  return (
    <>
      <Top title="Log book">
        <a class="plain" href="/rack">
          Rack
        </a>
        <a class="plain" href="/devices">
          Devices
        </a>
      </Top>
      <main class="ledger">
        <Due />
        <search>
          <form class="search" onSubmit={onSubmit} onInput={onInput}>
            <label class="wide">
              Look for{' '}
              <input
                name="q"
                type="search"
                autocomplete="off"
                placeholder="trailer, customer, words of a note, hub face 72 3/8"
              />
            </label>
            <label>
              Status
              <select name="status">
                <option value="">any</option>
                <option value="open">open</option>
                <option value="paused">paused</option>
                <option value="closed">closed</option>
              </select>
            </label>
            <label>
              From <input name="from" type="date" />
            </label>
            <label>
              To <input name="to" type="date" />
            </label>
            <label class="check">
              <input name="open" type="checkbox" value="1" /> with open points only
            </label>
            <button type="submit" class="plain">
              Look
            </button>
          </form>
        </search>
        <p role="status" class="count">
          {state === 'looking'
            ? 'Looking.'
            : state === 'failed'
              ? trouble
              : `${total} ${total === 1 ? 'job' : 'jobs'}${total > jobs.length ? `, the newest ${jobs.length} shown` : ''}.`}
        </p>
        <table class="jobs">
          <thead>
            <tr>
              <th scope="col">Job</th>
              <th scope="col">What came in</th>
              <th scope="col">Opened</th>
              <th scope="col">Last turn</th>
              <th scope="col">State</th>
              <th scope="col">Open</th>
              <th scope="col">
                <span class="unseen">Go to</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {jobs.map((job) => (
              <Row key={job.id} job={job} />
            ))}
          </tbody>
        </table>
      </main>
    </>
  );
}

function Row({ job }: { job: JobSummary }) {
  const id = encodeURIComponent(job.id);
  return (
    <tr class={job.status}>
      <td class="number">{job.id}</td>
      <th scope="row">
        <a href={`/jobs/${id}`}>{job.title || 'no title'}</a>
        {job.invented ? <span class="stamp">invented</span> : null}
      </th>
      <td class="lesser">{when(job.openedAt)}</td>
      <td>{when(job.updatedAt)}</td>
      <td class="lesser">{job.status}</td>
      <td>{job.openPoints > 0 ? <b class="open-count">{job.openPoints} open</b> : 'none'}</td>
      <td class="go">
        {job.status === 'closed' ? null : (
          <a class="plain" href={`/?job=${id}`} aria-label={`Take up job ${job.id} in the bay`}>
            Take up
          </a>
        )}
        <a class="plain" href={`/jobs/${id}/sheet`} aria-label={`Sheet of job ${job.id}`}>
          Sheet
        </a>
      </td>
    </tr>
  );
}

applyTheme();
render(<LogPage />, document.getElementById('page') as HTMLElement);
void look(query);
void lookWhatIsDue();
let fresh: ReturnType<typeof setTimeout> | undefined;
followStream({
  turn: () => {
    clearTimeout(fresh);
    fresh = setTimeout(() => {
      void look(query);
      void lookWhatIsDue();
    }, 400);
  },
  link: () => undefined,
});
void installShell();
