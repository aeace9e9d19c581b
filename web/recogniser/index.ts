// Hearing: microphone -> text, on this device. One interface over the built-in recogniser and the browser's own.

/** The browser's own, by choice. */
export { createBrowserEars } from './browser-ears.ts';
/** The default: our model under our grammar. Nothing leaves the device. */
export { createBuiltin as createRecogniser } from './builtin.ts';
export type { Hearing, Recogniser } from './types.ts';
