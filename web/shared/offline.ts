// Hearing and speaking without a network: are all of the voice's files on this device?

/** Addresses by name, put in by the build. */
declare const ASSETS: Readonly<Record<string, string>>;

/** The service worker's own name for it. */
const voiceCache = 'axlehand-voice';

/** Fetches what is not kept yet. True once all is, and the page starts without a server too. */
export async function keepVoice(): Promise<boolean> {
  const wanted = Object.values(ASSETS).filter((address) => address.startsWith('/voice/'));
  try {
    const cache = await caches.open(voiceCache);
    for (const address of wanted) if (!(await cache.match(address))) await cache.add(address);
    return navigator.serviceWorker.controller !== null;
  } catch {
    // No such cache on this address, or no room.
    return false;
  }
}
