import { type Bank, openBank } from './bank.ts';

/** Addresses by name, put in by the build. */
declare const ASSETS: Readonly<Record<string, string>>;

/** Undefined where it cannot be fetched: the other ways of speaking remain. */
export async function loadBank(): Promise<Bank | undefined> {
  try {
    const response = await fetch(ASSETS['bank.bin'] ?? '');
    return response.ok ? openBank(await response.arrayBuffer()) : undefined;
  } catch {
    return undefined;
  }
}
