import type { OfflineFiles } from './build/offlineFiles.ts';

// What of a service worker's surroundings is used here; the library's own declarations contradict those of the page.
interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Extendable {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Surroundings {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  addEventListener(kind: 'install' | 'activate', listener: (event: Extendable) => void): void;
  addEventListener(kind: 'fetch', listener: (event: Fetching) => void): void;
}

/** The build puts the list of its files here. */
declare const __OFFLINE_FILES__: OfflineFiles;

const worker = globalThis as unknown as Surroundings;
const { version, files } = __OFFLINE_FILES__;
const { scope } = worker.registration;
// Several copies of the page may stand on one server: each owns the caches with its own address in the name.
const family = `page ${scope} `;
const cacheName = `${family}${version}`;
const kept = new Set(files.map((file) => new URL(file, scope).href));

worker.addEventListener('install', (event) => {
  event.waitUntil(keepAll());
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(takeOver());
});

worker.addEventListener('fetch', (event) => {
  const address = keptAddress(event.request);
  if (address !== null) event.respondWith(answer(address, event.request));
});

/**
 * A new version is fetched as a whole, past the browser's own cache, beside the old one. It takes over when no page of the
 * old version is open any more, so that a page never mixes files of two versions.
 */
async function keepAll(): Promise<void> {
  const cache = await caches.open(cacheName);
  await cache.addAll([...kept].map((address) => new Request(address, { cache: 'reload' })));
}

async function takeOver(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(family) && name !== cacheName);
  await Promise.all(old.map((name) => caches.delete(name)));
  // The page that registered this worker was loaded before it: what it asks for from now on is answered too.
  await worker.clients.claim();
}

/** Address under which the answer is kept, or null when the request is none of ours. */
function keptAddress({ method, url }: Request): string | null {
  if (method !== 'GET') return null;
  const { origin, pathname } = new URL(url);
  const plain = new URL(pathname.replace(/\/index\.html$/u, '/'), origin).href;
  return kept.has(plain) ? plain : null;
}

async function answer(address: string, request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  return (await cache.match(address, { ignoreVary: true })) ?? fetch(request);
}
