// The job sheet: what the customer is handed and the shop keeps, on one or two pages. Signatures are by hand.
import { render } from 'hono/jsx/dom';
import type { JobView, Sheet } from '#wire';
import { api, sheetAddress } from '../shared/api.ts';
import { applyTheme } from '../shared/device.ts';
import { installShell } from '../shared/install.ts';
import { Share } from '../shared/share.tsx';
import { createStore, useStore } from '../shared/store.ts';
import { Top } from '../shared/top.tsx';
import { Paper } from './paper.tsx';

interface Shown {
  readonly sheet?: Sheet;
  readonly view?: JobView;
  readonly trouble?: string;
}

const id = decodeURIComponent(location.pathname.split('/')[2] ?? '');
const shown = createStore<Shown>({});

async function look(): Promise<void> {
  const [file, view] = await Promise.all([api.sheet(id), api.view(id)]);
  for (const part of [file, view]) if (!part.ok) return shown.set({ trouble: `${part.message} ${part.whatToDo}` });
  if (file.ok && view.ok) shown.set({ sheet: file.value.sheet, view: view.value });
}

function SheetPage() {
  const { sheet, view, trouble } = useStore(shown);
  return (
    <>
      <Top title={`Sheet of job ${id}`}>
        <button type="button" class="plain" onClick={() => print()}>
          Print
        </button>
        <Share title={`Job sheet ${id}`} />
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
      <main>{sheet && view ? <Paper sheet={sheet} view={view} /> : <p role="status">{trouble ?? 'Looking it up.'}</p>}</main>
    </>
  );
}

applyTheme();
render(<SheetPage />, document.getElementById('page') as HTMLElement);
void look();
void installShell();
