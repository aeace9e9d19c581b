// Fetches the voice files with progress, whole or not at all.

export interface Wanted {
  readonly url: string;
  /** Fetched past the browser's own cache: the copy there is broken. */
  readonly anew?: boolean;
}

/** @throws Error with a plain message when a file does not come whole */
export async function fetchWhole({ url, anew = false }: Wanted, onBytes: (bytes: number, of: number) => void): Promise<Uint8Array> {
  const response = await fetch(url, anew ? { cache: 'reload' } : {}).catch(() => undefined);
  if (!response?.ok || !response.body) throw new Error(`The speech model could not be fetched (${response?.status ?? 'no connection'}).`);
  const parts: Uint8Array[] = [];
  let size = 0;
  const reader = response.body.getReader();
  for (;;) {
    const { done, value } = await reader.read().catch(() => {
      throw new Error('The download of the speech model broke off.');
    });
    if (done) break;
    parts.push(value);
    size += value.length;
    onBytes(value.length, size);
  }
  return joined(parts, size);
}

function joined(parts: readonly Uint8Array[], size: number): Uint8Array {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** The ten hex digits that the file's name promises. */
export async function isWhole(url: string, bytes: Uint8Array): Promise<boolean> {
  const promised = /-([0-9a-f]{10})\.\w+$/.exec(url)?.[1];
  // Plain http from another machine has no hashing; the sound of the model's first second is then the test.
  if (promised === undefined || globalThis.crypto?.subtle === undefined) return true;
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>));
  return [...hash.subarray(0, 5)].map((byte) => byte.toString(16).padStart(2, '0')).join('') === promised;
}
