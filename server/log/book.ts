// Whether what was made from the events says what they say: all of it is made anew in memory and compared row by row.
import type { Cell, Connect, Db } from './db.ts';
import { row } from './db.ts';
import { openProjections } from './projections.ts';
import { rebuild } from './rebuild.ts';
import { migrate } from './schema.ts';

interface BookFault {
  readonly job: string;
  readonly what: string;
}

/** The first job of which the log book, the values, the reminders or the words to search say something else than its events.
 * `last`: the number of the last event. */
export function bookFault(db: Db, connect: Connect, last: number): BookFault | undefined {
  const ahead = row<{ id: number }>(db.prepare('SELECT id FROM jobs WHERE version > ? ORDER BY id'), last);
  if (ahead) return { job: String(ahead.id), what: 'the log book knows of later events: some are missing at the end' };
  const anew = connect(':memory:');
  try {
    migrate(anew, 0);
    rebuild(anew, openProjections(anew), db);
    return withTerms(db, () => withTerms(anew, () => firstOdd(anew, db)));
  } finally {
    anew.close();
  }
}

/** The words to search keep no text, but can be asked for their terms. */
function withTerms<T>(db: Db, work: () => T): T {
  db.exec('CREATE VIRTUAL TABLE temp.terms_made USING fts5vocab(main, words, instance)');
  try {
    return work();
  } finally {
    db.exec('DROP TABLE temp.terms_made');
  }
}

/** What is compared, in the order of its first columns. */
const made: Readonly<Record<string, string>> = {
  'the log book': 'SELECT id AS job, jobs.* FROM jobs ORDER BY id',
  'the values': 'SELECT * FROM job_values ORDER BY job, id',
  'the reminders': 'SELECT * FROM reminders ORDER BY job, id',
};

/** Millions of places on a long log: held against each other by their sums, word by word, and one by one where the sums differ. */
const places = {
  sums: `SELECT term, count(*), sum(doc >> 32), sum(doc & 4294967295), sum((doc >> 32) * (doc & 4294967295) % 1000003)
    FROM temp.terms_made GROUP BY term`,
  ofTerm: 'SELECT doc, doc >> 32 AS job FROM temp.terms_made WHERE term = ?',
};

type Row = Readonly<Record<string, string | number>>;

function firstOdd(anew: Db, db: Db): BookFault | undefined {
  const odd = (sql: string, ...cells: Cell[]) => oddOf(anew.prepare(sql).iterate(...cells), db.prepare(sql).iterate(...cells));
  for (const [name, sql] of Object.entries(made)) {
    const row = odd(sql);
    if (row) return fault(name, row);
  }
  const word = odd(places.sums);
  return word && fault('the words to search', odd(places.ofTerm, word.term ?? '') ?? word);
}

const fault = (name: string, { job = '?' }: Row): BookFault => ({
  job: String(job),
  what: `${name} of this job differ from its events; \`npm run -s rebuild\` mends it`,
});

/** The first row that stands on one side only, or differs. Both sides are in the same order. */
function oddOf(due: IterableIterator<unknown>, have: IterableIterator<unknown>): Row | undefined {
  try {
    for (;;) {
      const one: Row | undefined = due.next().value;
      const other: Row | undefined = have.next().value;
      if (JSON.stringify(one) !== JSON.stringify(other)) return one && other ? earlier(one, other) : (one ?? other);
      if (one === undefined) return undefined;
    }
  } finally {
    due.return?.();
    have.return?.();
  }
}

function earlier(one: Row, other: Row): Row {
  const cell = Object.keys(one).find((name) => one[name] !== other[name]) ?? '';
  return (one[cell] ?? '') < (other[cell] ?? '') ? one : other;
}
