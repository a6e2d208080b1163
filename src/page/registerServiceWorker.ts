import { type ReadonlySignal, signal } from '@preact/signals';

const ready = signal(false);

/** True once every file of the page is kept, so that it opens and works without a network. */
export const offlineReady: ReadonlySignal<boolean> = ready;

/**
 * Keeps the page for use without a network, where the browser allows it (https, or a server on the same computer).
 * Where it does not, the page works as before and `offlineReady` stays false.
 */
export async function registerServiceWorker(): Promise<void> {
  if (!window.isSecureContext || !('serviceWorker' in navigator)) return;
  try {
    await navigator.serviceWorker.register('./serviceWorker.js');
    await navigator.serviceWorker.ready;
    ready.value = true;
  } catch {
    // No storage, a private window, a policy of the server: nothing the reader could do about it now.
  }
}
