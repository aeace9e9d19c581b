// The offline shell. An update waits until the technician taps, so that no page changes under a turn.
import { createStore } from './store.ts';
import { scriptAddress } from './trusted.ts';

/** `offline`: page and voice are kept on this device and need no network. */
export const shell = createStore<{ readonly update?: () => void; readonly offline: boolean }>({ offline: false });

const patienceMs = 5000;

/** Resolves when what the page fetches from now on is kept, or when that is not to be had. */
export async function installShell(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const installed = install();
  if (!navigator.serviceWorker.controller) await installed;
}

async function install(): Promise<void> {
  try {
    const registration = await navigator.serviceWorker.register(scriptAddress('/sw.js'));
    offer(registration);
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', () => offer(registration));
    });
    await Promise.race([controlled(), new Promise((resolve) => setTimeout(resolve, patienceMs))]);
  } catch {
    // A warning clicked through, or a browser without it: everything works but the cold start without network.
  }
}

/** On the very first visit the worker takes the page over a moment after it was opened. */
function controlled(): Promise<void> {
  const { serviceWorker } = navigator;
  if (serviceWorker.controller) return Promise.resolve();
  return new Promise((resolve) => serviceWorker.addEventListener('controllerchange', () => resolve(), { once: true }));
}

function offer(registration: ServiceWorkerRegistration): void {
  const { waiting } = registration;
  if (!waiting || !navigator.serviceWorker.controller) return;
  const reload = (): void => {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    waiting.postMessage('takeOver');
  };
  shell.set({ update: reload });
}
