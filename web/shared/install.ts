// The offline shell. An update waits until the technician taps, so that no page changes under a turn.
import { createStore } from './store.ts';
import { scriptAddress } from './trusted.ts';

export const shell = createStore<{ readonly update?: () => void; readonly offlineReady: boolean }>({ offlineReady: false });

export async function installShell(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register(scriptAddress('/sw.js'));
    offer(registration);
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', () => offer(registration));
    });
    await navigator.serviceWorker.ready;
    shell.set({ offlineReady: true });
  } catch {
    // A warning clicked through, or a browser without it: everything works but the cold start without network.
  }
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
