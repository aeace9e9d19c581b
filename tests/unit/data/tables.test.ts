import { expect, test } from 'vitest';
import * as z from 'zod';
import { checkTable, checkTables, exact, sourced, word } from '#data/schema';

test('every row of every table is sound', () => {
  expect(checkTables()).toEqual([]);
});

test('a fault names file, row, column and what is wrong', () => {
  const row = z.strictObject({ id: word, size: exact, ...sourced });
  const good = { id: 'a', size: '7/8', source: 'a book' };
  const rows = [good, { id: 'b', size: 'big', source: 'a book' }, { id: 'c', size: '1' }, { ...good, size: '2' }];
  expect(checkTable({ file: 'data/x.json', rows, row })).toEqual([
    { file: 'data/x.json', row: 2, column: 'size', fault: 'expected an exact number such as "579/8"' },
    { file: 'data/x.json', row: 3, column: 'source', fault: expect.stringContaining('expected string') },
    { file: 'data/x.json', row: 4, column: 'id', fault: "'a' stands twice" },
  ]);
});
