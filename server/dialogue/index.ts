// One turn as a pure function: (job, heard, now) -> (events, reply). Policy and wording live here.
export type * from './types.ts';
