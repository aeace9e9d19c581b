// What is due: reminders nobody has dealt with, and the next service of each trailer. What is far off waits behind a fold.
import type { DueItem } from '#wire';
import { api } from '../shared/api.ts';
import { createStore, useStore } from '../shared/store.ts';
import { day } from '../shared/when.ts';

const dues = createStore<{ readonly items: readonly DueItem[] }>({ items: [] });
const shownAtOnce = 5;
const shownAtMost = 100;

export async function lookWhatIsDue(): Promise<void> {
  const found = await api.due();
  if (found.ok) dues.set({ items: found.value.items });
}

export function Due() {
  const { items } = useStore(dues);
  const now = items.filter(({ state }) => state !== 'notYet');
  const later = items.filter(({ state }) => state === 'notYet');
  if (items.length === 0) return null;
  // They come soonest first: what is folded away is the tail.
  const rest = items.slice(Math.min(now.length, shownAtOnce));
  const more = rest.length - later.length;
  const folded = [more > 0 && `${more} more due or soon`, later.length > 0 && `${later.length} later`].filter(Boolean).join(', ');
  return (
    <section class="sheetlike due" aria-labelledby="due-title">
      <h2 id="due-title">{now.length === 0 ? 'Nothing is due' : `What is due: ${now.length}`}</h2>
      <Items items={now.slice(0, shownAtOnce)} />
      {rest.length > 0 ? (
        <details>
          <summary>{folded}</summary>
          <Items items={rest} />
        </details>
      ) : null}
    </section>
  );
}

function Items({ items }: { items: readonly DueItem[] }) {
  return (
    <>
      <ul class="due-items">
        {items.slice(0, shownAtMost).map((item) => (
          <Item key={item.id} item={item} />
        ))}
      </ul>
      {items.length > shownAtMost ? <p>And {items.length - shownAtMost} more.</p> : null}
    </>
  );
}

const words: Record<DueItem['state'], string> = { due: 'due now', soon: 'soon', notYet: 'later' };

function Item({ item }: { item: DueItem }) {
  const { state, text, job, title, vin, invented, source } = item;
  return (
    <li class={state}>
      <b class="due-state">{words[state]}</b>
      <span class="due-what">
        {text}
        {whenDue(item)}
        {source ? <small>Interval: {source}</small> : null}
      </span>
      <span class="due-job">
        <a href={`/jobs/${encodeURIComponent(job)}`}>
          {title || 'no title'} ({job})
        </a>
        {vin ? <small>VIN {vin}</small> : null}
        {invented ? <span class="stamp">invented</span> : null}
      </span>
    </li>
  );
}

function whenDue({ dueAt, dueMiles }: DueItem): string {
  const ways = [dueAt && `by ${day(dueAt)}`, dueMiles && `at ${Number(dueMiles).toLocaleString('en-GB')} miles`].filter(Boolean);
  return ways.length > 0 ? `, ${ways.join(' or ')}` : '';
}
