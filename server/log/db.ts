// What this room needs of a SQLite connection. Only index.ts knows which library gives it.

export type Cell = string | number | bigint | Buffer | null;

export interface Statement {
  run(...cells: Cell[]): { readonly changes: number };
  get(...cells: Cell[]): unknown;
  all(...cells: Cell[]): unknown[];
  iterate(...cells: Cell[]): IterableIterator<unknown>;
}

export interface Db {
  readonly inTransaction: boolean;
  prepare(sql: string): Statement;
  exec(sql: string): unknown;
  pragma(text: string, options?: { simple?: boolean }): unknown;
  transaction<T>(work: () => T): { immediate(): T };
}

export interface Connection extends Db {
  close(): unknown;
  backup(to: string, options: { progress: () => number }): Promise<unknown>;
}

/** Opens a file; index.ts alone knows with what. */
export type Connect = (path: string, options?: { readonly: boolean }) => Connection;

/** Rows of a statement, in the shape its SELECT names. */
export function rows<T>(statement: Statement, ...cells: Cell[]): T[] {
  return statement.all(...cells) as T[];
}

/** First row of a statement, or undefined. */
export function row<T>(statement: Statement, ...cells: Cell[]): T | undefined {
  return statement.get(...cells) as T | undefined;
}
