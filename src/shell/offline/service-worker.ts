import { PrecacheController } from 'workbox-precaching/PrecacheController.js';
import { cacheOf, fileAt, namesItsContent, olderCaches, type VersionFile } from './version-files.ts';

/** Put in by the build: the name of this version and all its files. */
declare const VERSION: string;
declare const VERSION_FILES: readonly VersionFile[];

// The compiler is set up for pages; these are the parts of a service worker that are used.
interface Waits extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetches extends Waits {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: {
    claim(): Promise<void>;
    matchAll(which: { type: 'window'; includeUncontrolled: boolean }): Promise<readonly unknown[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: Waits) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetches) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent & Waits) => void): void;
}

const worker = globalThis as unknown as Scope;
const files = new PrecacheController({ cacheName: cacheOf(VERSION), fallbackToNetwork: false });
files.addToCacheList([...VERSION_FILES] as never);

// All files of the version are fetched, or none counts: one that fails leaves the version before in place.
worker.addEventListener('install', (event) => {
  event.waitUntil(files.install(event as never));
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(worker.clients.claim().then(dropOlder));
});

worker.addEventListener('message', (event) => {
  const { type } = (event.data ?? {}) as { type?: unknown };
  // Only when the user takes the new version: until then the one before goes on serving every tab.
  if (type === 'SKIP_WAITING') event.waitUntil(worker.skipWaiting());
  if (type === 'DROP_OLDER') event.waitUntil(dropOlder());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const file = request.method === 'GET' ? fileAt(request.url, worker.registration.scope) : null;
  if (file !== null) event.respondWith(answer(request, file));
});

async function answer(request: Request, file: string): Promise<Response> {
  const own = await files.matchPrecache(file);
  if (own) return own;
  // A tab that still runs the version before may want one of its later files.
  const older = namesItsContent(file) ? await caches.match(request.url) : undefined;
  return older ?? fetch(request);
}

/** Lets the files of other versions go, once no other tab can be running one. */
async function dropOlder(): Promise<void> {
  const windows = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (windows.length > 1) return;
  const older = olderCaches(await caches.keys(), VERSION);
  await Promise.all(older.map((name) => caches.delete(name)));
}
