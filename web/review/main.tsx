// The review of one job at the desk: what stands, how it came to stand, and the hands to put it right.
import { render } from 'hono/jsx/dom';
import type { DeskAction, JobEvent, JobRecord, JobView, Settings } from '#wire';
import { axleFront } from '../drawings/axle.ts';
import { Drawing } from '../drawings/picture.tsx';
import { api, sheetAddress } from '../shared/api.ts';
import { applyTheme } from '../shared/device.ts';
import { newId } from '../shared/ids.ts';
import { installShell } from '../shared/install.ts';
import { plainShop } from '../shared/plain-shop.ts';
import { Share } from '../shared/share.tsx';
import { createStore, useStore } from '../shared/store.ts';
import { followStream } from '../shared/stream.ts';
import { Top } from '../shared/top.tsx';
import { Compare } from './compare.tsx';
import { DeskForm, type Wanted } from './desk-form.tsx';
import { OpenPoints } from './open-points.tsx';
import { Timeline } from './timeline.tsx';
import { Values } from './values.tsx';
import { turnsOf } from './words.ts';

interface Review {
  readonly record?: JobRecord;
  readonly view?: JobView;
  readonly events: readonly JobEvent[];
  readonly settings: Settings;
  readonly trouble?: string;
  readonly wanted?: Wanted | undefined;
}

const id = decodeURIComponent(location.pathname.split('/')[2] ?? '');
const review = createStore<Review>({
  events: [],
  settings: plainShop,
});

async function look(): Promise<void> {
  const [record, view, events] = await Promise.all([api.record(id), api.view(id), api.events(id)]);
  if (!record.ok) return review.set({ trouble: `${record.message} ${record.whatToDo}` });
  if (!view.ok) return review.set({ trouble: `${view.message} ${view.whatToDo}` });
  review.set({ record: record.value, view: view.value, events: events.ok ? events.value.events : [], trouble: '' });
}

/** Sent again with the version seen now, should the job have moved on while the reason was written. */
async function act(action: DeskAction['action'], target: string, value: string, reason: string): Promise<string | undefined> {
  const { record } = review.get();
  if (!record) return 'The job is not loaded.';
  const body: DeskAction = { id: newId(), version: record.version, action, target, reason, ...(value === '' ? {} : { value }) };
  const done = await api.desk(id, body);
  await look();
  return done.ok ? undefined : `${done.message} ${done.whatToDo}`;
}

async function deskDo(value: string, reason: string): Promise<void> {
  const { wanted } = review.get();
  if (!wanted) return;
  const trouble = await act(wanted.action, wanted.value.id, value, reason);
  review.set({ wanted: trouble === undefined ? undefined : { ...wanted, trouble } });
}

function ReviewPage() {
  const { record, view, events, settings, trouble, wanted } = useStore(review);
  if (!record || !view) {
    return (
      <>
        <Top title={`Job ${id}`} />
        <main class="desk-page">
          <p role="status">{trouble || 'Looking it up.'}</p>
        </main>
      </>
    );
  }
  const values = new Map(record.values.map((each) => [each.id, each]));
  const path = encodeURIComponent(id);
  return (
    <>
      <Top title={`Job ${id}: ${record.title}`}>
        {record.status === 'closed' ? null : (
          <a class="plain" href={`/?job=${path}`}>
            Take up in the bay
          </a>
        )}
        <a class="plain" href={`/jobs/${path}/sheet`}>
          Job sheet
        </a>
        <a class="plain" href={sheetAddress(id, 'csv')} download>
          CSV
        </a>
        <a class="plain" href={sheetAddress(id, 'json')} download>
          JSON
        </a>
        <Share title={`Job ${id}: ${record.title}`} />
      </Top>
      <main class="desk-page">
        {record.invented ? <p class="invented">An invented job of the demo shop.</p> : null}
        {trouble ? (
          <p class="trouble" role="alert">
            {trouble}
          </p>
        ) : null}
        <div class="desk-columns">
          <div class="desk-column">
            <figure class="desk-picture">
              <Drawing picture={axleFront(view)} />
            </figure>
            {view.verdict ? <p class="desk-verdict">{view.verdict}</p> : null}
            <OpenPoints view={view} onClose={(target, reason) => act('closePoint', target, '', reason)} />
            <Values record={record} settings={settings} onAct={(action, value) => review.set({ wanted: { action, value } })} />
            <Compare view={view} />
          </div>
          <Timeline turns={turnsOf(events, values, settings)} />
        </div>
      </main>
      {wanted ? (
        <DeskForm
          wanted={wanted}
          settings={settings}
          onDo={(value, reason) => void deskDo(value, reason)}
          onClose={() => review.set({ wanted: undefined })}
        />
      ) : null}
    </>
  );
}

applyTheme();
render(<ReviewPage />, document.getElementById('page') as HTMLElement);
void api.settings().then((found) => (found.ok ? review.set({ settings: found.value }) : undefined));
void look();
followStream({
  turn: ({ job }) => {
    if (job === id) void look();
  },
  link: () => undefined,
});
void installShell();
