// Full text of what was said and noted, one entry an event. The number of an entry holds its job above and its event below.
import type { JobEvent } from '#log/events';
import type { Db } from './db.ts';

export function openWords(db: Db) {
  const put = db.prepare('INSERT INTO words (rowid, text) VALUES ((? << 32) | ?, ?)');
  return {
    add(events: readonly JobEvent[]): void {
      for (const { job, seq, body } of events) {
        const text = textOf(body);
        if (text) put.run(Number(job), seq, text);
      }
    },
    clear: (): void => void db.exec("INSERT INTO words (words) VALUES ('delete-all')"),
  };
}

function textOf(body: JobEvent['body']): string {
  switch (body.kind) {
    case 'jobOpened':
      return [body.title, body.customer].filter(Boolean).join(' ');
    case 'jobRenamed':
    case 'candidateChosen':
      return body.title;
    case 'valueHeard':
      return body.value.field === 'vin' ? tailsOf(body.value.value) : '';
    case 'heard':
    case 'noteTaken':
    case 'annotated':
      return body.text;
    default:
      return '';
  }
}

/** A trailer is known by the last six or eight of its number as well as by the whole. */
const tailsOf = (vin: string): string => [vin, vin.slice(-8), vin.slice(-6)].join(' ');

/** Jobs where each of `words` occurs or begins a word, as terms of a WHERE. */
export function wordsTerm(words: readonly string[]): (readonly [sql: string, cell: string])[] {
  const tokens = words.flatMap((word) => word.match(/[\p{L}\p{N}]+/gu) ?? []);
  return tokens.map((token) => ['id IN (SELECT rowid >> 32 FROM words WHERE words MATCH ?)', `"${token}" *`]);
}
