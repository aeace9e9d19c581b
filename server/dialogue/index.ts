// One turn as a pure function: (job, heard, now) -> (events, reply). Policy and wording live here.

export type { BillRow } from './answers/fitment-parts.ts';
/** The desk's hand on a value, after the fact: events, or why not. */
export { deskAction } from './desk.ts';
/** The rack held against a job, check by check. */
export { type FitAxle, type FitRow, type RackView, rackView } from './rack.ts';
/** The job sheet as one plain structure, with what is still open. */
export { type Sheet, type SheetChange, type SheetRow, type SheetValue, sheet } from './sheet.ts';
/** The sheet in rows for a spreadsheet. */
export { sheetHeader, sheetRows } from './sheet-rows.ts';
/** The sheet in plain text. */
export { sheetText } from './sheet-text.ts';
/** What one utterance does to a job: events to commit and the reply to speak. */
export { takeTurn } from './turn.ts';
export type * from './types.ts';
/** The job as the page shows it: step, card, open points, question. */
export { view } from './view.ts';
