import type { Context } from 'hono';

/** Name of the device that asks; goes into the log beside what it said. */
export function whoOf(c: Context): string {
  return c.get('device')?.name ?? 'this computer';
}

declare module 'hono' {
  interface ContextVariableMap {
    device?: { readonly name: string };
  }
}
