// The language: text -> what was said. Pure; runs on server and page alike.
export type * from './types.ts';
