// The language: text -> what was said. Pure; runs on server and page alike.

/** What is counted is counted whole; the unit that is meant when this one is said of a field: pounds of a torque are foot pounds. */
export { unitMeant, wholeIfCounted } from './fields.ts';
/** What a question asks, whatever the parts are called. */
export { gist } from './rules/question.ts';
/** Values into words and onto the screen: "seventy-two and three eighths inches" / "72 3/8 in". Both parse back to the same value. */
export { type Manner, type SaidValue, sayField, sayValue, showField, showValue, spelling } from './say/index.ts';
export type * from './types.ts';
/** Text -> typed intents, exactly. Never throws; `expects` settles readings that the words leave open. */
export { understand } from './understand.ts';
