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

export async function openOutbox(): Promise<Outbox> {
  try {
    return lasting(
      await openDB<Kept>('axlehand', 1, {
        upgrade(db) {
          db.createObjectStore('outbox', { keyPath: 'order', autoIncrement: true });
          db.createObjectStore('views', { keyPath: 'id' });
        },
      }),
    );
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
      await tx.store.add({ session, request });
      await tx.done;
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

function passing(): Outbox {
  let items: Waiting[] = [];
  let order = 0;
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
