// One turn as a pure function: (job, heard, now) -> (events, reply). Policy and wording live here.
export { deskAction } from './desk.ts';
export { takeTurn } from './turn.ts';
export type * from './types.ts';
export { view } from './view.ts';
