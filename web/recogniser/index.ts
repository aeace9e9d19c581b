// Hearing: microphone -> text. One interface over the built-in recogniser and the browser's own; only the chosen one is fetched.
import type { Device } from '../shared/device.ts';
import type { Recogniser, RecogniserEvents } from './types.ts';

export type { Hearing, Recogniser, RecogniserEvents } from './types.ts';

export async function createEars(by: Device['hearing'], events: RecogniserEvents): Promise<Recogniser> {
  if (by === 'browser') return (await import('./browser-ears.ts')).createBrowserEars(events);
  // Our model under our grammar: nothing leaves the device.
  return (await import('./builtin.ts')).createBuiltin(events);
}
