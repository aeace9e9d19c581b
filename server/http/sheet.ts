// The job sheet as files: the one projection, for a spreadsheet or another program.
import { type Know, sheet, sheetHeader, sheetRows } from '#dialogue';
import type { JobRecord } from '#log/events';
import type { SheetFile } from '#wire';
import { toCsv } from './csv.ts';

/** One line a value, step, note, caution, reminder and open point. */
export function sheetCsv(job: JobRecord, know: Know): string {
  return toCsv(sheetHeader, sheetRows(sheet(job, know)));
}

export function sheetFile(job: JobRecord, know: Know): SheetFile {
  return { format: 'axlehand-sheet-1', sheet: sheet(job, know) };
}
