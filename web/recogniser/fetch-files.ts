// Fetches the voice files with progress, whole or not at all.
import { joined, letGo } from '../shared/bytes.ts';

type OnBytes = (bytes: number) => void;

/** A broken copy is thrown away and fetched once more. @throws Error with a plain message when the file does not come whole */
export async function fetchChecked(url: string, onBytes: OnBytes): Promise<Uint8Array> {
  const kept = await keptCopy(url);
  if (kept && (await isWhole(url, kept))) {
    onBytes(kept.length);
    return kept;
  }
  const bytes = await fetchOnce(url, {}, onBytes);
  if (await isWhole(url, bytes)) return bytes;
  await forget(url);
  const fresh = await fetchOnce(url, { cache: 'reload' }, () => undefined);
  if (await isWhole(url, fresh)) return fresh;
  throw new Error('The speech model came damaged.');
}

/** Straight from the device's storage. Fetched through the service worker the browser would hold a second copy for as long as the
 * page stands. */
async function keptCopy(url: string): Promise<Uint8Array | undefined> {
  try {
    const kept = await globalThis.caches?.match(url);
    return kept && new Uint8Array(await kept.arrayBuffer());
  } catch {
    return undefined;
  }
}

async function forget(url: string): Promise<void> {
  for (const name of (await globalThis.caches?.keys()) ?? []) await (await caches.open(name)).delete(url);
}

async function fetchOnce(url: string, how: RequestInit, onBytes: OnBytes): Promise<Uint8Array> {
  const response = await fetch(url, how).catch(() => undefined);
  if (!response?.ok || !response.body)
    throw new Error(`The speech model could not be fetched (${response?.status ?? 'no connection'}).`);
  const parts: Uint8Array[] = [];
  const reader = response.body.getReader();
  for (;;) {
    const { done, value } = await reader.read().catch(() => {
      throw new Error('The download of the speech model broke off.');
    });
    if (done) break;
    parts.push(value);
    onBytes(value.length);
  }
  const whole = joined(parts);
  parts.forEach(letGo);
  return whole;
}

/** The ten hex digits that the file's name promises. */
async function isWhole(url: string, bytes: Uint8Array): Promise<boolean> {
  const promised = /-([0-9a-f]{10})\.\w+$/.exec(url)?.[1];
  // Plain http from another machine has no hashing; the sound of the model's first second is then the test.
  if (promised === undefined || globalThis.crypto?.subtle === undefined) return true;
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>));
  return [...hash.subarray(0, 5)].map((byte) => byte.toString(16).padStart(2, '0')).join('') === promised;
}
