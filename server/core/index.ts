// The computations: pure functions over plain records. One door for the dialogue.
export * from './fitment/index.ts';
export { oncePer } from './once.ts';
export * from './quantity/index.ts';
export * from './service/index.ts';
