// Keeps the shell, the recogniser and its model on the device. Pages and hashed files come from the cache of this version;
// the API is never cached. The voice files have their own cache, so that a new page does not fetch the model again.
declare const self: ServiceWorkerGlobalScope;
declare const SHELL: readonly string[];
declare const VOICE: readonly string[];
declare const VERSION: string;

const shellCache = `axlehand-shell-${VERSION}`;
const voiceCache = 'axlehand-voice';
const isVoice = new Set(VOICE);

const pageOf: readonly (readonly [RegExp, string])[] = [
  [/^\/$/, '/bay.html'],
  [/^\/log$/, '/log.html'],
  [/^\/jobs\/[^/]+$/, '/review.html'],
  [/^\/jobs\/[^/]+\/sheet$/, '/sheet.html'],
  [/^\/pair$/, '/pair.html'],
  [/^\/devices$/, '/devices.html'],
  [/^\/rack$/, '/rack.html'],
];

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(shellCache).then((cache) => cache.addAll([...SHELL])));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(tidy().then(() => self.clients.claim()));
});

self.addEventListener('message', ({ data }) => {
  if (data === 'takeOver') void self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin || url.pathname.startsWith('/api/')) return;
  if (isVoice.has(url.pathname)) return event.respondWith(fromVoice(event));
  const page = request.mode === 'navigate' ? pageOf.find(([pattern]) => pattern.test(url.pathname))?.[1] : undefined;
  if (page) return event.respondWith(fromShell(page, request));
  if (SHELL.includes(url.pathname)) event.respondWith(fromShell(url.pathname, request));
});

async function fromShell(path: string, request: Request): Promise<Response> {
  const cache = await caches.open(shellCache);
  return (await cache.match(path)) ?? fetch(request);
}

async function fromVoice(event: FetchEvent): Promise<Response> {
  const { request } = event;
  const cache = await caches.open(voiceCache);
  const { pathname } = new URL(request.url);
  const kept = await cache.match(pathname);
  if (kept) return kept;
  const response = await fetch(request);
  // Storage may be full: the voice then works until the page is closed, and is fetched again next time.
  if (response.ok) event.waitUntil(cache.put(pathname, response.clone()).catch(() => undefined));
  return response;
}

async function tidy(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith('axlehand-shell-') && name !== shellCache);
  await Promise.all(old.map((name) => caches.delete(name)));
  const voice = await caches.open(voiceCache);
  const gone = (await voice.keys()).filter(({ url }) => !isVoice.has(new URL(url).pathname));
  await Promise.all(gone.map((request) => voice.delete(request)));
}
