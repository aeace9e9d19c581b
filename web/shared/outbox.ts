// Turns that the server has not acknowledged yet, in the order they were said. A turn leaves only when it is answered.
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { JobView, TurnRequest } from '#wire';

export interface Waiting {
  readonly order: number;
  /** The open page that said it; a job opened in a turn becomes the job of the later turns of the same page. */
  readonly session: string;
  readonly request: TurnRequest;
  /** Why the server will not have it; kept until the technician has seen it. */
  readonly refused?: string;
}

interface Kept extends DBSchema {
  outbox: { key: number; value: Omit<Waiting, 'order'> & { order?: number } };
  views: { key: string; value: JobView };
}

export interface Outbox {
  /** False where the browser keeps nothing: then closing the page loses what was not sent. */
  readonly lasting: boolean;
  readonly add: (session: string, request: TurnRequest) => Promise<void>;
  readonly all: () => Promise<readonly Waiting[]>;
  readonly settle: (item: Waiting, job: string | null) => Promise<void>;
  readonly refuse: (item: Waiting, why: string) => Promise<void>;
  readonly drop: (order: number) => Promise<void>;
  readonly keepView: (view: JobView) => Promise<void>;
  readonly keptView: (job: string) => Promise<JobView | undefined>;
}

/** `full`: called when the browser has no room for a turn; it is then kept only as long as the page is open. */
export async function openOutbox(full: () => void = () => undefined): Promise<Outbox> {
  try {
    const store = lasting(
      await openDB<Kept>('axlehand', 1, {
        upgrade(db) {
          db.createObjectStore('outbox', { keyPath: 'order', autoIncrement: true });
          db.createObjectStore('views', { keyPath: 'id' });
        },
      }),
    );
    return withOverflow(store, full);
  } catch {
    return passing();
  }
}

/** The turns behind `item` that waited for the same job to be opened. */
export function follows(item: Waiting, later: Waiting, job: string | null): boolean {
  return (
    later.order > item.order &&
    later.session === item.session &&
    later.request.job === item.request.job &&
    job !== item.request.job
  );
}

function lasting(db: IDBPDatabase<Kept>): Outbox {
  const writing = () => db.transaction('outbox', 'readwrite', { durability: 'strict' });
  return {
    lasting: true,
    add: async (session, request) => {
      const tx = writing();
      await Promise.all([tx.store.add({ session, request }), tx.done]);
    },
    all: async () => (await db.getAll('outbox')) as Waiting[],
    settle: async (item, job) => {
      const tx = writing();
      await tx.store.delete(item.order);
      const rest = ((await tx.store.getAll()) as Waiting[]).filter((later) => follows(item, later, job));
      for (const later of rest) await tx.store.put({ ...later, request: { ...later.request, job } });
      await tx.done;
    },
    refuse: async (item, refused) => {
      const tx = writing();
      await tx.store.put({ ...item, refused });
      await tx.done;
    },
    drop: (order) => db.delete('outbox', order),
    keepView: async (view) => {
      await db.put('views', view);
    },
    keptView: (job) => db.get('views', job),
  };
}

/** Behind everything the browser numbers by itself. */
const overflowFrom = 2 ** 40;

/** What the browser has no room for waits in memory; all that is said after it waits there too, so that the order stays. */
function withOverflow(store: Outbox, full: () => void): Outbox {
  const overflow = passing(overflowFrom);
  const homeOf = (order: number): Outbox => (order > overflowFrom ? overflow : store);
  return {
    ...store,
    add: async (session, request) => {
      const isFull = (await overflow.all()).length > 0 || !(await succeeds(store.add(session, request)));
      if (!isFull) return;
      await overflow.add(session, request);
      full();
    },
    all: async () => [...(await store.all()), ...(await overflow.all())],
    settle: async (item, job) => {
      if (homeOf(item.order) === store) await store.settle(item, job);
      await overflow.settle(item, job);
    },
    refuse: (item, why) => homeOf(item.order).refuse(item, why),
    drop: (order) => homeOf(order).drop(order),
  };
}

function succeeds(work: Promise<void>): Promise<boolean> {
  return work.then(
    () => true,
    () => false,
  );
}

function passing(from = 0): Outbox {
  let items: Waiting[] = [];
  let order = from;
  const views = new Map<string, JobView>();
  return {
    lasting: false,
    add: async (session, request) => {
      order += 1;
      items.push({ order, session, request });
    },
    all: async () => items,
    settle: async (item, job) => {
      const rest = items.filter((other) => other.order !== item.order);
      items = rest.map((later) => (follows(item, later, job) ? { ...later, request: { ...later.request, job } } : later));
    },
    refuse: async (item, refused) => {
      items = items.map((other) => (other.order === item.order ? { ...other, refused } : other));
    },
    drop: async (gone) => {
      items = items.filter((item) => item.order !== gone);
    },
    keepView: async (view) => {
      views.set(view.id, view);
    },
    keptView: async (job) => views.get(job),
  };
}
