// Every word that some table knows. What a table tells of a word hangs on the word, under the table's own number: to ask a table about
// a token is to look at one place of a short list, and what cannot begin with that word is never tried.

/** What each table tells of a word, by the table's number; the first place is the word itself. */
export type Told = readonly unknown[];

const words = new Map<string, unknown[]>();
const stranger: Told = [''];
let tables = 0;

/** What the tables tell of a word; nothing of a stranger. */
export const toldOf = (word: string): Told => words.get(word) ?? stranger;

/** A table of words, asked by token. */
export function wordTable<T>(
  rows: Iterable<readonly [string, T]>,
): (token: { readonly told: Told } | undefined) => T | undefined {
  tables += 1;
  const table = tables;
  for (const [word, meaning] of rows) {
    const told = words.get(word) ?? [word];
    told[table] = meaning;
    words.set(word, told);
  }
  return (token) => token?.told[table] as T | undefined;
}

/** A list of words, asked by token. */
export function wordList(list: Iterable<string>): (token: { readonly told: Told } | undefined) => boolean {
  const listed = wordTable(Array.from(list, (word) => [word, true] as const));
  return (token) => listed(token) === true;
}
